// Which ticket counts for a job: the one beside the art, else that of the nearest folder, else that of the hot folder.
import { createHash } from 'node:crypto';
import { readTicket, writeTicket } from '../index.js';
import { FileTrouble, readDelivered } from './file-trouble.js';
import { type FolderDisk, joinPath } from './folder-disk.js';
import { FolderTrouble, type Layout } from './layout.js';
import type { Delivery } from './scan-in.js';

/** Longest ticket that is read, bytes. */
export const MOST_TICKET_BYTES: number = 4 * 1024 * 1024;

/** A ticket as it was found. */
export interface FoundTicket {
  /** JSON; null where there is none, or it lies beside the art and cannot be read. */
  readonly text: string | null;
  /** Whether it lies beside the art and belongs to that alone. */
  readonly beside: boolean;
  /** In words: where it lies. */
  readonly where: string;
}

/**
 * The text of a ticket; null where there is no such file.
 *
 * @throws FileTrouble.
 */
export function readTicketFile(disk: FolderDisk, path: Buffer): string | null {
  if (disk.look(path)?.kind !== 'file') return null;
  const what = `The ticket ${path.subarray(path.lastIndexOf('/') + 1).toString()}`;
  return readDelivered(disk, { path, what, atMost: MOST_TICKET_BYTES })
    .toString('utf8')
    .replace(/^\ufeff/, '');
}

/** The ticket beside the art; where it cannot be read the art takes it along, and the job says so. */
function readBeside(disk: FolderDisk, path: Buffer, shared: boolean): FoundTicket | null {
  const where = 'the ticket beside the art';
  try {
    const text = readTicketFile(disk, path);
    return text === null ? null : { text, beside: true, where };
  } catch (error) {
    if (shared || !(error instanceof FileTrouble)) throw error;
    return { text: null, beside: true, where };
  }
}

function readCommon(disk: FolderDisk, layout: Layout): string | null {
  try {
    return readTicketFile(disk, layout.ticket);
  } catch (error) {
    // It counts for everything that is dropped.
    if (error instanceof FileTrouble) throw new FolderTrouble(error.message, error.code, error);
    throw error;
  }
}

/** Where tickets that several files share may lie, nearest first: in the folders of `in/`, then that of the hot folder. */
export function listTicketPaths(layout: Layout, folders: readonly Buffer[]): readonly Buffer[] {
  const inside = folders.map((_, index) =>
    joinPath(layout.in, ...folders.slice(0, folders.length - index), 'ticket.json'),
  );
  return [...inside, joinPath(layout.in, 'ticket.json'), layout.ticket];
}

/**
 * Finds the ticket of a delivery. A nearer one takes the place of the others whole.
 *
 * @throws FileTrouble where a ticket that counts for several files cannot be read; FolderTrouble for that of the hot folder.
 */
export function chooseTicket(disk: FolderDisk, layout: Layout, delivery: Delivery): FoundTicket {
  const folders = delivery.from.slice(0, -1);
  if (delivery.beside !== null) {
    const found = readBeside(disk, joinPath(layout.in, ...folders, delivery.beside), delivery.besideShared);
    if (found !== null) return found;
  }
  for (const path of listTicketPaths(layout, folders).slice(0, -1)) {
    const text = readTicketFile(disk, path);
    if (text !== null) return { text, beside: false, where: 'the ticket of its folder' };
  }
  return { text: readCommon(disk, layout), beside: false, where: 'ticket.json of the hot folder' };
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
