// The second judge: reads the written sheets by other means and holds them against the source.
import type { Matrix } from '../geometry/matrix.js';
import { createPathReader, type PathReader } from '../geometry/path-data.js';
import type { Finding } from '../model/finding.js';
import { judgeContent } from './judge-content.js';
import { judgeDrawn, type Measured } from './judge-drawn.js';
import { compareMarkPrints, listUnseenMarks, type MarkPrint, readMarkPrint } from './judge-marks.js';
import { closeNotes, type JudgeNotes, noteDifference, openNotes, sayUnreadable } from './judge-notes.js';
import { judgeStyleReferences } from './judge-style-references.js';
import { compose } from './own-matrix.js';
import { attributeOf, readTree, type WitnessTree } from './read-tree.js';
import {
  type DrawnPart,
  openSheet,
  openSource,
  type SheetCase,
  type SheetClaim,
  type SourceCase,
} from './sheet-case.js';

export type { DrawnPart, SheetClaim } from './sheet-case.js';

/** What the sheets should hold together. */
export interface WitnessContext {
  /** Millimetres per px of the source. */
  readonly mmPerPx: number;
  /** Ordinals of the source elements that must be drawn in at least one sheet. */
  readonly expected: ReadonlySet<number>;
  /** Margin by which the artboard grew on every side, mm; 0 where it did not. */
  readonly grownMm: number;
}

/** What the second judge saw. */
export interface WitnessVerdict {
  readonly shapesJudged: number;
  /** Greatest distance between a shape on a sheet and in the source, px of the source. */
  readonly greatestDeviationPx: number;
  /** Which shape that was, and where. */
  readonly greatestDeviationAt: string;
  readonly findings: readonly Finding[];
}

/** A disc and its broken rim agree to the rounding of their coordinates, px. */
const MARK_TOLERANCE_PX = 0.002;

/** Elements with something to be drawn inside, themselves included. */
function listChains(tree: WitnessTree, expected: ReadonlySet<number>): ReadonlySet<number> {
  const chains = new Set<number>();
  for (const ordinal of expected) {
    for (let at = ordinal; at >= 0 && !chains.has(at); at = tree.elements[at]?.parent ?? -1) chains.add(at);
  }
  return chains;
}

/** Size, viewBox and alignment of the artboard agree with the source, grown alike. */
function judgeBoard(sheet: SheetCase): void {
  const { board, source, toSource, notes, isRestated, tree } = sheet;
  const root = tree.elements[0]!;
  const scale = toSource[0];
  const margin = -2 * toSource[4];
  const here: Matrix = isRestated ? compose(toSource, board.matrix) : board.matrix;
  const reach = Math.max(source.board.width, source.board.height, 1);
  const tolerance = (isRestated ? 1e-8 : 1e-9) * reach;
  const wide = Math.abs(board.width * scale - source.board.width - margin);
  const high = Math.abs(board.height * scale - source.board.height - margin);
  if (!(wide <= tolerance && high <= tolerance)) {
    const size = `${board.width} x ${board.height} px`;
    noteDifference(notes, root, `has an artboard of ${size}, not that of the source with its margin`);
  }
  const there = source.board.matrix;
  const inner = source.board.inner;
  const corners = [0, inner.width].flatMap((x) => [0, inner.height].map((y) => [x, y] as const));
  const apart = corners.some(([x, y]) => {
    const dx = (here[0] - there[0]) * x + (here[2] - there[2]) * y + here[4] - there[4];
    const dy = (here[1] - there[1]) * x + (here[3] - there[3]) * y + here[5] - there[5];
    return !(Math.abs(dx) <= tolerance && Math.abs(dy) <= tolerance);
  });
  if (apart) noteDifference(notes, root, 'puts its viewBox elsewhere on the artboard than the source');
}

/** All sheets spell their artboard alike. */
function judgeSpelling(sheet: SheetCase, first: SheetCase): void {
  for (const name of ['width', 'height', 'viewBox', 'preserveAspectRatio']) {
    const here = attributeOf(sheet.tree.elements[0]!, name);
    const there = attributeOf(first.tree.elements[0]!, name);
    if (here !== there) {
      noteDifference(
        sheet.notes,
        sheet.tree.elements[0]!,
        `has ${name} "${here ?? ''}", but ${first.claim.name} has "${there ?? ''}"`,
      );
    }
  }
}

