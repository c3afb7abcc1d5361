// Puts a picture or a page to its place: over an older one of its kind, and over nothing else.
import { open, rename, rm } from 'node:fs/promises';
import { explainWriting } from '../disk/explain-writing.js';
import { joinPieces, type OutputFile, PinbarError } from '../index.js';
import { writeSynced } from './publish-files.js';

/** How far into a file its title is looked for, bytes. */
const HEAD_BYTES = 64 * 1024;

/** What a ticket of pinbar's own says before its root. */
const XJDF_MARK = '<!-- pinbar run sheet -->';
/** The group around a mirrored pass. */
const TURNED_MARK = '<g id="pinbar-turned"';

/** The first bytes of a file; null where there is none. */
async function readHead(path: string): Promise<string | null> {
  try {
    const handle = await open(path, 'r');
    try {
      const { buffer, bytesRead } = await handle.read({ buffer: Buffer.alloc(HEAD_BYTES) });
      return buffer.toString('utf8', 0, bytesRead);
    } finally {
      await handle.close();
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

/** What tells a file of its kind from others: its title up to the name, or the kind of its JSON document. */
function kindOf(head: string): string {
  for (const mark of [XJDF_MARK, TURNED_MARK]) if (head.includes(mark)) return mark;
  const title = head.indexOf('<title>');
  if (title >= 0) return head.slice(title, head.indexOf(' of ') + 1);
  return /^\{\s*"pinbar": 1,\s*"document": "[^"]*"/.exec(head)?.[0].replace(/\s+/g, '') ?? '';
}

/**
 * Writes a file in place of an older one of its kind, and over nothing else.
 *
 * @param what - What files of its kind are called.
 * @throws PinbarError `write/exists` where another file has that name, `write/failed`; then nothing is changed.
 */
export async function publishOver(path: string, file: OutputFile, what: string): Promise<void> {
  const fresh = `${path}.part`;
  try {
    const head = await readHead(path);
    const own = Buffer.from(joinPieces(file.pieces).subarray(0, HEAD_BYTES)).toString('utf8');
    if (head !== null && kindOf(head) !== kindOf(own)) {
      throw new PinbarError('write/exists', {
        message: `${path} is there already and is not a ${what}.`,
        remedy: 'Name another place with --out.',
        place: { file: path },
      });
    }
    await writeSynced(fresh, file);
    await rename(fresh, path);
  } catch (error) {
    if (error instanceof PinbarError) throw error;
    await rm(fresh, { force: true });
    throw new PinbarError(
      'write/failed',
      {
        message: `${path} could not be written: ${explainWriting(error)}.`,
        remedy: 'Check the folder, its rights and the free space, then run the same command again.',
        place: { file: path },
      },
      [],
      error,
    );
  }
}

/** Writes the picture of the checks, as `publishOver` does. */
export async function publishPicture(path: string, picture: OutputFile): Promise<void> {
  await publishOver(path, picture, 'picture of checks');
}
