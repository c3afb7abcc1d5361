// The checks over a prepared job.
import { runChecks } from '../check/run-checks.js';
import { describeSolid } from '../faces/describe-solid.js';
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { Solid } from '../model/solid.js';
import type { Ticket } from '../model/ticket.js';
import { relevelFindings } from '../ticket/relevel.js';
import { enterStage } from './enter-stage.js';
import { gatherFacts } from './gather-facts.js';
import { placeFindings } from './place-findings.js';
import type { PreparedJob } from './prepare-job.js';

/** What came of the checks. */
export interface CheckedJob {
  /** With places, and with the severities of the ticket. */
  readonly findings: readonly Finding[];
  /** Null where the lines enclose no blank. */
  readonly solid: Solid | null;
}

/** Runs the checks. */
export async function checkJob(job: PreparedJob, ticket: Ticket, options: RoadOptions): Promise<CheckedJob> {
  await enterStage('check', options);
  const { source, artwork } = job;
  const facts = gatherFacts(job, ticket);
  return {
    findings: relevelFindings(placeFindings(runChecks(facts), source, artwork), ticket.severities),
    solid: describeSolid(facts.faces, artwork.artboard.mmPerPx),
  };
}
