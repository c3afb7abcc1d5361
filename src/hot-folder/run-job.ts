// Runs a job: is it made already, does a worker make it, and where does it end.
import { createHash } from 'node:crypto';
import { type LimitChanges, PinbarError, readTicket } from '../index.js';
import { keyOf } from './choose-ticket.js';
import { endDone, endFailed, type JobFacts, noFacts, parkJob, plainReport } from './end-job.js';
import { FileTrouble, readDelivered, sayUnread } from './file-trouble.js';
import { joinPath } from './folder-disk.js';
import type { JobAsked, JobMade, WorkerEnd } from './job-message.js';
import { nameOf, sayName } from './job-record.js';
import { ticketOf } from './job-ticket.js';
import type { Ending } from './journal.js';
import { mostBytesOf } from './most-bytes.js';
import { isPublished, publishOutput, settleNaming } from './publish-output.js';
import { artName, type HeldJob, type Station, sayJob } from './station.js';
import type { WorkerResult } from './worker-pool.js';

/** What is told about a job. */
export interface JobEvent {
  readonly kind: Ending | 'waiting' | 'again' | 'lost';
  readonly id: string;
  readonly name: string;
  readonly bytes: number;
  readonly seconds: number;
  readonly codes: readonly string[];
}

/** What jobs are run with. */
export interface Runner {
  readonly station: Station;
  readonly ask: (asked: JobAsked) => Promise<WorkerResult>;
  readonly limits: LimitChanges;
  readonly onEvent: (event: JobEvent) => void;
  /** Keys that are being made here. */
  readonly keys: Map<string, Promise<unknown>>;
}

/** A job that runs. */
export interface RunningJob extends HeldJob {
  /** Whether an earlier run was cut off. */
  readonly interrupted: boolean;
  /** Whether it runs with nothing beside it. */
  readonly alone: boolean;
}

/** Words for a worker that gave no answer. */
export const WORKER_ENDS: Readonly<Record<Exclude<WorkerEnd, 'stopped'>, string>> = {
  died: 'The process that worked on this file died, and again with nothing else running. The file was set aside.',
  time: 'This file takes longer than a job may, and again with nothing else running. It was set aside.',
  memory: 'This file needs more memory than a job may use, and again with nothing else running. It was set aside.',
};

interface Art {
  readonly bytes: number;
  readonly sha256: string;
}

