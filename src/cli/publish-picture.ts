// Puts the picture of the checks beside the drawing: over an older one of its kind, and over nothing else.
import { open, rename, rm } from 'node:fs/promises';
import { explainWriting } from '../disk/explain-writing.js';
import { joinPieces, type OutputFile, PinbarError } from '../index.js';
import { writeSynced } from './publish-files.js';

/** How far into a file its title is looked for, bytes. */
const HEAD_BYTES = 400;

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

/** Everything up to the name in the title: the same in every picture of checks. */
function titleOf(head: string): string {
  return head.slice(head.indexOf('<title>'), head.indexOf(' of ') + 1);
}

/**
 * Writes the picture.
 *
 * @throws PinbarError `write/exists` where another file has that name, `write/failed`; then nothing is changed.
 */
export async function publishPicture(path: string, picture: OutputFile): Promise<void> {
  const fresh = `${path}.part`;
  try {
    const head = await readHead(path);
    const own = Buffer.from(joinPieces(picture.pieces).subarray(0, HEAD_BYTES)).toString('utf8');
    if (head !== null && titleOf(head) !== titleOf(own)) {
      throw new PinbarError('write/exists', {
        message: `${path} is there already and is not a picture of checks.`,
        remedy: 'Name another file with --out.',
        place: { file: path },
      });
    }
    await writeSynced(fresh, picture);
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
