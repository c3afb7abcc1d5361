// The sheets of a job, where the ticket asks for copies.
import type { RoadOptions } from '../model/job.js';
import type { LayoutDecision } from '../model/layout.js';
import type { Proof } from '../model/proof.js';
import type { OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import type { Original } from '../verify/verify.js';
import { layOutFiles } from './lay-out-files.js';
import { whyNot } from './prove-files.js';

/** Files and what is known of them. */
export interface ProvedFiles {
  readonly files: readonly OutputFile[];
  readonly proof: Proof;
}

/** What the sheets need of the job. */
export interface SheetedJob {
  readonly original: Original;
  readonly sheet: LayoutDecision | null;
  readonly stem: string;
  /** By file behind those of the passes: index of the pass whose ties it holds. */
  readonly tiePasses?: readonly number[];
}

/** Lays the finished passes out on sheets; without a sheet they come back as they are. */
export async function layOutJob(
  passes: ProvedFiles,
  job: SheetedJob,
  ticket: Ticket,
  options: RoadOptions,
): Promise<ProvedFiles> {
  const { original, sheet, stem } = job;
  if (sheet === null || sheet.layout === null) return passes;
  const { artwork, assignment } = original;
  const { layout, marks } = sheet;
  const sheetJob = {
    artwork,
    assignment,
    stem,
    layout,
    marks,
    whyNot: whyNot(original, ticket),
    tiePasses: job.tiePasses ?? [],
  };
  return layOutFiles(passes.files, passes.proof, sheetJob, { ticket, options });
}
