// The drawings that pictures are compared of, and the tickets they are parted by.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';
import { witnessPath } from '../../house/witnesses.js';
import { chooseSome } from './chance.js';
import { drawDocument } from './draw-document.js';

/** A drawing with the ticket that parts it. */
export interface Drawing {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly ticket: unknown;
}

const SAMPLES = fileURLToPath(new URL('../../../samples', import.meta.url));
const COMMON = { pinbar: 1, marks: { wanted: false }, hidden: 'skip', linkedPictures: 'leave-out', witness: 'never' };

/** Drawn lines against everything else: print and plot. */
export const LINES_AND_REST = {
  ...COMMON,
  rules: [
    { pass: 'cutting', layer: 'line*' },
    { pass: 'print', rest: true },
  ],
};

/** White, whatever is a basic shape, and the rest: no tool among them, so that any paint may go anywhere. */
export const BY_KIND = {
  ...COMMON,
  rules: [
    { pass: 'white', element: 'path', fill: '#ffffff' },
    ...['rect', 'circle', 'ellipse', 'polygon', 'image'].map((element) => ({ pass: 'varnish', element })),
    { pass: 'print', rest: true },
  ],
};

function listSvgs(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.svgz?$/.test(name))
    .map((name) => join(folder, name))
    .sort();
}

function readAll(paths: readonly string[], folder: string, ticket: unknown): readonly Drawing[] {
  return paths.map((path) => {
    const bytes = readFileSync(path);
    const isPacked = bytes[0] === 0x1f && bytes[1] === 0x8b;
    return { name: path.slice(folder.length + 1), bytes: new Uint8Array(isPacked ? gunzipSync(bytes) : bytes), ticket };
  });
}

/** The samples, each by its own ticket where it has one, without marks. */
export function listSamples(): readonly Drawing[] {
  return listSvgs(SAMPLES).map((path) => {
    const own = path.replace(/\.svg$/, '.ticket.json');
    const ticket = existsSync(own) ? (JSON.parse(readFileSync(own, 'utf8')) as object) : {};
    const unmarked = {
      ...COMMON,
      ...ticket,
      marks: { wanted: false },
      marginMm: 0,
      linkedPictures: 'leave-out',
      witness: 'never',
    };
    return { name: path.slice(SAMPLES.length + 1), bytes: new Uint8Array(readFileSync(path)), ticket: unmarked };
  });
}

/** Some of openmoji. */
export function chooseOpenmoji(count: number): readonly Drawing[] {
  const folder = join(dirname(createRequire(import.meta.url).resolve('openmoji/package.json')), 'src');
  return readAll(chooseSome(listSvgs(folder), count, 1), folder, LINES_AND_REST);
}

/** Some of openclipart; carton nets among its signs are left out. */
export function chooseOpenclipart(count: number): readonly Drawing[] {
  const folder = witnessPath('openclipart');
  const paths = listSvgs(folder).filter((path) => !path.includes('signs_and_symbols'));
  return readAll(chooseSome(paths, count, 2), folder, BY_KIND);
}

/** Some of the published test files that come with librsvg. */
export function chooseLibrsvg(count: number): readonly Drawing[] {
  const folder = witnessPath('librsvg');
  return readAll(chooseSome(listSvgs(folder), count, 3), folder, BY_KIND);
}

/** Drawings made by chance. */
export function drawDocuments(count: number): readonly Drawing[] {
  return Array.from({ length: count }, (_, seed) => ({
    name: `seed ${seed}`,
    bytes: new TextEncoder().encode(drawDocument(seed)),
    ticket: BY_KIND,
  }));
}

/** Text of a drawing as other readers want it: in the namespace, whatever the encoding. */
export function readText(bytes: Uint8Array): string {
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 200));
  const isWide = bytes[0] === 0xff || bytes[0] === 0xfe;
  const declared = isWide
    ? bytes[0] === 0xff
      ? 'utf-16le'
      : 'utf-16be'
    : (/encoding=["']([^"']+)/.exec(head)?.[1] ?? 'utf-8');
  const text = new TextDecoder(declared).decode(bytes).replace(/^<\?xml[^>]*\?>\s*/, '');
  const root = /<svg[\s>][^>]*>/.exec(text)?.[0] ?? '';
  const isNamed = root === '' || /\sxmlns\s*=/.test(root);
  return isNamed ? text : text.replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"');
}