/** The art is read once for its hash. */
function hashArt({ disk }: Station, job: HeldJob): Art {
  const name = nameOf(job.record);
  const bytes = readDelivered(disk, { path: joinPath(job.folder, name), what: `The file ${sayName(name)}` });
  return { bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') };
}

/** True where the art is larger than a job may read; then it is set aside without being read. */
function isTooLarge(runner: Runner, job: RunningJob): boolean {
  const allowed = mostBytesOf(runner.limits);
  const bytes = runner.station.disk.look(joinPath(job.folder, nameOf(job.record)))?.bytes ?? 0;
  if (bytes <= allowed) return false;
  const text = `${sayName(nameOf(job.record))} has ${bytes} bytes; ${allowed} are allowed.\nMake it smaller, or raise the bound of the watcher with --limit bytes=${bytes}.`;
  failJob(runner, job, text, { ...noFacts(['limit/bytes']), bytes });
  return true;
}

/** The key of a job whose files follow from bytes and ticket alone; null where linked pictures count too, or the ticket is wrong. */
function earlyKey(art: Art, ticket: string | null): string | null {
  try {
    const linked = readTicket(ticket ?? { pinbar: 1 }).linkedPictures === 'embed';
    return linked ? null : keyOf(art.sha256, ticket);
  } catch (error) {
    if (error instanceof PinbarError) return null;
    throw error;
  }
}

function isText(name: Buffer): boolean {
  return Buffer.from(name.toString('utf8')).equals(name);
}

/** Folder that linked pictures are looked for in: that which the art was dropped in. */
function picturesIn({ layout }: Station, job: HeldJob): string | null {
  const folder = joinPath(layout.in, ...job.record.from.slice(0, -1));
  return isText(folder) ? folder.toString() : null;
}

/** Tells what became of a job. */
export function tellJob(runner: Runner, job: HeldJob, kind: JobEvent['kind'], facts: JobFacts): void {
  const { bytes, seconds, codes } = facts;
  runner.onEvent({ kind, id: job.record.id, name: sayJob(job), bytes, seconds, codes });
}

/** Sets a job aside with a report in a few words. */
export function failJob(runner: Runner, job: HeldJob, text: string, facts: JobFacts): void {
  endFailed(runner.station, job, plainReport(text), facts);
  tellJob(runner, job, 'failed', facts);
}

/** Sets a job aside of which a file cannot be read. */
export function failUnread(runner: Runner, job: HeldJob, error: FileTrouble): void {
  failJob(runner, job, sayUnread(error), noFacts(['read/failed']));
}

interface Run {
  readonly runner: Runner;
  readonly job: RunningJob;
  readonly art: Art;
  readonly ticket: string | null;
}

function publish({ runner, job, art, ticket }: Run, key: string | null, made: JobMade, facts: JobFacts): void {
  const { station } = runner;
  const naming = settleNaming(station, job, key ?? keyOf(art.sha256, ticket, made.pictures));
  if (publishOutput(station, job, made.files, naming, art.sha256)) {
    endDone(station, job, naming.out, 'done', facts);
    tellJob(runner, job, 'done', facts);
    return;
  }
  const text = `${naming.out} in out/ is not what this job would put there. Take it away, and drop the file again.`;
  failJob(runner, job, text, facts);
}

/** True where an equal job is already in `out/`; then the delivery is filed beside it. */
function isDoubled({ runner, job, art }: Run, key: string, facts: JobFacts): boolean {
  const { station } = runner;
  const naming = settleNaming(station, job, key);
  if (!isPublished(station, naming.out, art.sha256)) return false;
  const ending = naming.id === job.record.id ? 'done' : 'duplicate';
  endDone(station, job, naming.out, ending, facts);
  tellJob(runner, job, ending, facts);
  return true;
}

/** How a run ended; `again`: it is to be run once more with nothing beside it, `held`: it was stopped and stays here. */
export type RunEnd = 'ended' | 'again' | 'held';

function endWithout({ runner, job }: Run, end: WorkerEnd, facts: JobFacts): RunEnd {
  if (end === 'stopped') return 'held';
  if (!job.alone) {
    tellJob(runner, job, 'again', facts);
    return 'again';
  }
  failJob(runner, job, WORKER_ENDS[end], { ...facts, codes: [`worker/${end}`] });
  return 'ended';
}

async function askWorker(run: Run, key: string | null): Promise<RunEnd> {
  const { runner, job, art, ticket } = run;
  const { station } = runner;
  const began = performance.now();
  const name = nameOf(job.record);
  const result = await runner.ask({
    path: joinPath(job.folder, name),
    fileName: key === null ? artName(job.record) : settleNaming(station, job, key).file,
    ticket,
    picturesIn: picturesIn(station, job),
    limits: runner.limits,
  });
  const seconds = Math.round(performance.now() - began) / 1000;
  const facts: JobFacts = { ...art, codes: [], seconds, interrupted: job.interrupted };
  if ('end' in result) return endWithout(run, result.end, facts);
  if ('unread' in result) throw new FileTrouble(`The file ${sayName(name)}`, result.unread);
  if ('fault' in result) {
    const text = `This is a fault of pinbar, not of the file. Please report it with the lines below.\n${result.fault}`;
    failJob(runner, job, text, { ...facts, codes: ['fault'] });
    return 'ended';
  }
  const { answer } = result;
  const known = { ...facts, codes: answer.codes };
  // Whoever delivered it has it open still, and wrote on since its hash was taken.
  if (answer.kind === 'made' && answer.sha256 !== art.sha256)
    throw new FileTrouble(`The file ${sayName(name)}`, 'ETXTBSY');
  if (answer.kind === 'made') publish(run, key, answer, known);
  else if (answer.kind === 'asks') {
    parkJob(station, job, answer);
    tellJob(runner, job, 'waiting', known);
  } else {
    endFailed(station, job, answer, known);
    tellJob(runner, job, 'failed', known);
  }
  return 'ended';
}

/**
 * Runs a job to its end.
 *
 * @throws JobLost where another watcher took it over; FileTrouble where a file of its own cannot be read; errors of the system about
 *   the rooms. The job folder is then as it was, or whole in another room.
 */
export async function runJob(runner: Runner, job: RunningJob): Promise<RunEnd> {
  const { station, keys } = runner;
  if (isTooLarge(runner, job)) return 'ended';
  const art = hashArt(station, job);
  const ticket = ticketOf(station, job);
  const run: Run = { runner, job, art, ticket };
  const key = earlyKey(art, ticket);
  if (key === null) return askWorker(run, null);
  // An equal job that runs here is waited for, and then found.
  while (keys.has(key)) await keys.get(key);
  if (isDoubled(run, key, { ...art, codes: [], seconds: 0, interrupted: job.interrupted })) return 'ended';
  const asked = askWorker(run, key);
  keys.set(
    key,
    asked.catch(() => undefined),
  );
  try {
    return await asked;
  } finally {
    keys.delete(key);
  }
}
