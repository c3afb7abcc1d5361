// One line of JSON per job that ended.
import type { FolderDisk } from './folder-disk.js';
import type { Layout } from './layout.js';

/** How a job ended. */
export type Ending = 'done' | 'duplicate' | 'failed';

/** A line of the journal. */
export interface JournalLine {
  readonly time: string;
  readonly id: string;
  readonly owner: string;
  /** Path below `in/`, as text. */
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string | null;
  readonly ending: Ending;
  /** Folder in `out/`, or null. */
  readonly out: string | null;
  /** Codes of the errors and warnings, each once. */
  readonly codes: readonly string[];
  readonly seconds: number;
}

/** How far back the journal is searched for a job that was interrupted, bytes. */
const LOOK_BACK = 4 * 1024 * 1024;

/** How the journal says that a job ended; null where it has no line of it. Only jobs that were interrupted need to ask. */
export function readEnding(disk: FolderDisk, layout: Layout, id: string): Ending | null {
  const size = disk.look(layout.journal)?.bytes ?? 0;
  if (size === 0) return null;
  const tail = disk.read(layout.journal, Math.max(0, size - LOOK_BACK));
  // A line that a crash cut off does not count: it lacks its end.
  const at = tail.lastIndexOf(`"id":${JSON.stringify(id)},`);
  const end = tail.indexOf('\n', at);
  if (at === -1 || end === -1 || tail[end - 1] !== 0x7d) return null;
  const ending = /"ending":"(done|duplicate|failed)"/.exec(tail.subarray(at, end).toString('latin1'))?.[1];
  return (ending as Ending | undefined) ?? null;
}

/** A line as it was written, without its end. */
export type JournalText = string;

/** Writes a line. */
export function writeJournal(disk: FolderDisk, layout: Layout, line: JournalLine): JournalText {
  const text = JSON.stringify(line);
  disk.append(layout.journal, text);
  return text;
}

/** Which lines, written lately, do not stand in the journal whole. */
export function listMissing(disk: FolderDisk, layout: Layout, texts: readonly JournalText[]): readonly JournalText[] {
  const size = disk.look(layout.journal)?.bytes ?? 0;
  const tail = size === 0 ? '' : disk.read(layout.journal, Math.max(0, size - LOOK_BACK)).toString('utf8');
  const there = new Set(tail.split('\n'));
  return texts.filter((text) => !there.has(text));
}
