// The second judge over sheets of copies: its own reader, its own matrix walk, every point of every copy.
import type { Matrix } from '../geometry/matrix.js';
import { type Finding, finding } from '../model/finding.js';
import { compareBoards, type MeasuredFile, measureFile } from './compare-boards.js';
import { sayUnreadable } from './judge-notes.js';
import type { DrawnList, DrawnShape } from './list-drawn.js';
import { readTree, type WitnessTree } from './read-tree.js';

/** A pass and the sheet that was made of it. */
export interface CopiesCase {
  readonly name: string;
  readonly pass: Uint8Array;
  readonly sheet: Uint8Array;
}

/** What all sheets were to be. */
export interface CopiesContext {
  /** From mm on the pass's artboard to mm on the sheet, one per copy. */
  readonly matricesMm: readonly Matrix[];
  readonly sizeMm: readonly [number, number];
  readonly marked: boolean;
  readonly toleranceMm: number;
}

/** What the second judge saw. */
export interface CopiesWitness {
  readonly shapes: number;
  readonly deviationMm: number;
  readonly deviationAt: string;
  readonly findings: readonly Finding[];
}

/** Differences listed for one file at most. */
const MOST_LISTED = 20;

interface Seen {
  shapes: number;
  deviationMm: number;
  deviationAt: string;
}

function sayDifference(name: string, what: string): Finding {
  return finding('witness/disagrees', {
    message: `${name}: ${what}.`,
    remedy: 'Do not run this file.',
    place: { file: name },
  });
}

/** The furthest that a point of a shape lies from where the matrix puts it, mm. */
function farthestPoint(
  before: { readonly list: DrawnList; readonly shape: DrawnShape },
  after: { readonly list: DrawnList; readonly shape: DrawnShape },
  [a, b, c, d, e, f]: Matrix,
): number {
  let greatest = 0;
  for (let i = 0; i < before.shape.pointCount; i += 2) {
    const x = before.list.points[before.shape.pointStart + i]!;
    const y = before.list.points[before.shape.pointStart + i + 1]!;
    const dx = after.list.points[after.shape.pointStart + i]! - (a * x + c * y + e);
    const dy = after.list.points[after.shape.pointStart + i + 1]! - (b * x + d * y + f);
    const distance = Math.hypot(dx, dy);
    if (!(distance <= greatest)) greatest = distance;
  }
  return greatest;
}

/** How far the sides of a shape's box lie from those of its box under the matrix, mm: what only bulges between its points shows here. */
function boxDistance(before: DrawnShape, after: DrawnShape, [a, b, c, d, e, f]: Matrix): number {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const x of [before.box.x0, before.box.x1]) {
    for (const y of [before.box.y0, before.box.y1]) {
      xs.push(a * x + c * y + e);
      ys.push(b * x + d * y + f);
    }
  }
  const { x0, y0, x1, y1 } = after.box;
  const sides = [Math.min(...xs) - x0, Math.max(...xs) - x1, Math.min(...ys) - y0, Math.max(...ys) - y1];
  return Math.max(...sides.map((side) => Math.abs(side)));
}

function isAlike(one: DrawnShape, other: DrawnShape): boolean {
  const built = one.kind === other.kind && one.build === other.build && one.pointCount === other.pointCount;
  return built && one.fill === other.fill && one.stroke === other.stroke && one.rest === other.rest;
}

/** Every copy against the pass, shape by shape in paint order. */
function judgeOne(name: string, pass: DrawnList, sheet: DrawnList, context: CopiesContext, seen: Seen): string[] {
  const { matricesMm, toleranceMm } = context;
  const count = pass.shapes.length * matricesMm.length;
  const faults: string[] = [];
  if (sheet.shapes.length !== count) faults.push(`it draws ${sheet.shapes.length} shapes, not ${count}`);
  const judged = Math.min(count, sheet.shapes.length);
  for (let at = 0; at < judged && faults.length < MOST_LISTED; at += 1) {
    const copy = Math.floor(at / pass.shapes.length);
    const shape = pass.shapes[at % pass.shapes.length]!;
    const moved = sheet.shapes[at]!;
    const called = `${shape.kind}${shape.id === '' ? '' : ` "${shape.id}"`} of copy ${copy + 1}`;
    if (!isAlike(shape, moved)) {
      faults.push(`${called} is built or painted otherwise`);
      continue;
    }
    const matrix = matricesMm[copy]!;
    const distance = Math.max(
      farthestPoint({ list: pass, shape }, { list: sheet, shape: moved }, matrix),
      boxDistance(shape, moved, matrix),
    );
    if (!(distance <= toleranceMm)) faults.push(`${called} lies ${distance.toFixed(4)} mm from its place`);
    if (!(distance <= seen.deviationMm)) {
      seen.deviationMm = distance;
      seen.deviationAt = `${called} in ${name}`;
    }
  }
  seen.shapes += judged;
  return faults;
}

interface ReadCase extends MeasuredFile {
  /** Ids that stand more than once. */
  readonly doubled: readonly string[];
}

function listDoubled({ elements }: WitnessTree): readonly string[] {
  const seen = new Set<string>();
  return elements.flatMap(({ id }) => {
    if (id === '') return [];
    const isSecond = seen.has(id);
    seen.add(id);
    return isSecond ? [id] : [];
  });
}

function measure(name: string, bytes: Uint8Array, findings: Finding[]): ReadCase | null {
  const result = readTree(bytes);
  if ('fault' in result) {
    findings.push(sayUnreadable(name, result.fault));
    return null;
  }
  const measured = measureFile(name, result.tree, null);
  if (!measured.drawn.isCut) return { ...measured, doubled: listDoubled(result.tree) };
  findings.push(sayUnreadable(name, 'its copies draw more than the second judge follows'));
  return null;
}

/**
 * Holds sheets of copies against their passes, and against each other.
 *
 * @throws Never for what a file holds.
 * @unit mm on the sheet
 */
export function judgeSheetsOfCopies(cases: readonly CopiesCase[], context: CopiesContext): CopiesWitness {
  const seen: Seen = { shapes: 0, deviationMm: 0, deviationAt: '' };
  const findings: Finding[] = [];
  const sheets: MeasuredFile[] = [];
  for (const { name, pass, sheet } of cases) {
    const before = measure(`the pass of ${name}`, pass, findings);
    const after = measure(name, sheet, findings);
    if (before === null || after === null) continue;
    sheets.push(after);
    const faults = judgeOne(name, before.drawn, after.drawn, context, seen);
    // Where the designer gave an id twice, copies have it twice as well.
    if (before.doubled.length === 0 && after.doubled.length > 0)
      faults.push(`the id "${after.doubled[0]}" stands twice`);
    const [width, height] = context.sizeMm;
    const off = Math.max(Math.abs(after.summary.widthMm - width), Math.abs(after.summary.heightMm - height));
    if (!(off <= context.toleranceMm)) faults.push(`its artboard is not ${width} x ${height} mm`);
    findings.push(...faults.map((fault) => sayDifference(name, fault)));
  }
  const between = compareBoards(sheets, context.toleranceMm);
  // Without marks the drawn extents may differ, and files without marks are as they should be.
  const free = new Set(context.marked ? [] : ['verify/extents-differ', 'verify/marks-missing']);
  findings.push(...between.filter(({ code }) => !free.has(code)));
  return { ...seen, findings };
}
