// The sheets of a job: one list of matrices on every pass, marks once, both judges.
import { drawMarks } from '../mark/draw-marks.js';
import { ownColour } from '../mark/mark-sheets.js';
import type { Artwork } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import type { Layout } from '../model/layout.js';
import type { MarkPlan } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import { sha256Hex } from '../model/platform.js';
import type { Judgement, Proof } from '../model/proof.js';
import { countBytes, joinPieces, type OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import type { ReadFile } from '../verify/judge-copies.js';
import { TOLERANCE_MM } from '../verify/judge-shapes.js';
import { readCopies } from '../verify/read-copies.js';
import { compareSheets, haveEqualExtents, judgeReadings } from '../verify/verify.js';
import { enterStage } from './enter-stage.js';
import { type LaidOutPass, layOutPass } from './lay-out-pass.js';
import { leaveUnasked } from './leave-unasked.js';
import { sheetToUser } from './write-copies.js';

/** What is laid out. */
export interface SheetJob {
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly stem: string;
  readonly layout: Layout;
  /** By file behind those of the passes: index of the pass whose ties it holds. */
  readonly tiePasses: readonly number[];
  /** Marks of the sheet, mm; null for none. */
  readonly marks: MarkPlan | null;
  /** Why the second judge does not look, or ''. */
  readonly whyNot: string;
}

/** The sheets and what the judges say. */
export interface LaidOutFiles {
  readonly files: readonly OutputFile[];
  readonly proof: Proof;
}

/** Elements of all copies up to which the second judge looks: it follows each of them. */
const WITNESS_ELEMENTS = 900_000;

/** The pass that a file is of. */
function passOf({ assignment, tiePasses }: SheetJob, index: number): number {
  const { length } = assignment.passes;
  return index < length ? index : tiePasses[index - length]!;
}

function drawSheetMarks(job: SheetJob, ticket: Ticket, index: number, { artwork: pass }: ReadFile): string {
  if (job.marks === null) return '';
  const at = passOf(job, index);
  const run = job.assignment.passes[at]!;
  const plan = { ...job.marks, matrix: sheetToUser(pass.artboard) };
  const colour = ownColour(job.artwork, job.assignment, at);
  return drawMarks(plan, ticket.marks, { pass: run, colour, label: `${run.order} ${run.name} / ${job.stem}` });
}

async function callWitness(job: SheetJob, laid: readonly LaidOutPass[]): Promise<Judgement> {
  const { matricesMm, widthMm, heightMm } = job.layout;
  const most = Math.max(0, ...laid.map(({ before }) => before.source.elements.count)) * matricesMm.length;
  const many = most > WITNESS_ELEMENTS ? 'the copies have more than 900,000 elements' : '';
  const why = job.whyNot === '' ? many : job.whyNot;
  if (why !== '') return leaveUnasked(why, 'sheets');
  const { judgeSheetsOfCopies } = await import('../witness/judge-copies.js');
  const cases = laid.map(({ name, pass, pieces }) => ({ name, pass, sheet: joinPieces(pieces) }));
  const { shapes, deviationMm, deviationAt, findings } = judgeSheetsOfCopies(cases, {
    matricesMm,
    sizeMm: [widthMm, heightMm],
    marked: job.marks !== null,
    toleranceMm: TOLERANCE_MM,
  });
  return {
    judge: 'witness',
    of: 'sheets',
    looked: true,
    why: '',
    shapesJudged: shapes,
    greatestDeviationMm: deviationMm,
    greatestDeviationAt: deviationAt,
    findings,
  };
}

/**
 * Lays each proved pass out on a sheet and judges the sheets.
 *
 * @param passes - The files of the passes, without marks.
 * @param proof - That of the passes; what the judges say of the sheets is added.
 */
export async function layOutFiles(
  passes: readonly OutputFile[],
  proof: Proof,
  job: SheetJob,
  settings: { readonly ticket: Ticket; readonly options: RoadOptions },
): Promise<LaidOutFiles> {
  const { ticket, options } = settings;
  await enterStage('lay-out', options);
  const laid = passes.map((file, index) =>
    layOutPass(
      { name: file.name, bytes: joinPieces(file.pieces) },
      { layout: job.layout, copies: ticket.sheet!.copies },
      (pass) => drawSheetMarks(job, ticket, index, pass),
      options,
    ),
  );
  const files: OutputFile[] = [];
  for (const { name, pieces } of laid) {
    files.push({
      name,
      mediaType: 'image/svg+xml',
      pieces,
      byteLength: countBytes(pieces),
      sha256: await sha256Hex(pieces),
    });
  }
  if (options.verify === false) return { files, proof };
  const { matricesMm } = job.layout;
  const readings = laid.map(({ before, sheet, verdict, name }, index) => {
    const passName = job.assignment.passes[passOf(job, index)]!.name;
    return readCopies(before, sheet, { file: name, matricesMm, passName }, verdict);
  });
  const first = judgeReadings(readings, compareSheets(readings, job.marks !== null));
  const judges = [...proof.judges, { ...first, of: 'sheets' as const }, await callWitness(job, laid)];
  return {
    files,
    proof: {
      inRegister: judges.every((judge) => judge.findings.every((item) => item.severity !== 'error')),
      judges,
      passes: readings.slice(0, job.assignment.passes.length).map((reading) => reading.proof),
      equalExtents: haveEqualExtents(readings),
    },
  };
}
