// Jobs that a watcher left behind: taken over one by one by a rename, then finished or run again.
import { fetchBeside } from './claim-job.js';
import { endFailed, endFailedAgain, type JobFacts, noFacts, plainReport, sweepJob } from './end-job.js';
import { FileTrouble, isUnreadable } from './file-trouble.js';
import { codeOf, joinPath } from './folder-disk.js';
import { nameOf, readRecord } from './job-record.js';
import { hashTickets, markTickets } from './job-ticket.js';
import type { HeldJob, Station } from './station.js';

/** Names of our own in a job folder. */
function isOwnName(name: Buffer): boolean {
  return name[0] === 0x2e || ['report', 'question.txt'].includes(name.toString('latin1'));
}

/** Hears of a job that was set aside because nothing is known of it any more. */
export type OnLost = (job: HeldJob, facts: JobFacts) => void;

/** A folder without a readable record: if anything was delivered in it, it is kept where people see it. */
export function recoverUnknown(station: Station, folder: Buffer, onLost: OnLost): void {
  const { disk } = station;
  const delivered = disk.list(folder).filter((entry) => !isOwnName(entry.name));
  if (delivered.length === 0) {
    disk.remove(folder);
    return;
  }
  const record = { id: station.nextId(), from: [delivered[0]!.name], beside: null, ticket: null };
  const job: HeldJob = { folder, record: { ...record, aloneRuns: 0, asked: null } };
  const facts = noFacts(['read/failed']);
  endFailed(
    station,
    job,
    plainReport('The record of this job was lost, so its ticket is not known. Drop it again.'),
    facts,
  );
  onLost(job, facts);
}

/**
 * A job folder in the watcher's own room, as a job that can be run; null where nothing is left to do.
 *
 * @throws FileTrouble about its record; errors of the system about the rooms of the hot folder.
 */
export function recoverJob(station: Station, folder: Buffer, onLost: OnLost): HeldJob | null {
  const { disk } = station;
  const record = readRecord(disk, folder);
  if (record === null) {
    recoverUnknown(station, folder, onLost);
    return null;
  }
  const job: HeldJob = { folder, record };
  if (disk.look(joinPath(folder, nameOf(record))) === null) {
    // Never claimed; what else was put here by hand is kept.
    recoverUnknown(station, folder, onLost);
    return null;
  }
  fetchBeside(station, job);
  if (endFailedAgain(station, job)) {
    onLost(job, noFacts([]));
    return null;
  }
  sweepJob(station, job);
  return job;
}

/** Job folders in a watcher's room, by name. */
export function listJobs(station: Station, home: Buffer): readonly Buffer[] {
  const entries = station.disk.list(home).filter((entry) => entry.kind === 'folder' && entry.name[0] !== 0x2e);
  return entries.map((entry) => entry.name).sort(Buffer.compare);
}

/** Takes the jobs of another room over, each in one step; what another took first is left to it. */
export function takeOver(station: Station, home: Buffer): readonly Buffer[] {
  const { disk } = station;
  const taken: Buffer[] = [];
  for (const name of listJobs(station, home)) {
    const target = joinPath(station.home, name);
    try {
      disk.move(joinPath(home, name), target);
      taken.push(target);
    } catch (error) {
      if (codeOf(error) !== 'ENOENT') throw error;
    }
  }
  // The empty room is taken away next: that must not be all that the disk keeps of what became of its jobs.
  const { done, failed, waiting, out } = station.layout;
  for (const room of [done, failed, waiting, out, station.home]) disk.sync(room);
  return taken;
}

/** A parked job whose tickets changed since it was parked, and what they look like now. */
export interface Answered {
  readonly folder: Buffer;
  /** Changes as long as somebody writes. */
  readonly mark: string;
}

/** Parked jobs that somebody answers. One that cannot be read stays where it is, and keeps no other from going on. */
export function listAnswered(station: Station, onUnread: (folder: Buffer) => void): readonly Answered[] {
  const { disk, layout } = station;
  const found: Answered[] = [];
  for (const entry of disk.list(layout.waiting)) {
    if (entry.kind !== 'folder' || entry.name[0] === 0x2e) continue;
    const folder = joinPath(layout.waiting, entry.name);
    try {
      const record = readRecord(disk, folder);
      if (record === null || hashTickets(station, folder) === record.asked) continue;
      found.push({ folder, mark: markTickets(station, folder) });
    } catch (error) {
      if (error instanceof FileTrouble || isUnreadable(error)) onUnread(folder);
      // Taken by another watcher between two looks.
      else if (codeOf(error) !== 'ENOENT') throw error;
    }
  }
  return found;
}

/** Takes a parked job up again, in one step: its folder in the watcher's room, or null where another was quicker. */
export function resumeJob(station: Station, folder: Buffer): Buffer | null {
  const { disk } = station;
  const record = readRecord(disk, folder);
  if (record === null) return null;
  const target = joinPath(station.home, record.id);
  try {
    disk.move(folder, target);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
  return target;
}
