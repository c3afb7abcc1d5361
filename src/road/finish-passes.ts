// The passes as they are handed out: derived and laid out where the ticket asks, then made smaller where it asks.
import type { Finding } from '../model/finding.js';
import type { JobResult, RoadOptions } from '../model/job.js';
import type { Ticket } from '../model/ticket.js';
import { compactFiles } from './compact-files.js';
import { derivePasses } from './derive-passes.js';
import { layOutJob, type ProvedFiles, type SheetedJob } from './lay-out-job.js';
import { measureFiles } from './measure-files.js';
import { turnPasses } from './turn-passes.js';

/** Passes as they are handed out. */
export interface FinishedPasses extends ProvedFiles {
  /** What came of order, ties and turned sheets. */
  readonly lines: Pick<JobResult, 'sequence' | 'ties' | 'tieFiles' | 'turnedFiles'>;
  readonly findings: readonly Finding[];
}

/** Puts in order, ties, lays out and compacts the proved passes, and mirrors those on the reverse. */
export async function finishPasses(
  plain: ProvedFiles,
  job: SheetedJob,
  ticket: Ticket,
  options: RoadOptions,
): Promise<FinishedPasses> {
  const derived = await derivePasses(plain.files, job.original.assignment.passes, ticket, options);
  const { sequence, ties, findings } = derived;
  const whole = { files: [...derived.files, ...derived.tieFiles], proof: plain.proof };
  const { proof, files: laidOut } = await layOutJob(whole, { ...job, tiePasses: derived.tiePasses }, ticket, options);
  const made = await compactFiles(laidOut, ticket, options);
  const count = plain.files.length;
  const { artwork, assignment } = job.original;
  const ofPass = made.files.map((file, i) => ({
    file,
    pass: assignment.passes[i < count ? i : derived.tiePasses[i - count]!]!,
    drawnMm: i < count ? (proof.passes[i]?.drawnExtentMm ?? null) : null,
  }));
  const size = measureFiles({ artwork, ticket, layout: job.sheet?.layout ?? null });
  const turned = await turnPasses(ofPass, ticket, size, options);
  const lines = { sequence, ties, tieFiles: made.files.slice(count), turnedFiles: turned.turnedFiles };
  const all = [...findings, ...made.findings, ...turned.findings];
  return { files: made.files.slice(0, count), proof, lines, findings: all };
}
