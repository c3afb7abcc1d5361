// How a job ends: its report is written, its line in the journal, and then one rename moves its folder out of `work/`.
import { joinPath } from './folder-disk.js';
import { replaceRecord, sayFrom } from './job-record.js';
import { hashTickets } from './job-ticket.js';
import { type Ending, readEnding, writeJournal } from './journal.js';
import { type HeldJob, type Station, settleJob } from './station.js';

/** What is known of a job when it ends. */
export interface JobFacts {
  readonly bytes: number;
  readonly sha256: string | null;
  readonly codes: readonly string[];
  readonly seconds: number;
  /** Whether an earlier run was interrupted, so that its line may be there already. */
  readonly interrupted: boolean;
}

/** Facts of a job of which nothing but its codes is known; an earlier run may have been cut off. */
export function noFacts(codes: readonly string[]): JobFacts {
  return { bytes: 0, sha256: null, codes, seconds: 0, interrupted: true };
}

/** A report for people and for programs. */
export interface JobReport {
  readonly question: string;
  readonly text: string;
  readonly json: string;
  /** SVG; null where nothing could be drawn. */
  readonly picture: Uint8Array | null;
}

/** Name of the question in a parked job. */
const QUESTION = 'question.txt';

/** Hidden things of a run, and reports of an earlier one. */
export function sweepJob(station: Station, job: HeldJob): void {
  for (const name of ['.out', '.key', '.job.json.new', 'report', QUESTION]) {
    station.disk.remove(joinPath(job.folder, name));
  }
}

function writeReport(station: Station, job: HeldJob, report: JobReport, question: boolean): void {
  const { disk } = station;
  sweepJob(station, job);
  const folder = joinPath(job.folder, 'report');
  disk.makeFolder(folder);
  disk.writeNew(joinPath(folder, 'report.txt'), [Buffer.from(report.text)]);
  disk.writeNew(joinPath(folder, 'report.json'), [Buffer.from(report.json)]);
  if (report.picture !== null) disk.writeNew(joinPath(folder, 'findings.svg'), [report.picture]);
  disk.sync(folder);
  if (question) disk.writeNew(joinPath(job.folder, QUESTION), [Buffer.from(`${report.question}\n`)]);
  disk.sync(job.folder);
}

function journal(station: Station, job: HeldJob, ending: Ending, out: string | null, facts: JobFacts): void {
  const { disk, layout, owner } = station;
  const { id } = job.record;
  if (facts.interrupted && readEnding(disk, layout, id) !== null) {
    // Who wrote the line may have died before the disk kept it.
    disk.sync(layout.journal);
    return;
  }
  const { bytes, sha256, codes, seconds } = facts;
  const name = sayFrom(job.record);
  const line = { time: station.now(), id, owner, name, bytes, sha256, ending, out, codes, seconds };
  station.onLine(writeJournal(disk, layout, line));
}

/** Its files are in `out/`: the delivery goes to `done/`. */
export function endDone(
  station: Station,
  job: HeldJob,
  out: string,
  ending: 'done' | 'duplicate',
  facts: JobFacts,
): void {
  sweepJob(station, job);
  // Not every file system keeps renames in their order: the delivery is to be in its folder before that moves on.
  station.disk.sync(job.folder);
  journal(station, job, ending, out, facts);
  settleJob(station, job, 'done');
}

/** No files: the delivery goes to `failed/` with a report. */
export function endFailed(station: Station, job: HeldJob, report: JobReport, facts: JobFacts): void {
  writeReport(station, job, report, false);
  journal(station, job, 'failed', null, facts);
  settleJob(station, job, 'failed');
}

/** Moves on a job that was cut off between its line in the journal and its room: run again it might end otherwise than that line says. */
export function endFailedAgain(station: Station, job: HeldJob): boolean {
  const { disk, layout } = station;
  if (readEnding(disk, layout, job.record.id) !== 'failed') return false;
  if (disk.look(joinPath(job.folder, 'report', 'report.txt')) === null) return false;
  disk.sync(layout.journal);
  settleJob(station, job, 'failed');
  return true;
}

/** An answer is needed: the delivery is parked in `waiting/` with the question. It has not ended, so the journal says nothing. */
export function parkJob(station: Station, job: HeldJob, report: JobReport): void {
  writeReport(station, job, report, true);
  const asked = hashTickets(station, job.folder);
  replaceRecord(station.disk, job.folder, { ...job.record, asked, aloneRuns: 0 });
  settleJob(station, job, 'waiting');
}

/** A report in a few words, where there are no findings to tell. */
export function plainReport(text: string): JobReport {
  const json = `${JSON.stringify({ pinbar: 1, document: 'report', outcome: 'refused', message: text, findings: [] }, null, 2)}\n`;
  return { question: text, text: `${text}\n`, json, picture: null };
}
