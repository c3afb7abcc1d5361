// What a job leaves behind beside its passes: the manifest, the picture of the proof, and the proof as a page.
import type { JobResult } from '../model/job.js';
import type { Ticket } from '../model/ticket.js';
import { drawProof } from '../report/draw-proof.js';
import { drawProofPage } from '../report/draw-proof-page.js';
import { writeTicket } from '../ticket/write-ticket.js';
import { describeManifest, type ManifestFacts, printManifest } from '../write/describe-manifest.js';
import { finishText } from '../write/finish-files.js';
import { measureFiles } from './measure-files.js';

/** What is reported: all that the manifest tells, and what the proof needs besides. */
export interface ReportedJob extends Omit<ManifestFacts, 'ticket'> {
  readonly ticket: Ticket;
  readonly stem: string;
  /** Whether the proof is made as a page too. */
  readonly wantsPage: boolean;
}

/** Makes the reports. */
export async function reportJob(job: ReportedJob): Promise<Pick<JobResult, 'manifest' | 'proofPicture' | 'proofPage'>> {
  const described = describeManifest({ ...job, ticket: writeTicket(job.ticket) });
  const manifest = await finishText('manifest.json', 'application/json', printManifest(described));
  const shown = { ...job, ...measureFiles(job) };
  const proofPicture = await finishText('proof.svg', 'image/svg+xml', drawProof(shown));
  const proofPage = job.wantsPage ? await finishText('proof.html', 'text/html', await drawProofPage(shown)) : null;
  return { manifest, proofPicture, proofPage };
}
