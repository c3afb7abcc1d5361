// Whether a sheet draws what it should and nothing else, where the source has it.
import { type Box, isEmptyBox } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import type { PathReader } from '../geometry/path-data.js';
import { describeElement, noteDifference } from './judge-notes.js';
import { INSERTED, UNKNOWN } from './match-elements.js';
import { hrefOf } from './read-tree.js';
import { outlineShape, SHAPE_KINDS } from './shape-outline.js';
import { matrixOnSource, type SheetCase } from './sheet-case.js';

/** Relative tolerance for a root left as it was, and for one whose numbers were written anew. */
const KEPT_TOLERANCE = 1e-9;
const RESTATED_TOLERANCE = 1e-8;

/** What was measured on the way. */
export interface Measured {
  shapesJudged: number;
  greatestDeviationPx: number;
  greatestDeviationAt: string;
}

function boxDeviation(a: Box, b: Box): number {
  if (isEmptyBox(a) && isEmptyBox(b)) return 0;
  if (isEmptyBox(a) !== isEmptyBox(b)) return Infinity;
  return Math.max(Math.abs(a.x0 - b.x0), Math.abs(a.y0 - b.y0), Math.abs(a.x1 - b.x1), Math.abs(a.y1 - b.y1));
}

/** How far two matrices put apart the points of a square of side `reach` at the origin. */
function matrixDeviation(a: Matrix, b: Matrix, reach: number): number {
  const dx = Math.abs(a[4] - b[4]) + reach * (Math.abs(a[0] - b[0]) + Math.abs(a[2] - b[2]));
  const dy = Math.abs(a[5] - b[5]) + reach * (Math.abs(a[1] - b[1]) + Math.abs(a[3] - b[3]));
  return Math.max(dx, dy);
}

function reachOf(box: Box): number {
  if (isEmptyBox(box)) return 0;
  return Math.max(Math.abs(box.x0), Math.abs(box.y0), Math.abs(box.x1), Math.abs(box.y1));
}

/** Linear size of a matrix: by how much it can stretch a length, at most, roughly. */
function stretchOf(matrix: Matrix): number {
  return Math.max(Math.abs(matrix[0]), Math.abs(matrix[1]), Math.abs(matrix[2]), Math.abs(matrix[3])) || 1;
}

function sayDistance(px: number, mmPerPx: number): string {
  return Number.isFinite(px) ? `${Number((px * mmPerPx).toPrecision(4))} mm` : 'without bounds';
}

/** Compares matrix and box of one drawn element on both artboards. */
function measureElement(sheet: SheetCase, ordinal: number, reader: PathReader, measured: Measured): void {
  const { source, tree, match, board } = sheet;
  const counterpart = match.counterparts[ordinal]!;
  const element = tree.elements[ordinal]!;
  const original = source.tree.elements[counterpart]!;
  const here = matrixOnSource(sheet, ordinal);
  const there = source.stands[counterpart]!;
  let deviation: number;
  let reach = Math.max(board.width, board.height);
  if (element.kind === 'use') {
    const side = reach / stretchOf(there.matrix);
    deviation = matrixDeviation(here, there.matrix, side);
  } else {
    const boxHere = pathBox(outlineShape(element, sheet.stands[ordinal]!.viewport, reader), here);
    const boxThere = pathBox(outlineShape(original, there.viewport, reader), there.matrix);
    reach = Math.max(reach, reachOf(boxThere));
    // The box alone would not see a turned square or a mirrored disc.
    const size = Math.max(boxThere.x1 - boxThere.x0, boxThere.y1 - boxThere.y0, 1);
    const matrix = matrixDeviation(here, there.matrix, size / stretchOf(there.matrix));
    deviation = Math.max(boxDeviation(boxHere, boxThere), matrix);
  }
  measured.shapesJudged += 1;
  if (deviation > measured.greatestDeviationPx || measured.greatestDeviationAt === '') {
    measured.greatestDeviationPx = deviation;
    measured.greatestDeviationAt = `${describeElement(element)} in ${sheet.claim.name}`;
  }
  const tolerance = (sheet.isRestated ? RESTATED_TOLERANCE : KEPT_TOLERANCE) * Math.max(reach, 1);
  if (!(deviation <= tolerance)) {
    noteDifference(
      sheet.notes,
      element,
      `lies elsewhere than in the source, by ${sayDistance(deviation, source.mmPerPx)}`,
    );
  }
}

/** Elements that draw: shapes and uses in the drawing, marks and stand-ins left out. */
function isDrawer(sheet: SheetCase, ordinal: number): boolean {
  const { kind } = sheet.tree.elements[ordinal]!;
  return (kind === 'use' || SHAPE_KINDS.has(kind)) && sheet.inDrawing[ordinal] === 1;
}

function checkOverrides(sheet: SheetCase, ordinal: number, part: 'whole' | 'fill' | 'stroke'): void {
  if (part === 'whole') return;
  const silenced = part === 'fill' ? 'stroke' : 'fill';
  const overrides = sheet.match.heads.get(ordinal)?.overrides ?? [];
  if (!overrides.includes(silenced)) {
    noteDifference(
      sheet.notes,
      sheet.tree.elements[ordinal]!,
      `should show its ${part} alone, but its ${silenced} is drawn too`,
    );
  }
}

/** Every claimed element is there, in the drawing, seen; where it lies is measured. */
function checkClaimed(sheet: SheetCase, reader: PathReader, measured: Measured): void {
  const { claim, match, tree, source, notes } = sheet;
  for (const [wanted, part] of claim.drawn) {
    const original = source.tree.elements[wanted];
    const place = match.places[wanted] ?? -1;
    if (original === undefined || place < 0) {
      noteDifference(notes, original ?? null, 'should be drawn here, but is missing');
      continue;
    }
    const element = tree.elements[place]!;
    if (sheet.inDrawing[place] === 0) noteDifference(notes, element, 'stands in a definition and is not drawn');
    else if (sheet.hidden[place] === 1) noteDifference(notes, element, 'is hidden and is not drawn');
    if (hrefOf(original) !== null && hrefOf(element) === null) {
      noteDifference(notes, element, 'should be drawn here, but what it refers to is taken away');
    }
    checkOverrides(sheet, place, part);
    measureElement(sheet, place, reader, measured);
  }
}

/** Nothing that is not claimed is drawn. */
function checkUnclaimed(sheet: SheetCase): void {
  const { claim, match, tree, notes } = sheet;
  for (let i = 0; i < tree.elements.length; i += 1) {
    if (!isDrawer(sheet, i) || sheet.hidden[i] === 1) continue;
    const counterpart = match.counterparts[i]!;
    if (counterpart === UNKNOWN) continue;
    if (counterpart === INSERTED || !claim.drawn.has(counterpart)) {
      noteDifference(notes, tree.elements[i]!, 'is drawn, but does not belong on this sheet');
    }
  }
}

/** Judges what a sheet draws. */
export function judgeDrawn(sheet: SheetCase, reader: PathReader, measured: Measured): void {
  checkClaimed(sheet, reader, measured);
  checkUnclaimed(sheet);
}
