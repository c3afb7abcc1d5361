// Reads what the command line names: files, standard input, linked pictures.
import { open, readFile, realpath } from 'node:fs/promises';
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import { DEFAULT_LIMITS, PinbarError } from '../index.js';

/** A delivered file. */
export interface Input {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Full path, or null for standard input. */
  readonly path: string | null;
}

async function readStandardInput(): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

function explain(error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EACCES' || code === 'EPERM') return 'reading it is not allowed';
  if (code === 'EISDIR') return 'it is a folder';
  return error instanceof Error ? error.message : String(error);
}

/** Refuses what is no ordinary file, and what is larger than any limit, before it is read into memory. */
async function readOrdinaryFile(path: string, mostBytes: number): Promise<Uint8Array> {
  const handle = await open(path, 'r');
  try {
    const stat = await handle.stat();
    if (stat.isDirectory()) throw Object.assign(new Error('it is a folder'), { code: 'EISDIR' });
    if (stat.size > mostBytes) {
      throw new PinbarError('limit/bytes', {
        message: `${path} has ${stat.size} bytes; ${mostBytes} are allowed.`,
        remedy: `Raise the bound with --limit bytes=${stat.size}.`,
        place: { file: path },
        data: { bytes: stat.size, allowed: mostBytes },
      });
    }
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}

/**
 * Reads a file, or standard input for `-`.
 *
 * @throws PinbarError `read/failed` or `limit/bytes`.
 */
export async function readInput(path: string, mostBytes: number = DEFAULT_LIMITS.bytes): Promise<Input> {
  if (path === '-') return { name: 'stdin.svg', bytes: await readStandardInput(), path: null };
  try {
    const bytes = await readOrdinaryFile(path, mostBytes);
    return { name: path.split(/[\\/]/).at(-1)!, bytes, path: resolve(path) };
  } catch (error) {
    if (error instanceof PinbarError) throw error;
    throw new PinbarError(
      'read/failed',
      {
        message: `${path} could not be read: ${explain(error)}.`,
        remedy: 'Check the name and the rights, or give the file on standard input with -.',
        place: { file: path },
      },
      [],
      error,
    );
  }
}

/** Largest picture that is embedded, bytes. */
const MOST_PICTURE_BYTES = 64 * 1024 * 1024;

/** A reader for pictures that a file links to: inside the file's folder only, no way out by `..` or links. */
export function pictureReader(inputPath: string | null): (address: string) => Promise<Uint8Array | null> {
  return async (address) => {
    if (inputPath === null) return null;
    try {
      const name = decodeURIComponent(address.split(/[?#]/)[0]!);
      if (isAbsolute(name) || name.includes('\0')) return null;
      const folder = await realpath(dirname(inputPath));
      const target = await realpath(resolve(folder, name));
      const inside = relative(folder, target);
      if (inside === '' || inside.startsWith('..') || isAbsolute(inside) || inside.split(sep).includes('..'))
        return null;
      return await readOrdinaryFile(target, MOST_PICTURE_BYTES);
    } catch {
      return null;
    }
  };
}

/** Text of a ticket file. */
export async function readTicketText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw new PinbarError(
      'use/wrong',
      { message: `The ticket ${path} could not be read: ${explain(error)}.`, remedy: 'Check the name and the rights.' },
      [],
      error,
    );
  }
}