function judgeMarks(sheets: readonly SheetCase[], reader: PathReader): void {
  const prints: { readonly sheet: SheetCase; readonly print: MarkPrint }[] = [];
  for (const sheet of sheets) {
    const toUnit = (matrix: Matrix): Matrix => (sheet.isRestated ? compose(sheet.toSource, matrix) : matrix);
    const print = readMarkPrint(sheet.tree, sheet.stands, { reader, toUnit });
    if (print !== null) prints.push({ sheet, print });
    for (const { ordinal, text } of listUnseenMarks(sheet.tree, sheet.hidden)) {
      noteDifference(sheet.notes, sheet.tree.elements[ordinal]!, text);
    }
  }
  if (prints.length === 0) return;
  const fullest = prints.reduce((best, one) => (one.print.parts.size > best.print.parts.size ? one : best));
  for (const { sheet, print } of prints) {
    for (const { text } of compareMarkPrints(print, fullest.print, MARK_TOLERANCE_PX)) {
      noteDifference(sheet.notes, null, `does not agree with ${fullest.sheet.claim.name}: ${text}`);
    }
  }
  for (const sheet of sheets) {
    if (!prints.some((one) => one.sheet === sheet)) {
      noteDifference(sheet.notes, null, `has no marks, but ${fullest.sheet.claim.name} has`);
    }
  }
}

/** A shape is on one sheet, or its fill on one and its stroke on one. */
function isSingle(parts: readonly DrawnPart[]): boolean {
  return parts.length === 1 || (parts.length === 2 && parts.includes('fill') && parts.includes('stroke'));
}

/** Every shape to be drawn is claimed by the sheets just once. */
function judgeCoverage(source: SourceCase, sheets: readonly SheetClaim[], expected: ReadonlySet<number>): JudgeNotes {
  const notes = openNotes('The sheets together');
  const parts = new Map<number, DrawnPart[]>();
  for (const sheet of sheets) {
    for (const [ordinal, part] of sheet.drawn) {
      const list = parts.get(ordinal);
      if (list === undefined) parts.set(ordinal, [part]);
      else list.push(part);
    }
  }
  for (const ordinal of expected) {
    const element = source.tree.elements[ordinal];
    if (element === undefined)
      noteDifference(notes, null, `should draw element ${ordinal}, which the source does not have`);
    else if (!parts.has(ordinal)) noteDifference(notes, element, 'of the source is drawn on none of the sheets');
  }
  for (const [ordinal, list] of parts) {
    const element = source.tree.elements[ordinal];
    if (element !== undefined && !isSingle(list)) noteDifference(notes, element, `is drawn ${list.length} times`);
  }
  return notes;
}

/**
 * Holds the written sheets against the source, sharing no reader and no matrix product with the rest of pinbar.
 *
 * @param sourceText - UTF-8, entities of the document type written out.
 * @param sheets - What was written, and what is claimed of it; the claims are checked, not believed.
 * @returns One finding per difference, at most 100 per file. Never throws for what a file holds.
 * @accuracy Boxes and matrices agree within 1e-9 of the artboard's size, 1e-8 where the root was written anew.
 */
export function judgeSheets(
  sourceText: Uint8Array,
  sheets: readonly SheetClaim[],
  context: WitnessContext,
): WitnessVerdict {
  const measured: Measured = { shapesJudged: 0, greatestDeviationPx: 0, greatestDeviationAt: '' };
  const original = readTree(sourceText);
  if ('fault' in original) return { ...measured, findings: [sayUnreadable('The source', original.fault)] };
  const source = openSource(original.tree, context);
  const mayShow = listChains(original.tree, context.expected);
  const reader = createPathReader();
  const findings: Finding[] = [];
  const cases: SheetCase[] = [];
  for (const claim of sheets) {
    const result = readTree(claim.bytes);
    if ('fault' in result) {
      findings.push(sayUnreadable(claim.name, result.fault));
      continue;
    }
    const sheet = openSheet(source, claim, result.tree);
    cases.push(sheet);
    judgeBoard(sheet);
    judgeSpelling(sheet, cases[0]!);
    const seen = judgeContent(sheet, mayShow);
    judgeStyleReferences(sheet, seen);
    judgeDrawn(sheet, reader, measured);
  }
  judgeMarks(cases, reader);
  for (const sheet of cases) findings.push(...closeNotes(sheet.notes));
  findings.push(...closeNotes(judgeCoverage(source, sheets, context.expected)));
  return { ...measured, findings };
}
