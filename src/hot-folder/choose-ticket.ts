// Which ticket counts for a job: the one beside the art, else that of the nearest folder, else that of the hot folder.
import { createHash } from 'node:crypto';
import { readTicket, writeTicket } from '../index.js';
import { type FolderDisk, joinPath } from './folder-disk.js';
import type { Layout } from './layout.js';
import type { Delivery } from './scan-in.js';

/** Longest ticket that is read, bytes. */
const MOST_BYTES = 4 * 1024 * 1024;

/** A ticket as it was found. */
export interface FoundTicket {
  /** JSON; null where there is none. */
  readonly text: string | null;
  /** Whether it lies beside the art and belongs to that alone. */
  readonly beside: boolean;
  /** In words: where it lies. */
  readonly where: string;
}

/** The text of a ticket; null where there is no such file. */
export function readTicketFile(disk: FolderDisk, path: Buffer): string | null {
  if (disk.look(path)?.kind !== 'file') return null;
  return disk
    .read(path, 0, MOST_BYTES)
    .toString('utf8')
    .replace(/^\ufeff/, '');
}

/** Finds the ticket of a delivery. A nearer one takes the place of the others whole. */
export function chooseTicket(disk: FolderDisk, layout: Layout, delivery: Delivery): FoundTicket {
  const folders = delivery.from.slice(0, -1);
  if (delivery.beside !== null) {
    const text = readTicketFile(disk, joinPath(layout.in, ...folders, delivery.beside));
    if (text !== null) return { text, beside: true, where: 'the ticket beside the art' };
  }
  for (let depth = folders.length; depth >= 0; depth--) {
    const text = readTicketFile(disk, joinPath(layout.in, ...folders.slice(0, depth), 'ticket.json'));
    if (text !== null) return { text, beside: false, where: 'the ticket of its folder' };
  }
  return { text: readTicketFile(disk, layout.ticket), beside: false, where: 'ticket.json of the hot folder' };
}

/**
 * A name for bytes under a ticket: the same for the same job, whatever the files are called.
 *
 * @throws PinbarError where the ticket cannot be read.
 */
export function keyOf(bytesHash: string, ticket: string | null, pictures: readonly string[] = []): string {
  const full = JSON.stringify(writeTicket(readTicket(ticket ?? { pinbar: 1 })));
  const hash = createHash('sha256');
  hash.update(`pinbar job\n${bytesHash}\n${full}\n`);
  for (const picture of pictures) hash.update(`${picture}\n`);
  return hash.digest('hex');
}
