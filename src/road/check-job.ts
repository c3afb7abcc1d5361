// The checks over a prepared job.
import { listLoose } from '../check/check-loose-pieces.js';
import { runChecks } from '../check/run-checks.js';
import { describeSolid } from '../faces/describe-solid.js';
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { LayoutDecision } from '../model/layout.js';
import type { Solid } from '../model/solid.js';
import type { Ticket } from '../model/ticket.js';
import { relevelFindings } from '../ticket/relevel.js';
import { enterStage } from './enter-stage.js';
import { gatherFacts } from './gather-facts.js';
import { placeFindings } from './place-findings.js';
import { planSheet } from './plan-sheet.js';
import type { PreparedJob } from './prepare-job.js';

/** What came of the checks. */
export interface CheckedJob {
  /** With places, and with the severities of the ticket. */
  readonly findings: readonly Finding[];
  /** Null where the lines enclose no blank. */
  readonly solid: Solid | null;
  /** Null where no sheet is asked for. */
  readonly sheet: LayoutDecision | null;
}

/** Plans the sheet and runs the checks; `skipChecks` leaves them out, but not the sheet. */
export async function checkJob(job: PreparedJob, ticket: Ticket, options: RoadOptions): Promise<CheckedJob> {
  const skipped = options.skipChecks === true;
  if (skipped && ticket.sheet === undefined) return { findings: [], solid: null, sheet: null };
  await enterStage('check', options);
  const { source, artwork } = job;
  const facts = gatherFacts(job, ticket);
  const sheet = planSheet(facts, ticket);
  const laidOut = sheet === null ? facts : { ...facts, layout: sheet.layout, marks: sheet.marks };
  const found = [...(sheet?.findings ?? []), ...(skipped ? [] : runChecks(laidOut))];
  return {
    findings: relevelFindings(placeFindings(found, source, artwork), ticket.severities),
    solid: skipped ? null : describeSolid(facts.faces, artwork.artboard.mmPerPx, listLoose(facts).length),
    sheet,
  };
}
