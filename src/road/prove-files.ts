// Both judges over the finished files.
import type { RoadOptions } from '../model/job.js';
import type { Judgement, PassProof, Proof } from '../model/proof.js';
import { joinPieces, type OutputFile, type Sheet } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { readArtboard } from '../resolve/artboard.js';
import {
  compareSheets,
  haveEqualExtents,
  judgeReadings,
  type Original,
  type Reader,
  readBack,
} from '../verify/verify.js';
import type { SheetClaim } from '../witness/judge-sheets.js';
import { enterStage } from './enter-stage.js';
import { leaveUnasked } from './leave-unasked.js';
import { resolveSource, scanBytes } from './read-artwork.js';

/** Source size up to which the second judge looks unless told otherwise, bytes. */
const WITNESS_BYTES = 32 * 1024 * 1024;
/** Elements and attributes up to which it looks: its document tree costs by their number, and small ones are many in few bytes. */
const WITNESS_NODES = 400_000;

/** What is to be proved. */
export interface MadeFiles {
  readonly sheets: readonly Sheet[];
  readonly files: readonly OutputFile[];
  /** Whether marks make all drawn extents equal. */
  readonly marked: boolean;
}

/** Why the second judge does not look, or ''. */
export function whyNot(original: Original, ticket: Ticket): string {
  if (ticket.witness === 'never') return 'the ticket says never';
  if (ticket.witness !== 'auto') return '';
  if (original.source.text.length > WITNESS_BYTES) return 'the source is larger than 32 MiB';
  const { count, attributes } = original.source.elements;
  return count + attributes.count > WITNESS_NODES ? 'the source has more than 400,000 elements and attributes' : '';
}

/** What each file must draw, as rows of the source. */
function claimFiles(original: Original, made: MadeFiles): readonly SheetClaim[] {
  const { artwork, assignment } = original;
  return made.sheets.map((sheet, index) => {
    const drawn = new Map<number, 'whole' | 'fill' | 'stroke'>();
    for (const placement of assignment.placements) {
      if (placement.pass === index) drawn.set(artwork.shapes[placement.shape]!.carrier, placement.part);
    }
    return { name: made.files[index]!.name, bytes: joinPieces(sheet.pieces), rows: sheet.rows, drawn };
  });
}

async function callWitness(original: Original, made: MadeFiles, ticket: Ticket): Promise<Judgement> {
  const why = whyNot(original, ticket);
  if (why !== '') return leaveUnasked(why);
  const { artwork, assignment } = original;
  // Loaded only when it looks: its reader costs more to load than small files cost to split.
  const { judgeSheets } = await import('../witness/judge-sheets.js');
  const verdict = judgeSheets(original.source.text, claimFiles(original, made), {
    mmPerPx: artwork.artboard.mmPerPx,
    expected: new Set(assignment.placements.map((placement) => artwork.shapes[placement.shape]!.carrier)),
    grownMm: original.marginMm,
  });
  return {
    judge: 'witness',
    looked: true,
    why: '',
    shapesJudged: verdict.shapesJudged,
    greatestDeviationMm: verdict.greatestDeviationPx * artwork.artboard.mmPerPx,
    greatestDeviationAt: verdict.greatestDeviationAt,
    findings: verdict.findings,
  };
}

/** A proof that says that nobody looked. */
function proveNothing(original: Original): Proof {
  const { passes, placements } = original.assignment;
  const counted: PassProof[] = passes.map((pass, index) => ({
    pass: pass.name,
    shapes: placements.filter((placement) => placement.pass === index).length,
    artExtentMm: null,
    drawnExtentMm: null,
  }));
  return { inRegister: false, judges: [], passes: counted, equalExtents: false };
}

/** Judges the files of a job: read back by our own scanner, then by the second judge where it is to look. */
export async function proveFiles(
  original: Original,
  made: MadeFiles,
  ticket: Ticket,
  options: RoadOptions,
): Promise<Proof> {
  if (options.verify === false) return proveNothing(original);
  const reader: Reader = {
    scan: (bytes) => scanBytes(bytes, options),
    resolveArtboard: (sheet) => readArtboard(sheet, null).artboard,
    resolve: (sheet) => resolveSource(sheet, options, null),
  };
  await enterStage('read-back', options);
  // One stretch of memory serves all files in turn: what is kept of a reading is no view of it.
  const scratch = new Uint8Array(Math.max(0, ...made.files.map((file) => file.byteLength)));
  const readings = made.sheets.map((sheet, index) => {
    const bytes = joinPieces(sheet.pieces, scratch);
    const written = { file: made.files[index]!.name, bytes, rows: sheet.rows };
    return readBack(original, written, index, reader);
  });
  const first = judgeReadings(readings, compareSheets(readings, made.marked));
  await enterStage('witness', options);
  const judges = [first, await callWitness(original, made, ticket)];
  return {
    inRegister: judges.every((judge) => judge.findings.every((item) => item.severity !== 'error')),
    judges,
    passes: readings.map((reading) => reading.proof),
    equalExtents: haveEqualExtents(readings),
  };
}
