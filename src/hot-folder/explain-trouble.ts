// Which errors of the system are trouble with the whole folder, and how they are said.
import { explainWriting } from '../disk/explain-writing.js';
import { codeOf } from './folder-disk.js';
import { FolderTrouble } from './layout.js';

const REASONS: Readonly<Record<string, string>> = {
  EIO: 'the disk reports an error',
  EUCLEAN: 'the file system is damaged and has to be checked',
  EBADMSG: 'the file system is damaged and has to be checked',
  EMFILE: 'too many files are open in this process',
  ENFILE: 'too many files are open on this machine',
  ENOMEM: 'the machine has no memory left',
  ESTALE: 'the share was taken away and brought back',
  ENOTCONN: 'the share is not connected',
  EHOSTDOWN: 'the server of the share is down',
  ETIMEDOUT: 'the server of the share does not answer',
  ENXIO: 'the disk is gone',
  ENODEV: 'the disk is gone',
  EXDEV: 'a room lies on another disk than the others',
  EBUSY: 'the file is held by another program',
  EINTR: 'the call was interrupted',
  EAGAIN: 'the system asks to try again',
};

/** Errors of rights and room, which concern the one file or the whole folder, by what was tried. */
const FOLDER_CODES = new Set([...Object.keys(REASONS), 'ENOSPC', 'EDQUOT', 'EROFS', 'EACCES', 'EPERM', 'ENOENT']);

/** Whether a call on a room of the hot folder failed for a reason that others will meet as well, and that can be mended. */
export function isFolderTrouble(error: unknown): boolean {
  return error instanceof FolderTrouble || FOLDER_CODES.has(codeOf(error));
}

/** The trouble in words, and what to do. */
export function explainTrouble(error: unknown): string {
  if (error instanceof FolderTrouble) return `${error.message} Work goes on by itself when that is mended.`;
  const reason = REASONS[codeOf(error)] ?? explainWriting(error);
  const { path, dest } = error as NodeJS.ErrnoException & { readonly dest?: string };
  // Whose rights are to be mended has to be known; what the system says itself names the place already.
  const where = path === undefined || reason.includes(path) ? '' : ` (${[path, dest].filter(Boolean).join(' to ')})`;
  return `The hot folder rests: ${reason}${where}. Nothing is lost, and work goes on by itself when that is mended.`;
}
