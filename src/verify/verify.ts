// The first judge: reads the written bytes back with the strict scanner and compares them with the source.
import { type Box, EMPTY_BOX, isEmptyBox, unite } from '../geometry/box.js';
import type { Artboard, Artwork } from '../model/artwork.js';
import { measureExtent } from '../model/drawn-extent.js';
import { type Finding, finding } from '../model/finding.js';
import type { Assignment, Placement } from '../model/pass.js';
import { equalBytes } from '../model/platform.js';
import type { ExtentMm, Judgement, PassProof } from '../model/proof.js';
import type { Source } from '../source/source.js';
import { findActiveContent } from './active-content.js';
import { compareMarks, sayMarks } from './compare-marks.js';
import { listNeeds } from './find-left-behind.js';
import { boxDistanceMm, judgeShapes, TOLERANCE_MM } from './judge-shapes.js';
import { type ReadMarks, readMarks } from './read-marks.js';
import { readSheet } from './read-sheet.js';

/** The job as it was meant. */
export interface Original {
  readonly source: Source;
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  /** By how much the artboard was to grow on every side, mm. */
  readonly marginMm: number;
  /** Whether the root's size was restated or grew. */
  readonly rootMayChange: boolean;
  /** Rows of style elements cleaned of outside references. */
  readonly cleanedRows: ReadonlySet<number>;
  /** 1 for rows that no sheet may hold. */
  readonly removed: Uint8Array;
}

/** How a written file is scanned and resolved; handed in by the road, since stages do not know each other. */
export interface Reader {
  readonly scan: (bytes: Uint8Array) => Source;
  readonly resolveArtboard: (sheet: Source) => Artboard;
  readonly resolve: (sheet: Source) => Artwork;
}

/** One written file. */
export interface WrittenSheet {
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly rows: Int32Array;
}

/** What one file showed; the bytes are no longer needed. */
export interface SheetReading {
  readonly file: string;
  readonly head: Uint8Array;
  readonly artboard: Artboard;
  readonly marks: ReadMarks | null;
  readonly proof: PassProof;
  readonly shapes: number;
  readonly deviationMm: number;
  readonly deviationAt: string;
  readonly findings: readonly Finding[];
}

/** Below this size every sheet is resolved again in full, whether its style rules need it or not. */
const FULL_LOOK_BYTES = 4 * 1024 * 1024;
const HIDE = { whole: '', fill: 'stroke:none!important', stroke: 'fill:none!important' } as const;
const SHOW = 'display:inline!important;visibility:visible!important';

/** Rows that hide what is wanted after all. */
function listHiders({ source, artwork, assignment }: Original): ReadonlySet<number> {
  const rows = new Set<number>();
  for (const carrier of assignment.shownElements) {
    for (let row = carrier; row >= 0; row = source.elements.parent[row]!) if (artwork.hiders.has(row)) rows.add(row);
  }
  return rows;
}

function listOverrides(original: Original, placements: readonly Placement[]): ReadonlyMap<number, string> {
  const overrides = new Map<number, string>();
  for (const row of listHiders(original)) overrides.set(row, SHOW);
  for (const placement of placements) {
    if (placement.part === 'whole') continue;
    const row = original.artwork.shapes[placement.shape]!.element;
    overrides.set(row, overrides.has(row) ? `${SHOW};${HIDE[placement.part]}` : HIDE[placement.part]);
  }
  return overrides;
}

/** A box in mm as an extent, to a millionth of a millimetre; null where it is empty. */
export function toExtent(box: Box): ExtentMm | null {
  if (isEmptyBox(box)) return null;
  const round = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
  return { x: round(box.x0), y: round(box.y0), width: round(box.x1 - box.x0), height: round(box.y1 - box.y0) };
}

/** How far the written artboard puts its own far corner and those of the drawing from where they should be, mm. */
function measureRoot(original: Original, artboard: Artboard): number {
  const before = original.artwork.artboard;
  const [x, y, width, height] = before.viewBox ?? [0, 0, before.width, before.height];
  const map = (board: Artboard, px: number, py: number): Box => {
    const [a, b, c, d, e, f] = board.matrix;
    const mx = a * px + c * py + e;
    const my = b * px + d * py + f;
    return { x0: mx, y0: my, x1: mx, y1: my };
  };
  const distance = (px: number, py: number): number =>
    boxDistanceMm(map(before, px, py), before.mmPerPx, map(artboard, px, py), artboard.mmPerPx, original.marginMm);
  const grown = (side: 'width' | 'height'): number =>
    Math.abs(artboard[side] * artboard.mmPerPx - before[side] * before.mmPerPx - 2 * original.marginMm);
  return Math.max(distance(x, y), distance(x + width, y + height), grown('width'), grown('height'));
}

function toExpected(original: Original, placements: readonly Placement[]): Uint8Array {
  const expected = new Uint8Array(original.source.elements.count);
  for (const placement of placements) expected[original.artwork.shapes[placement.shape]!.carrier] = 1;
  return expected;
}

function toCarriers(original: Original): Uint8Array {
  const carriers = new Uint8Array(original.source.elements.count);
  for (const shape of original.artwork.shapes) if (shape.draws) carriers[shape.carrier] = 1;
  return carriers;
}

function sayRootMoved(file: string, deviationMm: number): Finding {
  return finding('verify/artboard-differs', {
    message: `${file}: its artboard, or the drawing on it, ends ${deviationMm.toFixed(4)} mm from where it should; ${TOLERANCE_MM} mm is allowed.`,
    remedy: 'Do not run this file.',
    place: { file },
    data: { deviationMm },
  });
}

