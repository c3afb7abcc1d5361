// The drawings that pictures are compared of, and the tickets they are parted by.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Witness } from '../../house/witnesses.js';
import { type AskedFile, FILE_SETS } from '../browser/list-files.js';
import { drawDocument } from './draw-document.js';

/** A drawing with the ticket that parts it. */
export interface Drawing extends AskedFile {
  readonly ticket: unknown;
}

/** Drawings of one origin. */
export interface PictureSet {
  readonly name: string;
  readonly witness: Witness | null;
  /** Every so many of them is looked at by default; all with ORACLES set. */
  readonly every: number;
  readonly drawings: () => readonly Drawing[];
}

const SAMPLES = join(import.meta.dirname, '../../../samples');
const EFFECT_DOCUMENTS = 240;
const COMMON = {
  pinbar: 1,
  marks: { wanted: false },
  marginMm: 0,
  hidden: 'skip',
  linkedPictures: 'leave-out',
  witness: 'never',
};

/** Drawn lines against everything else: print and plot. */
const LINES_AND_REST = {
  ...COMMON,
  rules: [
    { pass: 'cutting', layer: 'line*' },
    { pass: 'print', rest: true },
  ],
};

/** White, whatever is a basic shape, and the rest: no tool among them, so that any paint may go anywhere. */
const BY_KIND = {
  ...COMMON,
  rules: [
    { pass: 'white', element: 'path', fill: '#ffffff' },
    ...['rect', 'circle', 'ellipse', 'polygon', 'image'].map((element) => ({ pass: 'varnish', element })),
    { pass: 'print', rest: true },
  ],
};

/** A sample's own ticket, without marks; ties and another order of the lines change what is drawn, and have judges of their own. */
function ticketOfSample(name: string): unknown {
  const path = join(SAMPLES, name.replace(/\.svg$/, '.ticket.json'));
  const written = existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>) : {};
  const { sequence: _order, ties: _ties, ...own } = written;
  return { ...COMMON, ...own, marks: { wanted: false }, marginMm: 0, linkedPictures: 'leave-out', witness: 'never' };
}

function drawDocuments(): readonly Drawing[] {
  return Array.from({ length: EFFECT_DOCUMENTS }, (_, seed) => ({
    name: `effects-${seed}`,
    bytes: new TextEncoder().encode(drawDocument(seed)),
    ticket: BY_KIND,
  }));
}

const EVERY: Readonly<Record<string, number>> = { samples: 1, openmoji: 3, openclipart: 5, librsvg: 3 };

/** All of them. */
export const PICTURE_SETS: readonly PictureSet[] = [
  // Documents made for a browser hold CSS that the renderer does not know.
  ...FILE_SETS.filter(({ name }) => name in EVERY).map(({ name, witness, files }) => ({
    name,
    witness,
    every: EVERY[name]!,
    drawings: () =>
      files().map((file) => {
        const ticket = name === 'openmoji' ? LINES_AND_REST : name === 'samples' ? ticketOfSample(file.name) : BY_KIND;
        return { ...file, ticket };
      }),
  })),
  { name: 'effects', witness: null, every: 8, drawings: drawDocuments },
];

/** The drawings of a set that are looked at in this run. */
export function chooseDrawings({ drawings, every }: PictureSet): readonly Drawing[] {
  const all = drawings();
  return process.env.ORACLES === undefined ? all.filter((_, at) => at % every === 0) : all;
}

/** Text of a drawing as other readers want it: in characters, without its declaration. */
export function readText(bytes: Uint8Array): string {
  const head = Buffer.from(bytes.subarray(0, 200)).toString('latin1');
  const wide = bytes[0] === 0xff ? 'utf-16le' : bytes[0] === 0xfe ? 'utf-16be' : null;
  const encoding = wide ?? /encoding=["']([^"']+)/.exec(head)?.[1] ?? 'utf-8';
  return new TextDecoder(encoding).decode(bytes).replace(/^<\?xml[^>]*\?>\s*/, '');
}
