// The road from bytes to sheets without marks: what splitting and checking share.
import { classify } from '../classify/classify.js';
import { planMarks } from '../mark/plan-marks.js';
import type { Artwork } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { MarkDecision } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import type { Picture } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { readColour } from '../resolve/colour.js';
import type { Source } from '../source/source.js';
import type { Sanitised } from '../split/sanitise.js';
import { prepareSplit, type SplitResult, split as splitArtwork } from '../split/split.js';
import { relevelFindings } from '../ticket/relevel.js';
import { checkAskedPasses } from './check-asked-passes.js';
import { enterStage } from './enter-stage.js';
import { judgeOrder } from './judge-order.js';
import { leaveOut } from './leave-out.js';
import { placeFindings } from './place-findings.js';
import { resolveSource, scanBytes } from './read-artwork.js';

/** A job as it stands before marks are drawn and files are written. */
export interface PreparedJob {
  readonly source: Source;
  readonly sanitised: Sanitised;
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly marks: MarkDecision;
  readonly parts: SplitResult;
  /** Linked pictures that were read, by address. */
  readonly pictures: ReadonlyMap<string, Picture>;
  /** With places, and with the severities of the ticket. */
  readonly findings: readonly Finding[];
}

/** Reads the linked pictures that the ticket wants embedded. */
async function loadPictures(
  links: readonly { readonly address: string }[],
  ticket: Ticket,
  options: RoadOptions,
): Promise<ReadonlyMap<string, Picture>> {
  const pictures = new Map<string, Picture>();
  if (ticket.linkedPictures !== 'embed' || options.loadPicture === undefined) return pictures;
  for (const address of new Set(links.map((link) => link.address))) {
    const bytes = await options.loadPicture(address);
    if (bytes !== null) pictures.set(address, { bytes });
  }
  return pictures;
}

/**
 * Reads, resolves, classifies and parts a drawing.
 *
 * @throws PinbarError when the file cannot be read, breaks a limit, or the caller stops the run.
 */
export async function prepareJob(bytes: Uint8Array, ticket: Ticket, options: RoadOptions): Promise<PreparedJob> {
  await enterStage('read', options);
  const source = scanBytes(bytes, options);
  await enterStage('resolve', options);
  const sanitised = prepareSplit(source);
  const artwork = leaveOut(resolveSource(source, options, ticket.userUnitsPerInch), sanitised, ticket);
  await enterStage('classify', options);
  const { assignment, findings: claims } = judgeOrder(source, artwork, classify(artwork, ticket, readColour));
  const marks = planMarks(artwork, assignment, ticket);
  await enterStage('split', options);
  const pictures = await loadPictures(sanitised.linkedPictures, ticket, options);
  const parts = splitArtwork(source, artwork, assignment, { ticket, sanitised, pictures, rootSize: marks.rootSize });
  const asked = checkAskedPasses(ticket, assignment.passes);
  const before = [...source.findings, ...artwork.findings, ...claims, ...asked, ...marks.findings, ...parts.findings];
  const findings = relevelFindings(placeFindings(before, source, artwork), ticket.severities);
  return { source, sanitised, artwork, assignment, marks, parts, pictures, findings };
}
