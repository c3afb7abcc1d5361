// The files that the browser is asked about.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Witness, witnessPath } from '../../house/witnesses.js';
import { DISAGREEMENTS, listCorners } from './corner-documents.js';
import { createDice } from './dice.js';
import { generateDocument } from './generate-document.js';

/** Files of one origin. */
export interface FileSet {
  readonly name: 'samples' | 'openmoji' | 'openclipart' | 'librsvg' | 'generated' | 'corners' | 'disagreements';
  /** What has to be there; null for what always is. */
  readonly witness: Witness | null;
  readonly files: () => readonly AskedFile[];
}

/** A file as both sides get it. */
export interface AskedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const CHOSEN = 300;
const GENERATED = 500;
/** The first of the generated documents; others are the business of `npm run wander`. */
const FIRST = Number(process.env.DOCUMENTS_FROM ?? 1);
const MOST_BYTES = 200_000;
const require = createRequire(import.meta.url);
const ROOT = join(import.meta.dirname, '../../..');

function readFolder(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.svg') && !/_box_/.test(name))
    .sort();
}

/** Browsers draw nothing where the root lacks its namespace; pinbar reads such files as SVG, so both get it with one. */
function addNamespace(bytes: Uint8Array): Uint8Array {
  const text = Buffer.from(bytes).toString('latin1');
  const head = /<svg\b[^>]*>/.exec(text)?.[0] ?? '';
  if (head === '' || /\sxmlns\s*=/.test(head)) return bytes;
  return new Uint8Array(Buffer.from(text.replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"'), 'latin1'));
}

function readFiles(folder: string, names: readonly string[]): readonly AskedFile[] {
  return names.map((name) => ({ name, bytes: addNamespace(new Uint8Array(readFileSync(join(folder, name)))) }));
}

/** A seeded choice of the files of a folder. */
function chooseFiles(folder: string, seed: number): readonly AskedFile[] {
  const dice = createDice(seed);
  const small = readFolder(folder).filter((name) => statSync(join(folder, name)).size <= MOST_BYTES);
  const chosen = new Set<string>();
  while (chosen.size < Math.min(CHOSEN, small.length)) chosen.add(dice.pick(small));
  return readFiles(folder, [...chosen].sort());
}

const asFile = (name: string, text: string): AskedFile => ({ name, bytes: new Uint8Array(Buffer.from(text)) });

/** All of them. */
export const FILE_SETS: readonly FileSet[] = [
  { name: 'samples', witness: null, files: () => readFiles(join(ROOT, 'samples'), readFolder(join(ROOT, 'samples'))) },
  {
    name: 'openmoji',
    witness: null,
    files: () => chooseFiles(join(dirname(require.resolve('openmoji/package.json')), 'src'), 1),
  },
  { name: 'openclipart', witness: 'openclipart', files: () => chooseFiles(witnessPath('openclipart'), 2) },
  {
    name: 'librsvg',
    witness: 'librsvg',
    files: () => readFiles(witnessPath('librsvg'), readFolder(witnessPath('librsvg'))),
  },
  {
    name: 'generated',
    witness: null,
    files: () =>
      Array.from({ length: GENERATED }, (_, at) => asFile(`document-${FIRST + at - 1}`, generateDocument(FIRST + at))),
  },
  { name: 'corners', witness: null, files: () => listCorners().map(([name, text]) => asFile(name, text)) },
  {
    name: 'disagreements',
    witness: null,
    files: () => Object.entries(DISAGREEMENTS).map(([name, { text }]) => asFile(name, text)),
  },
];

/** Tells whether a file is the one that was recorded. */
export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex').slice(0, 12);
}
