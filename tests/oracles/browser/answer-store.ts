// Recorded answers of the browser: one packed file for each set.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { Answer } from './ask-browser.js';
import { type AskedFile, type FileSet, hashOf } from './list-files.js';

/** Answers by file; the hash tells whether a file is still the one that was asked about. */
interface Record {
  readonly browser: string;
  readonly answers: { readonly [name: string]: { readonly hash: string; readonly answer: Answer } };
}

/** What answers are kept of: sets of files, and sheets of copies. */
export type StoreName = FileSet['name'] | 'sheets';

function pathOf(set: StoreName): string {
  return join(import.meta.dirname, 'recorded', `${set}.json.gz`);
}

/** Writes the answers about the files of a set. */
export function recordAnswers(
  set: StoreName,
  browser: string,
  files: readonly AskedFile[],
  answers: readonly Answer[],
): void {
  const entries = files.map((file, at) => [file.name, { hash: hashOf(file.bytes), answer: answers[at]! }] as const);
  const record: Record = { browser, answers: Object.fromEntries(entries) };
  writeFileSync(pathOf(set), gzipSync(JSON.stringify(record), { level: 9 }));
}

/**
 * The recorded answers about the files of a set, in their order.
 *
 * @throws Error where a file was not recorded, or is another one now.
 */
export function recallAnswers(set: StoreName, files: readonly AskedFile[]): readonly Answer[] {
  const path = pathOf(set);
  if (!existsSync(path)) throw new Error(`nothing is recorded of ${set}: npm run oracles -- --record`);
  const { answers } = JSON.parse(gunzipSync(readFileSync(path)).toString('utf8')) as Record;
  return files.map(({ name, bytes }) => {
    const known = answers[name];
    if (known?.hash !== hashOf(bytes))
      throw new Error(`${name} is not the file that was recorded: npm run oracles -- --record`);
    return known.answer;
  });
}
