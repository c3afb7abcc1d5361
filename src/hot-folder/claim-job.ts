// Claims a delivery: its job folder is made and kept first, then one rename takes the art, and nobody else can.
import { chooseTicket, type FoundTicket } from './choose-ticket.js';
import { isWholeTicket } from './ends-well.js';
import { FileTrouble } from './file-trouble.js';
import { codeOf, joinPath } from './folder-disk.js';
import { type JobRecord, nameOf, printRecord, RECORD_NAME } from './job-record.js';
import type { Delivery } from './scan-in.js';
import type { HeldJob, Station } from './station.js';

/**
 * Why a delivery was not claimed. `gone`: another took it or it was taken back; `not-allowed`: its own folder does not let go of it;
 * `ticket-not-readable`: it shares a ticket with others, and nobody can read that; `ticket-not-complete`: that is being written.
 */
export type ClaimRefusal = 'gone' | 'not-allowed' | 'ticket-not-readable' | 'ticket-not-complete';

/** Takes a ticket that belongs to the art alone along, where it still lies there. */
export function fetchBeside(station: Station, job: HeldJob): void {
  const { disk, layout } = station;
  const { from, beside } = job.record;
  if (beside === null) return;
  const there = joinPath(layout.in, ...from.slice(0, -1), beside);
  if (disk.look(there)?.kind === 'file') disk.move(there, joinPath(job.folder, beside));
}

/** Takes away a job folder that never got its art. */
function dropFolder(station: Station, folder: Buffer): void {
  station.disk.remove(folder);
}

function findTicket({ disk, layout }: Station, delivery: Delivery): FoundTicket | null {
  try {
    return chooseTicket(disk, layout, delivery);
  } catch (error) {
    if (error instanceof FileTrouble) return null;
    throw error;
  }
}

/**
 * Claims a delivery.
 *
 * @throws Errors of the system about the rooms of the hot folder; then the delivery is where it was, or in its job folder.
 */
export function claimJob(station: Station, delivery: Delivery): HeldJob | ClaimRefusal {
  const { disk, home } = station;
  // Most of what is lost to other watchers is seen here, before anything is written for it.
  if (disk.look(delivery.path)?.kind !== 'file') return 'gone';
  const ticket = findTicket(station, delivery);
  if (ticket === null) return 'ticket-not-readable';
  if (ticket.text !== null && !ticket.beside && !isWholeTicket(ticket.text)) return 'ticket-not-complete';
  const id = station.nextId();
  const folder = joinPath(home, id);
  const record: JobRecord = {
    id,
    from: delivery.from,
    beside: ticket.beside && !delivery.besideShared ? delivery.beside : null,
    ticket: ticket.text,
    aloneRuns: 0,
    asked: null,
  };
  disk.makeFolder(folder);
  disk.writeNew(joinPath(folder, RECORD_NAME), [printRecord(record)]);
  disk.sync(folder);
  const taken = joinPath(folder, nameOf(record));
  try {
    disk.move(delivery.path, taken);
  } catch (error) {
    const code = codeOf(error);
    if (code !== 'ENOENT' && code !== 'EACCES' && code !== 'EPERM') throw error;
    dropFolder(station, folder);
    return code === 'ENOENT' ? 'gone' : 'not-allowed';
  }
  const job = { folder, record };
  fetchBeside(station, job);
  return job;
}
