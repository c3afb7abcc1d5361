// The few things the hot folder does to a disk: each one call, done before the next, on names as bytes.
import {
  closeSync,
  constants,
  fstatSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmdirSync,
  unlinkSync,
  writeSync,
} from 'node:fs';

/** What stands under a name. A link is neither followed nor taken. */
export type EntryKind = 'file' | 'folder' | 'other';

/** A name as the file system has it, and what stands under it. */
export interface Entry {
  readonly name: Buffer;
  readonly kind: EntryKind;
}

/** What can be seen of a file without opening it. */
export interface Look {
  readonly kind: EntryKind;
  readonly bytes: number;
  /** Changes with every write and every replacement: inode, size and time of the last change. */
  readonly mark: string;
  /** Which file it is, whatever its name: device and inode. */
  readonly file: string;
  readonly device: string;
}

/**
 * A disk as the hot folder uses it.
 *
 * Every call ends before it returns and throws errors with the `code` of the system, so the order of the program is the order of
 * the disk. The tests put a disk of their own in its place, which crashes between any two calls.
 */
export interface FolderDisk {
  readonly list: (path: Buffer) => readonly Entry[];
  /** Null where there is nothing. */
  readonly look: (path: Buffer) => Look | null;
  /** An ordinary file, whole or from a place on; follows no link. */
  readonly read: (path: Buffer, from?: number, atMost?: number) => Buffer;
  /** False where the folder is there already. */
  readonly makeFolder: (path: Buffer) => boolean;
  /** A new file, written whole and kept by the disk. */
  readonly writeNew: (path: Buffer, pieces: readonly Uint8Array[]) => void;
  /** Text behind the end of a file, on a line of its own, kept by the disk. */
  readonly append: (path: Buffer, line: string) => void;
  /** Has the disk keep the names in a folder, or the bytes of a file. */
  readonly sync: (path: Buffer) => void;
  readonly move: (from: Buffer, to: Buffer) => void;
  /** A second name for a file; false where the name is taken. */
  readonly addName: (from: Buffer, to: Buffer) => boolean;
  /** A file, or a folder with all that is in it; nothing where nothing is. */
  readonly remove: (path: Buffer) => void;
}

/** The code of a system error, or an empty text. */
export function codeOf(error: unknown): string {
  return (error as NodeJS.ErrnoException | null)?.code ?? '';
}

/** Names joined to a path. */
export function joinPath(...parts: readonly (Buffer | string)[]): Buffer {
  const pieces = parts.flatMap((part, index) => {
    const bytes = typeof part === 'string' ? Buffer.from(part) : part;
    return index === 0 ? [bytes] : [Buffer.from('/'), bytes];
  });
  return Buffer.concat(pieces);
}

const GONE = new Set(['ENOENT', 'ENOTDIR']);

function kindOf(entry: { isFile(): boolean; isDirectory(): boolean }): EntryKind {
  if (entry.isFile()) return 'file';
  return entry.isDirectory() ? 'folder' : 'other';
}

function look(path: Buffer): Look | null {
  try {
    const stat = lstatSync(path, { bigint: true });
    const { ino, dev, size, mtimeNs } = stat;
    return {
      kind: kindOf(stat),
      bytes: Number(size),
      mark: `${ino}:${size}:${mtimeNs}`,
      file: `${dev}:${ino}`,
      device: String(dev),
    };
  } catch (error) {
    if (GONE.has(codeOf(error))) return null;
    throw error;
  }
}

/** Opens, hands over, closes; what happens in between decides, not what closing says of a file that is read. */
function withFile<T>(path: Buffer, flags: number | string, use: (file: number) => T): T {
  const file = openSync(path, flags, 0o666);
  try {
    return use(file);
  } finally {
    closeSync(file);
  }
}

