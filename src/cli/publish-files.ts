// Puts finished files into a folder: written beside, synced, renamed as one; never half a job, never over anything unasked.
import { lstat, mkdir, mkdtemp, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { explainWriting } from '../disk/explain-writing.js';
import { type OutputFile, PinbarError } from '../index.js';

const NOTHING_THERE = new Set(['ENOENT', 'ENOTDIR', 'ENAMETOOLONG']);

/** What is already at a place. */
type Occupant = 'nothing' | 'job' | 'empty' | 'other';

/** Whether anything has that name; a file in the middle of the path is for the writing to trip over, and to name. */
async function isThere(path: string): Promise<boolean> {
  try {
    await lstat(path);
    return true;
  } catch (error) {
    return !NOTHING_THERE.has((error as NodeJS.ErrnoException).code ?? '');
  }
}

async function lookAt(folder: string): Promise<Occupant> {
  try {
    const entries = await readdir(folder);
    if (entries.length === 0) return 'empty';
    if (!entries.includes('manifest.json')) return 'other';
    const manifest: unknown = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8'));
    const document = (manifest as { document?: unknown } | null)?.document;
    return document === 'manifest' || document === 'correction' ? 'job' : 'other';
  } catch {
    return (await isThere(folder)) ? 'other' : 'nothing';
  }
}

function refuse(folder: string, message: string, remedy: string): PinbarError {
  return new PinbarError('write/exists', { message, remedy, place: { file: folder } });
}

/**
 * Whether a job may be written to a folder.
 *
 * @throws PinbarError `write/exists` where something is there that may not be replaced.
 */
export async function checkFolder(folder: string, inputPath: string | null, force: boolean): Promise<void> {
  const target = resolve(folder);
  if (inputPath !== null && (inputPath === target || inputPath.startsWith(target + sep))) {
    throw refuse(
      folder,
      `${folder} holds the input itself; nothing is ever written over it.`,
      'Name another folder with --out.',
    );
  }
  const occupant = await lookAt(target);
  if (occupant === 'nothing' || occupant === 'empty') return;
  if (occupant === 'other') {
    throw refuse(folder, `${folder} is there already and is not a job of pinbar.`, 'Name another folder with --out.');
  }
  if (!force) {
    throw refuse(
      folder,
      `${folder} holds an older job.`,
      'Say --force to replace it, or name another folder with --out.',
    );
  }
}

/** Writes a new file, and has the disk keep it. */
export async function writeSynced(path: string, file: OutputFile): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    const { bytesWritten } = await handle.writev([...file.pieces]);
    // A nearly full disk takes part of the bytes without an error.
    if (bytesWritten !== file.byteLength)
      throw new Error(`only ${bytesWritten} of ${file.byteLength} bytes were taken`);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function syncFolder(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } catch {
    // Some file systems do not sync folders; the rename is still atomic.
  } finally {
    await handle.close();
  }
}

/** The new folder takes the place of the old one, which goes only after that. */
async function swapIn(fresh: string, target: string): Promise<void> {
  const old = `${fresh}.old`;
  try {
    await rename(target, old);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  await rename(fresh, target);
  await rm(old, { recursive: true, force: true });
}

/**
 * Writes a job's files, the manifest last.
 *
 * @throws PinbarError `write/exists` or `write/failed`; then nothing new is visible at the place.
 */
export async function publishFiles(
  folder: string,
  files: readonly OutputFile[],
  options: { readonly inputPath: string | null; readonly force: boolean },
): Promise<void> {
  await checkFolder(folder, options.inputPath, options.force);
  const target = resolve(folder);
  let fresh = '';
  try {
    await mkdir(dirname(target), { recursive: true });
    fresh = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
    for (const file of files) await writeSynced(join(fresh, file.name), file);
    await syncFolder(fresh);
    await swapIn(fresh, target);
    await syncFolder(dirname(target));
  } catch (error) {
    if (fresh !== '') await rm(fresh, { recursive: true, force: true });
    throw new PinbarError(
      'write/failed',
      {
        message: `${folder} could not be written: ${explainWriting(error)}.`,
        remedy: 'Check the folder, its rights and the free space, then run the same command again.',
        place: { file: folder },
      },
      [],
      error,
    );
  }
}
