// Trouble with one file alone: its bytes are not given, by the disk or for want of rights, while its folders work.
import { codeOf, type FolderDisk } from './folder-disk.js';

/** What the disk itself says of bytes that it cannot give. */
const BROKEN: Readonly<Record<string, string>> = {
  EIO: 'the disk reports an error there',
  EUCLEAN: 'the file system is damaged there',
  EBADMSG: 'the file system is damaged there',
};

/** What else keeps a file that somebody delivered from being read. */
const REFUSED: Readonly<Record<string, string>> = {
  EACCES: 'reading it is not allowed',
  EPERM: 'reading it is not allowed',
  EBUSY: 'another program holds it',
  ETXTBSY: 'another program holds it',
  EINVAL: 'it is no ordinary file',
  ELOOP: 'it is a link',
  ENOENT: 'it is not there any more',
};

const HELD = new Set(['EBUSY', 'ETXTBSY']);

/** How often a file is read before its job is set aside, and how long one try comes after the other, ms. */
export const FILE_TRIES = 3;
export const FILE_TRIES_APART_MS = 1000;

/** One file cannot be read. The job it belongs to is tried again, and set aside when that does not help; nobody else waits for it. */
export class FileTrouble extends Error {
  readonly code: string;

  constructor(what: string, code: string, cause?: unknown) {
    super(`${what} could not be read: ${BROKEN[code] ?? REFUSED[code] ?? code}.`, { cause });
    this.name = 'FileTrouble';
    this.code = code;
  }
}

/** A report about it: what, how often, and what to do. */
export function sayUnread(error: FileTrouble): string {
  const remedy =
    error.code in BROKEN
      ? 'Save the file anew where it came from and drop it again. If this happens to other files too, the disk needs to be looked at.'
      : HELD.has(error.code)
        ? 'Close it where it is open, and drop it again.'
        : 'Let the user that the watcher runs as read it, and drop it again.';
  return `${error.message} It was tried ${FILE_TRIES} times, so the job was set aside; the others went on.\n${remedy}`;
}

/** Whether the disk itself cannot give what stands there. */
export function isBroken(error: unknown): boolean {
  return codeOf(error) in BROKEN;
}

/** Whether what was delivered cannot be read, for a reason that lies with it alone. */
export function isUnreadable(error: unknown): boolean {
  const code = codeOf(error);
  return code !== 'ENOENT' && (code in BROKEN || code in REFUSED);
}

/** A file to be read, and how it is called. */
export interface NamedFile {
  readonly path: Buffer;
  /** As a message says it, first word of a sentence. */
  readonly what: string;
  readonly atMost?: number;
}

function readAs(disk: FolderDisk, file: NamedFile, isItsOwn: (error: unknown) => boolean): Buffer {
  try {
    return disk.read(file.path, 0, file.atMost);
  } catch (error) {
    if (isItsOwn(error)) throw new FileTrouble(file.what, codeOf(error), error);
    throw error;
  }
}

/**
 * Reads what somebody delivered.
 *
 * @throws FileTrouble; other errors of the system concern the whole folder.
 */
export function readDelivered(disk: FolderDisk, file: NamedFile): Buffer {
  return readAs(disk, file, isUnreadable);
}

/**
 * Reads what a watcher wrote for one job. Missing rights to that are trouble with the folder.
 *
 * @throws FileTrouble; other errors of the system concern the whole folder.
 */
export function readWritten(disk: FolderDisk, file: NamedFile): Buffer {
  return readAs(disk, file, isBroken);
}
