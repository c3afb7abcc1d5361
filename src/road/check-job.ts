// The checks over a prepared job.
import { runChecks } from '../check/run-checks.js';
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { Ticket } from '../model/ticket.js';
import { relevelFindings } from '../ticket/relevel.js';
import { enterStage } from './enter-stage.js';
import { gatherFacts } from './gather-facts.js';
import { placeFindings } from './place-findings.js';
import type { PreparedJob } from './prepare-job.js';

/** What the checks find, with places, and with the severities of the ticket. */
export async function checkJob(job: PreparedJob, ticket: Ticket, options: RoadOptions): Promise<readonly Finding[]> {
  await enterStage('check', options);
  const { source, artwork } = job;
  const facts = gatherFacts(job, ticket);
  return relevelFindings(placeFindings(runChecks(facts), source, artwork), ticket.severities);
}
