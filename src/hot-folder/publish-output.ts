// Puts the files of a job into `out/` under a name that follows from bytes and ticket, so that doing it twice changes nothing.
import { createHash } from 'node:crypto';
import { readWritten } from './file-trouble.js';
import { joinPath } from './folder-disk.js';
import { checkRoom } from './layout.js';
import { artName, folderName, type HeldJob, isTaken, JobLost, type Station } from './station.js';

/** A finished file. */
export interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Under which names a job is made, whoever makes it. */
export interface Naming {
  /** Job that settled the names. */
  readonly id: string;
  /** Folder in `out/`. */
  readonly out: string;
  /** Name of the art that the files are called by. */
  readonly file: string;
}

/** How much of the key stands in the name of a folder in `out/`. */
const KEY_LENGTH = 12;

function parseNaming(bytes: Buffer): Naming | null {
  try {
    const { id, out, file } = JSON.parse(bytes.toString('utf8')) as Partial<Naming>;
    const plain = typeof out === 'string' && /^[^/\\]+$/.test(out) && !out.startsWith('.');
    return plain && typeof id === 'string' && typeof file === 'string' ? { id, out, file } : null;
  } catch {
    return null;
  }
}

/** The names that were settled for a key; null where nobody did. */
export function readNaming(station: Station, key: string): Naming | null {
  const path = joinPath(station.layout.keys, key);
  if (station.disk.look(path)?.kind !== 'file') return null;
  return parseNaming(readWritten(station.disk, { path, what: `work/.keys/${key}` }));
}

/**
 * Settles under which names a key is made: the first who asks decides for all, in one step.
 *
 * Equal bytes under equal tickets are so one folder in `out/`, even where two watchers make them at once from files of two names.
 */
export function settleNaming(station: Station, job: HeldJob, key: string): Naming {
  const { disk, layout } = station;
  const before = readNaming(station, key);
  if (before !== null) return before;
  const file = artName(job.record);
  const naming: Naming = { id: job.record.id, out: `${folderName(job.record)}-${key.slice(0, KEY_LENGTH)}`, file };
  const draft = joinPath(job.folder, '.key');
  const target = joinPath(layout.keys, key);
  disk.remove(draft);
  disk.writeNew(draft, [Buffer.from(`${JSON.stringify(naming)}\n`)]);
  let settled = true;
  try {
    settled = disk.addName(draft, target);
  } catch {
    // A disk without second names: the last who asks decides, which only matters where two names meet at once.
    disk.move(draft, target);
  }
  const other = settled ? null : readNaming(station, key);
  // What a crash left empty is no decision.
  if (!settled && other === null) disk.move(draft, target);
  disk.sync(layout.keys);
  disk.remove(draft);
  return other ?? naming;
}

interface ManifestShape {
  readonly document?: unknown;
  readonly input?: { readonly sha256?: unknown };
  readonly passes?: readonly { readonly file?: unknown; readonly sha256?: unknown }[];
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Whether a folder in `out/` holds a whole job made from these bytes, every file as its manifest says. */
export function isPublished(station: Station, out: string, bytesHash: string): boolean {
  const { disk, layout } = station;
  const folder = joinPath(layout.out, out);
  const path = joinPath(folder, 'manifest.json');
  if (disk.look(folder)?.kind !== 'folder' || disk.look(path)?.kind !== 'file') return false;
  try {
    const bytes = readWritten(disk, { path, what: `out/${out}/manifest.json` });
    const manifest = JSON.parse(bytes.toString('utf8')) as ManifestShape;
    if (manifest.document !== 'manifest' || manifest.input?.sha256 !== bytesHash) return false;
    return (manifest.passes ?? []).every(({ file, sha256 }) => {
      if (typeof file !== 'string' || file.includes('/')) return false;
      const there = joinPath(folder, file);
      if (disk.look(there)?.kind !== 'file') return false;
      return hashOf(readWritten(disk, { path: there, what: `out/${out}/${file}` })) === sha256;
    });
  } catch (error) {
    if (error instanceof SyntaxError) return false;
    throw error;
  }
}

/**
 * Publishes the files of a job: written beside the art under a hidden name, each kept by the disk, then the folder, then moved to
 * `out/` in one step.
 *
 * @returns Whether it is there now; false where something else stands in its place.
 * @throws JobLost, and errors of the system; then nothing new is visible.
 */
export function publishOutput(
  station: Station,
  job: HeldJob,
  files: readonly MadeFile[],
  naming: Naming,
  bytesHash: string,
): boolean {
  const { disk, layout } = station;
  const stage = joinPath(job.folder, '.out');
  const target = joinPath(layout.out, naming.out);
  checkRoom(disk, layout, 'out');
  disk.remove(stage);
  disk.makeFolder(stage);
  for (const { name, bytes } of files) disk.writeNew(joinPath(stage, name), [bytes]);
  disk.sync(stage);
  try {
    disk.move(stage, target);
  } catch (error) {
    if (isTaken(error)) {
      disk.remove(stage);
      return isPublished(station, naming.out, bytesHash);
    }
    if (disk.look(job.folder) === null && disk.look(layout.out) !== null) throw new JobLost();
    throw error;
  }
  disk.sync(layout.out);
  return true;
}
