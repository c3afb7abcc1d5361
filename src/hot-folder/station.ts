// A watcher's own place at a hot folder, handed to every step.
import { nameJob } from '../road/name-job.js';
import { codeOf, type FolderDisk, joinPath } from './folder-disk.js';
import { type JobRecord, nameOf, sayFrom, sayName } from './job-record.js';
import type { JournalText } from './journal.js';
import { checkRoom, type EndRoom, type Layout } from './layout.js';

/** A watcher at its folder. */
export interface Station {
  readonly disk: FolderDisk;
  readonly layout: Layout;
  /** Its own folder in `work/`. */
  readonly home: Buffer;
  /** Name of the owner, as said or by host. */
  readonly owner: string;
  /** A new name for a job folder, unlike any other. */
  readonly nextId: () => string;
  /** Time for the journal, ISO 8601. */
  readonly now: () => string;
  /** Hears of each line that was written to the journal. */
  readonly onLine: (text: JournalText) => void;
}

/** A job that this watcher holds. */
export interface HeldJob {
  readonly folder: Buffer;
  readonly record: JobRecord;
}

/** The job folder is gone: another watcher took it over. */
export class JobLost extends Error {
  constructor() {
    super('another watcher took the job over');
    this.name = 'JobLost';
  }
}

/** A name without what a terminal or a command would take for something else. */
function tameName(name: string): string {
  return name.replace(/^-/, '_').replaceAll('\ufffd', '_');
}

/** A name safe everywhere for the folder of a job: its own, and the folders it came through. */
export function folderName(record: JobRecord): string {
  return tameName(nameJob(record.from.map((name) => nameJob(sayName(name))).join('_')));
}

/** What the files of a job are called by. */
export function artName(record: JobRecord): string {
  return tameName(sayName(nameOf(record)));
}

const TAKEN = new Set(['ENOTEMPTY', 'EEXIST', 'ENOTDIR', 'EISDIR']);

/** Whether a rename failed because something stands there. */
export function isTaken(error: unknown): boolean {
  return TAKEN.has(codeOf(error));
}

/**
 * Moves a job folder to a room where jobs end, in one step, under a name that is free there.
 *
 * @returns The name it got.
 */
export function settleJob(station: Station, job: HeldJob, room: EndRoom): string {
  const { disk, layout } = station;
  const stem = folderName(job.record);
  checkRoom(disk, layout, room);
  for (let count = 1; ; count++) {
    const name = count === 1 ? stem : `${stem}-${count}`;
    const target = joinPath(layout[room], name);
    if (disk.look(target) !== null) continue;
    try {
      disk.move(job.folder, target);
    } catch (error) {
      if (isTaken(error)) continue;
      if (disk.look(job.folder) === null && disk.look(layout[room]) !== null) throw new JobLost();
      throw error;
    }
    disk.sync(layout[room]);
    return name;
  }
}

/** Where a job came from, in words, for logs and journals. */
export function sayJob(job: HeldJob): string {
  return sayFrom(job.record);
}
