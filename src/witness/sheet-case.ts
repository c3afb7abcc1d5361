// One sheet before the second judge: both trees, where things stand in them, and what is drawn.
import type { Matrix } from '../geometry/matrix.js';
import { MM_PER_PX } from '../geometry/units.js';
import { type JudgeNotes, openNotes } from './judge-notes.js';
import { insertedKind, type MatchResult, matchElements } from './match-elements.js';
import { compose, readBoard, type Stand, type WitnessBoard, walkStands } from './own-matrix.js';
import { attributeOf, type WitnessElement, type WitnessTree } from './read-tree.js';

/** Which part of a shape a sheet draws. */
export type DrawnPart = 'whole' | 'fill' | 'stroke';

/** What is claimed of a written sheet. */
export interface SheetClaim {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** For every element of the file, in file order, its ordinal among all elements of the source (root 0); -1 where pinbar put it there. */
  readonly rows: Int32Array;
  /** Ordinals of the source elements (shapes or uses) that are drawn here, and how. */
  readonly drawn: ReadonlyMap<number, DrawnPart>;
}

/** The source, read once. */
export interface SourceCase {
  readonly tree: WitnessTree;
  readonly board: WitnessBoard;
  readonly stands: readonly Stand[];
  readonly mmPerPx: number;
  readonly grownMm: number;
}

/** One sheet against the source. */
export interface SheetCase {
  readonly source: SourceCase;
  readonly claim: SheetClaim;
  readonly tree: WitnessTree;
  readonly board: WitnessBoard;
  readonly stands: readonly Stand[];
  readonly match: MatchResult;
  /** From the sheet's artboard to the source's: another size of px taken out, the grown margin taken off. */
  readonly toSource: Matrix;
  readonly isRestated: boolean;
  /** 1 where an element stands in the drawing, not in a definition; marks and stand-ins are 0. */
  readonly inDrawing: Uint8Array;
  /** 1 where display or visibility hides an element, as attributes and inline styles say. */
  readonly hidden: Uint8Array;
  readonly notes: JudgeNotes;
}

const CONTAINERS = new Set(['svg', 'g', 'a', 'switch']);

/** The last value that an inline style gives a property, or null; an important one wins. */
export function inlineValue(style: string, property: string): string | null {
  if (!style.includes(property)) return null;
  let found: string | null = null;
  let foundImportant = false;
  for (const declaration of style.split(';')) {
    const colon = declaration.indexOf(':');
    if (colon < 0 || declaration.slice(0, colon).trim().toLowerCase() !== property) continue;
    const important = /!\s*important\s*$/i.test(declaration);
    if (foundImportant && !important) continue;
    found = declaration
      .slice(colon + 1)
      .replace(/!\s*important\s*$/i, '')
      .trim();
    foundImportant = important;
  }
  return found;
}

/** A property by inline style, else by attribute, else null. */
export function plainValue(element: WitnessElement, property: string): string | null {
  const style = attributeOf(element, 'style');
  return (style === null ? null : inlineValue(style, property)) ?? attributeOf(element, property);
}

function markDrawing(tree: WitnessTree): Uint8Array {
  const flags = new Uint8Array(tree.elements.length);
  const opens = new Uint8Array(tree.elements.length);
  for (const element of tree.elements) {
    const { ordinal, parent, kind } = element;
    if (kind === '' || (parent >= 0 && opens[parent] === 0)) continue;
    const inserted = parent < 0 ? null : insertedKind(tree, element);
    // Marks of an earlier run are the source's own, wherever they stand.
    if (inserted === 'stand-in' || (parent === 0 && element.id === 'pinbar-marks')) continue;
    flags[ordinal] = 1;
    if (CONTAINERS.has(kind)) opens[ordinal] = 1;
  }
  return flags;
}

function markHidden(tree: WitnessTree): Uint8Array {
  const size = tree.elements.length;
  const gone = new Uint8Array(size);
  const unseen = new Uint8Array(size);
  const flags = new Uint8Array(size);
  for (const element of tree.elements) {
    const { ordinal, parent } = element;
    const display = plainValue(element, 'display');
    const visibility = plainValue(element, 'visibility');
    gone[ordinal] = display === 'none' || (parent >= 0 && gone[parent] === 1) ? 1 : 0;
    const inherits = visibility === null || visibility === 'inherit';
    if (inherits) unseen[ordinal] = parent >= 0 ? unseen[parent]! : 0;
    else unseen[ordinal] = visibility === 'hidden' || visibility === 'collapse' ? 1 : 0;
    flags[ordinal] = gone[ordinal]! | unseen[ordinal]!;
  }
  return flags;
}

/** Reads the source's artboard and stands. */
export function openSource(
  tree: WitnessTree,
  context: { readonly mmPerPx: number; readonly grownMm: number },
): SourceCase {
  const board = readBoard(tree.elements[0]!);
  return { tree, board, stands: walkStands(tree.elements, board), mmPerPx: context.mmPerPx, grownMm: context.grownMm };
}

/** Puts a sheet beside its source. */
export function openSheet(source: SourceCase, claim: SheetClaim, tree: WitnessTree): SheetCase {
  const board = readBoard(tree.elements[0]!);
  const mmPerPx = board.sizeIsSure ? MM_PER_PX : source.mmPerPx;
  const scale = mmPerPx / (source.board.sizeIsSure ? MM_PER_PX : source.mmPerPx);
  const marginPx = source.grownMm / source.mmPerPx;
  return {
    source,
    claim,
    tree,
    board,
    stands: walkStands(tree.elements, board),
    match: matchElements(source.tree, tree, claim.rows),
    toSource: [scale, 0, 0, scale, -marginPx, -marginPx],
    isRestated: scale !== 1 || marginPx !== 0,
    inDrawing: markDrawing(tree),
    hidden: markHidden(tree),
    notes: openNotes(claim.name),
  };
}

/** From an element's user units in the sheet to px on the source's artboard. */
export function matrixOnSource(sheet: SheetCase, ordinal: number): Matrix {
  const { matrix } = sheet.stands[ordinal]!;
  return sheet.isRestated ? compose(sheet.toSource, matrix) : matrix;
}
