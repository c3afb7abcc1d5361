// The passes as they are handed out: derived and laid out where the ticket asks, then made smaller where it asks.
import type { Finding } from '../model/finding.js';
import type { JobResult, RoadOptions } from '../model/job.js';
import type { Ticket } from '../model/ticket.js';
import { compactFiles } from './compact-files.js';
import { derivePasses } from './derive-passes.js';
import { layOutJob, type ProvedFiles, type SheetedJob } from './lay-out-job.js';

/** Passes as they are handed out. */
export interface FinishedPasses extends ProvedFiles {
  /** What came of order and ties. */
  readonly lines: Pick<JobResult, 'sequence' | 'ties' | 'tieFiles'>;
  readonly findings: readonly Finding[];
}

/** Puts in order, ties, lays out and compacts the proved passes. */
export async function finishPasses(
  plain: ProvedFiles,
  job: SheetedJob,
  ticket: Ticket,
  options: RoadOptions,
): Promise<FinishedPasses> {
  const derived = await derivePasses(plain.files, job.original.assignment.passes, ticket, options);
  const { sequence, ties, findings } = derived;
  const all = { files: [...derived.files, ...derived.tieFiles], proof: plain.proof };
  const { proof, files: laidOut } = await layOutJob(all, { ...job, tiePasses: derived.tiePasses }, ticket, options);
  const made = await compactFiles(laidOut, ticket, options);
  const count = plain.files.length;
  const lines = { sequence, ties, tieFiles: made.files.slice(count) };
  return { files: made.files.slice(0, count), proof, lines, findings: [...findings, ...made.findings] };
}
