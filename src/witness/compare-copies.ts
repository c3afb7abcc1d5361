// Sheets of copies made by anybody: each copy against the source under its matrix.
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from '../model/finding.js';
import type { ComparedCopy } from '../model/job.js';
import { listPlaced, type MeasuredFile } from './compare-boards.js';
import type { DrawnList, DrawnShape } from './list-drawn.js';
import { matchShapes } from './match-shapes.js';
import type { WitnessTree } from './read-tree.js';
import { reportMatches, type ShapeMatch } from './report-matches.js';

/** What came of the copies. */
export interface CopiesComparison {
  /** `said`: the caller or the manifest told the matrices; `found`: by matching outlines. */
  readonly from: 'said' | 'found';
  readonly list: readonly ComparedCopy[];
}

/** Shapes of all copies up to which they are compared. */
export const MOST_COPIED_SHAPES = 1_000_000;

function joinLists(lists: readonly DrawnList[]): DrawnList {
  const points = new Float64Array(lists.reduce((sum, list) => sum + list.points.length, 0));
  const shapes: DrawnShape[] = [];
  let at = 0;
  for (const list of lists) {
    points.set(list.points, at);
    for (const shape of list.shapes) shapes.push({ ...shape, pointStart: shape.pointStart + at });
    at += list.points.length;
  }
  return { shapes, points, extent: lists[0]!.extent, isCut: false };
}

function summarise(matricesMm: readonly Matrix[], matches: readonly ShapeMatch[]): readonly ComparedCopy[] {
  const list = matricesMm.map((matrixMm) => ({ matrixMm, shapes: 0, greatestDeviationMm: 0 }));
  for (const { copy, deviationMm } of matches) {
    const one = list[copy! - 1]!;
    one.shapes += 1;
    one.greatestDeviationMm = Math.max(one.greatestDeviationMm, deviationMm);
  }
  return list;
}

/** A source that copies are held against. */
export interface CopiedSource {
  readonly tree: WitnessTree;
  readonly measured: MeasuredFile;
  readonly userUnitsPerInch: number | null;
}

/**
 * Holds the shapes of the files against those of the source under each matrix.
 *
 * @param matricesMm - From mm on the source to mm on the sheet, one per copy; at least one.
 * @unit mm on the sheet
 */
export function compareCopies(
  files: readonly MeasuredFile[],
  source: CopiedSource,
  matricesMm: readonly Matrix[],
  toleranceMm: number,
): {
  readonly findings: readonly Finding[];
  readonly matches: readonly ShapeMatch[];
  readonly greatestDeviationMm: number;
  readonly greatestDeviationAt: string;
  readonly list: readonly ComparedCopy[];
} {
  const { tree, measured, userUnitsPerInch } = source;
  const expected = joinLists(matricesMm.map((matrix) => listPlaced(tree, userUnitsPerInch, matrix)));
  const shiftMm = [0, 0] as const;
  const matching = matchShapes(
    expected,
    files.map(({ drawn }) => drawn),
    { tolerance: toleranceMm, shift: shiftMm },
  );
  const report = reportMatches(matching, { ...measured, drawn: expected }, files, {
    toleranceMm,
    shiftMm,
    shapesOfCopy: measured.drawn.shapes.length,
  });
  return { ...report, list: summarise(matricesMm, report.matches) };
}
