// The ticket that counts for a job in its folder: what it came with, and the answers that were put beside it.
import { createHash } from 'node:crypto';
import { readTicketFile } from './choose-ticket.js';
import { FileTrouble } from './file-trouble.js';
import { joinPath } from './folder-disk.js';
import { type JobRecord, nameOf, sayName } from './job-record.js';
import { isTicketName } from './scan-in.js';
import type { HeldJob, Station } from './station.js';

/** Names of the tickets in a job folder, in their order. */
function listTickets(station: Station, folder: Buffer): readonly Buffer[] {
  return station.disk
    .list(folder)
    .filter((entry) => entry.kind === 'file' && isTicketName(entry.name))
    .map((entry) => entry.name)
    .sort(Buffer.compare);
}

/** A hash over all tickets in a job folder: another one means that somebody answered. */
export function hashTickets(station: Station, folder: Buffer): string {
  const hash = createHash('sha256');
  for (const name of listTickets(station, folder)) {
    hash.update(name).update('\n');
    hash.update(readTicketFile(station.disk, joinPath(folder, name)) ?? '').update('\n');
  }
  return hash.digest('hex');
}

/** Marks of the tickets in a job folder: they change as long as somebody writes. */
export function markTickets(station: Station, folder: Buffer): string {
  const marks = listTickets(station, folder).map((name) => station.disk.look(joinPath(folder, name))?.mark ?? '');
  return marks.join(' ');
}

function parseObject(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}

/** Whether a ticket is the art's own by its name: such a one counts whole, here as in `in/`. */
function isOwn(record: JobRecord, name: Buffer): boolean {
  const own = `${nameOf(record)
    .toString('latin1')
    .replace(/\.svgz?$/i, '')}.ticket.json`;
  return name.toString('latin1') === own;
}

/**
 * The ticket of a job, JSON. The art's own takes the place of the one that was used; each key of another answer takes the place of that key; what is no JSON object counts alone, to be refused.
 *
 * @throws FileTrouble: a job never runs without a ticket that it came with.
 */
export function ticketOf(station: Station, job: HeldJob): string | null {
  const { record, folder } = job;
  const names = listTickets(station, folder);
  // It could not be read when the art was claimed, so its text is nowhere else.
  if (record.ticket === null && record.beside !== null && !names.some((name) => name.equals(record.beside!))) {
    throw new FileTrouble(`The ticket ${sayName(record.beside)}`, 'ENOENT');
  }
  let text = record.ticket;
  // The whole one first, whatever its name: answers are laid over it.
  for (const name of [...names].sort((a, b) => Number(isOwn(record, b)) - Number(isOwn(record, a)))) {
    const own = readTicketFile(station.disk, joinPath(folder, name));
    if (own === null) continue;
    if (isOwn(record, name)) {
      text = own;
      continue;
    }
    const [before, answer] = [text === null ? {} : parseObject(text), parseObject(own)];
    text = before === null || answer === null ? own : JSON.stringify({ ...before, ...answer });
  }
  return text;
}