/** Whether all shapes of the sheets are resolved once more. */
function isSeenWhole({ artwork, source }: Original): boolean {
  return artwork.structural || source.text.length <= FULL_LOOK_BYTES;
}

/**
 * Reads one written file back.
 *
 * Strict scan; every kept element and every group around it compared with the source byte for byte; a shape whose bytes
 * and groups are equal has an equal box and paint. Where style rules count or look at siblings, and for small files
 * always, the file is resolved again and every box and paint compared.
 */
export function readBack(original: Original, written: WrittenSheet, passIndex: number, reader: Reader): SheetReading {
  const { file } = written;
  const pass = original.assignment.passes[passIndex]!;
  const placements = original.assignment.placements.filter((placement) => placement.pass === passIndex);
  const sheet = reader.scan(written.bytes);
  const expected = toExpected(original, placements);
  const read = readSheet(original.source, {
    file,
    sheet,
    rows: written.rows,
    expected,
    carriers: toCarriers(original),
    needs: listNeeds(original.source, original.artwork, original.removed),
    overrides: listOverrides(original, placements),
    rootMayChange: original.rootMayChange,
    cleanedRows: original.cleanedRows,
  });
  const findings: Finding[] = [...read.findings, ...findActiveContent(sheet, file)];
  // Style sheets are read once: the artboard depends on them as the shapes do.
  const resolved = isSeenWhole(original) ? reader.resolve(sheet) : null;
  const artboard = resolved?.artboard ?? reader.resolveArtboard(sheet);
  let deviationMm = measureRoot(original, artboard);
  let deviationAt = deviationMm > 0 ? `the artboard of ${file}` : '';
  if (!(deviationMm <= TOLERANCE_MM)) findings.push(sayRootMoved(file, deviationMm));
  if (resolved !== null) {
    const frame = { file, shiftMm: original.marginMm, source: sheet };
    const shapes = judgeShapes(original.artwork, resolved, placements, frame);
    findings.push(...shapes.findings);
    if (shapes.greatestDeviationMm > deviationMm) {
      deviationMm = shapes.greatestDeviationMm;
      deviationAt = shapes.greatestDeviationAt;
    }
  }
  const marks = readMarks(sheet, artboard);
  for (const what of marks?.unlike ?? []) findings.push(sayMarks(file, what));
  const art = measureExtent(original.artwork.shapes, placements);
  const shift = original.marginMm;
  const mm = original.artwork.artboard.mmPerPx;
  const artMm = isEmptyBox(art)
    ? EMPTY_BOX
    : { x0: art.x0 * mm + shift, y0: art.y0 * mm + shift, x1: art.x1 * mm + shift, y1: art.y1 * mm + shift };
  return {
    file,
    head: sheet.text.slice(sheet.elements.start[0]!, sheet.elements.headEnd[0]!),
    artboard,
    marks,
    proof: {
      pass: pass.name,
      shapes: placements.length,
      artExtentMm: toExtent(artMm),
      drawnExtentMm: toExtent(marks === null ? artMm : unite(artMm, marks.boxMm)),
    },
    shapes: read.drawn,
    deviationMm,
    deviationAt,
    findings,
  };
}

const EXTENT_STEP_MM = 1e-6;

function sameExtent(a: ExtentMm | null, b: ExtentMm | null): boolean {
  if (a === null || b === null) return a === b;
  const step = 2 * EXTENT_STEP_MM;
  return (['x', 'y', 'width', 'height'] as const).every((key) => Math.abs(a[key] - b[key]) <= step);
}

/** What holds between the files of a job: one artboard, the same marks, the same drawn extent. */
export function compareSheets(readings: readonly SheetReading[], marksExpected: boolean): readonly Finding[] {
  const [first] = readings;
  if (first === undefined) return [];
  const bare = marksExpected ? readings.filter((reading) => reading.marks === null) : [];
  const without = bare.map(({ file }) => sayMarks(file, 'it has no marks, though there should be some'));
  const apart = readings.slice(1).flatMap((other) => {
    const findings: Finding[] = [...compareMarks(first, other)];
    if (!equalBytes(first.head, other.head)) {
      findings.push(
        finding('verify/artboard-differs', {
          message: `${other.file} and ${first.file} have different root tags.`,
          remedy: 'Do not run these files together.',
          place: { file: other.file },
        }),
      );
    }
    if (marksExpected && !sameExtent(first.proof.drawnExtentMm, other.proof.drawnExtentMm)) {
      findings.push(
        finding('verify/extents-differ', {
          message: `${other.file} and ${first.file} draw different extents; a machine that places by what is drawn would place them differently.`,
          remedy: 'Do not run these files together.',
          place: { file: other.file },
        }),
      );
    }
    return findings;
  });
  return [...without, ...apart];
}

/** The first judge's verdict over all files. */
export function judgeReadings(readings: readonly SheetReading[], between: readonly Finding[]): Judgement {
  let greatest = 0;
  let at = '';
  for (const reading of readings) {
    if (reading.deviationMm > greatest) {
      greatest = reading.deviationMm;
      at = reading.deviationAt;
    }
  }
  return {
    judge: 'read-back',
    looked: true,
    why: '',
    shapesJudged: readings.reduce((sum, reading) => sum + reading.shapes, 0),
    greatestDeviationMm: greatest,
    greatestDeviationAt: at,
    findings: [...readings.flatMap((reading) => reading.findings), ...between],
  };
}

/** Whether all files draw the same extent. */
export function haveEqualExtents(readings: readonly SheetReading[]): boolean {
  return readings.every((reading) => sameExtent(reading.proof.drawnExtentMm, readings[0]!.proof.drawnExtentMm));
}
