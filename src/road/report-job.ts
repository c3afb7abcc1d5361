// What a job leaves behind beside its passes: the manifest, the picture of the proof, and the proof as a page.
import type { Artwork } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { JobResult } from '../model/job.js';
import type { Layout } from '../model/layout.js';
import type { MarkPlan } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import type { Proof } from '../model/proof.js';
import type { SequenceReport } from '../model/sequence.js';
import type { OutputFile } from '../model/sheet.js';
import type { Solid } from '../model/solid.js';
import type { Ticket } from '../model/ticket.js';
import type { TieReport } from '../model/ties.js';
import { drawProof } from '../report/draw-proof.js';
import { drawProofPage } from '../report/draw-proof-page.js';
import { writeTicket } from '../ticket/write-ticket.js';
import { describeManifest, printManifest } from '../write/describe-manifest.js';
import { finishText } from '../write/finish-files.js';

/** What is reported. */
export interface ReportedJob {
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly files: readonly OutputFile[];
  readonly proof: Proof;
  readonly solid: Solid | null;
  /** Copies on a sheet; null where there are none. */
  readonly layout: Layout | null;
  readonly findings: readonly Finding[];
  readonly ticket: Ticket;
  readonly stem: string;
  readonly input: { readonly name: string; readonly bytes: number; readonly sha256: string };
  readonly sequence: readonly SequenceReport[];
  readonly ties: readonly TieReport[];
  readonly tieFiles: readonly OutputFile[];
  readonly marks: MarkPlan | null;
  readonly checks: { readonly skipped: boolean; readonly findings: number };
  /** Whether the proof is made as a page too. */
  readonly wantsPage: boolean;
}

/** Size of the files. */
function measureFiles({ artwork, ticket, layout }: ReportedJob): {
  readonly widthMm: number;
  readonly heightMm: number;
} {
  if (layout !== null) return { widthMm: layout.widthMm, heightMm: layout.heightMm };
  const { width, height, mmPerPx } = artwork.artboard;
  return { widthMm: width * mmPerPx + 2 * ticket.marginMm, heightMm: height * mmPerPx + 2 * ticket.marginMm };
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