function readOrdinary(path: Buffer, from = 0, atMost: number = Number.POSITIVE_INFINITY): Buffer {
  const flags = constants.O_RDONLY | constants.O_NOFOLLOW | constants.O_NONBLOCK;
  return withFile(path, flags, (file) => {
    const stat = fstatSync(file);
    if (!stat.isFile()) throw Object.assign(new Error('it is no ordinary file'), { code: 'EINVAL' });
    const bytes = Buffer.alloc(Math.max(0, Math.min(atMost, stat.size - from)));
    let filled = 0;
    while (filled < bytes.length) {
      const got = readSync(file, bytes, filled, bytes.length - filled, from + filled);
      if (got === 0) break;
      filled += got;
    }
    return bytes.subarray(0, filled);
  });
}

/**
 * Writes bytes at a place, all of them.
 *
 * A nearly full disk takes part of the bytes without an error: asked again, it gives one.
 */
function writeWhole(file: number, bytes: Uint8Array, at: number | null): void {
  let done = 0;
  while (done < bytes.length) {
    const took = writeSync(file, bytes, done, bytes.length - done, at === null ? null : at + done);
    if (took === 0) throw Object.assign(new Error('the disk takes no more bytes'), { code: 'ENOSPC' });
    done += took;
  }
}

/** Linux writes to the end of a file that is open for that, whatever place is named; the call is then one that nothing else here makes. */
const APPENDS_ANYWHERE = process.platform === 'linux';

function append(path: Buffer, line: string): void {
  withFile(path, 'a+', (file) => {
    const { size } = fstatSync(file);
    const last = Buffer.alloc(1);
    if (size > 0) readSync(file, last, 0, 1, size - 1);
    // What a crash left of a line stays on a line of its own.
    const start = size > 0 && last[0] !== 0x0a ? '\n' : '';
    writeWhole(file, Buffer.from(`${start}${line}\n`), APPENDS_ANYWHERE ? size : null);
    fsyncSync(file);
  });
}

const CANNOT_SYNC = new Set(['EINVAL', 'ENOTSUP', 'EISDIR', 'EBADF']);

/** Some file systems do not sync folders, and say so; the rename is still one step there. */
function sync(path: Buffer): void {
  withFile(path, constants.O_RDONLY | constants.O_NOFOLLOW, (file) => {
    try {
      fsyncSync(file);
    } catch (error) {
      if (!CANNOT_SYNC.has(codeOf(error))) throw error;
    }
  });
}

function unless<T>(code: string, act: () => T, otherwise: T): T {
  try {
    return act();
  } catch (error) {
    if (codeOf(error) === code) return otherwise;
    throw error;
  }
}

function listNames(path: Buffer): readonly Entry[] {
  return readdirSync(path, { withFileTypes: true, encoding: 'buffer' }).map((entry) => ({
    name: entry.name as unknown as Buffer,
    kind: kindOf(entry),
  }));
}

/** Names that are not UTF-8 as well, and never through a link: a link itself is taken away. */
function remove(path: Buffer): void {
  const found = look(path);
  if (found === null) return;
  // Another watcher may sweep the same room.
  unless(
    'ENOENT',
    () => {
      if (found.kind !== 'folder') return unlinkSync(path);
      for (const entry of listNames(path)) remove(joinPath(path, entry.name));
      return rmdirSync(path);
    },
    undefined,
  );
}

/** The disk of this machine. */
export const MACHINE_DISK: FolderDisk = {
  list: listNames,
  look,
  read: readOrdinary,
  makeFolder: (path) =>
    unless(
      'EEXIST',
      () => {
        mkdirSync(path);
        return true;
      },
      false,
    ),
  writeNew: (path, pieces) =>
    withFile(path, 'wx', (file) => {
      let at = 0;
      for (const piece of pieces) {
        writeWhole(file, piece, at);
        at += piece.length;
      }
      fsyncSync(file);
    }),
  append,
  sync,
  move: (from, to) => renameSync(from, to),
  addName: (from, to) =>
    unless(
      'EEXIST',
      () => {
        linkSync(from, to);
        return true;
      },
      false,
    ),
  remove,
};
