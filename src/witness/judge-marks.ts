// Whether the marks of all files lie on each other.
import { type Box, EMPTY_BOX, grow, isEmptyBox, unite } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { MOVE, type PathData, type PathReader } from '../geometry/path-data.js';
import { readOwnLength, type Stand } from './own-matrix.js';
import { attributeOf, type WitnessTree } from './read-tree.js';
import { outlineShape, SHAPE_KINDS } from './shape-outline.js';
import { inlineValue, plainValue } from './sheet-case.js';

/** The marks of one file by their name, the labels left out: the box of every part as drawn, and of all. */
export interface MarkPrint {
  readonly parts: ReadonlyMap<string, readonly Box[]>;
  readonly extent: Box;
}

/** The group of marks of a file, or -1. */
export function findMarks(tree: WitnessTree): number {
  for (const element of tree.elements) {
    if (element.parent === 0 && element.kind === 'g' && element.id === 'pinbar-marks') return element.ordinal;
  }
  return -1;
}

/** Copies one subpath out, so that its box can be taken alone. */
function sliceSubpath(path: PathData, ops: readonly [number, number], coords: readonly [number, number]): PathData {
  return {
    ops: path.ops.slice(...ops),
    opCount: ops[1] - ops[0],
    coords: path.coords.slice(...coords),
    coordCount: coords[1] - coords[0],
    errorAt: -1,
  };
}

const COORDS_PER_OP = [2, 2, 6, 4, 7, 0] as const;

/** The box of each subpath. */
function boxSubpaths(path: PathData, matrix: Matrix): readonly Box[] {
  const boxes: Box[] = [];
  let firstOp = 0;
  let firstCoord = 0;
  let coord = 0;
  for (let i = 0; i <= path.opCount; i += 1) {
    const ends = i === path.opCount || path.ops[i] === MOVE;
    if (ends && i > firstOp) {
      boxes.push(pathBox(sliceSubpath(path, [firstOp, i], [firstCoord, coord]), matrix));
      firstOp = i;
      firstCoord = coord;
    }
    if (i < path.opCount) coord += COORDS_PER_OP[path.ops[i]!]!;
  }
  return boxes;
}

/** Half the width of a mark's own stroke on the artboard; marks are drawn without skew. */
function halfStroke(tree: WitnessTree, ordinal: number, matrix: Matrix): number {
  const element = tree.elements[ordinal]!;
  const stroke = plainValue(element, 'stroke');
  if (stroke === null || stroke === 'none') return 0;
  const width = readOwnLength(plainValue(element, 'stroke-width') ?? '1', 0) ?? 0;
  return (width * Math.sqrt(Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]))) / 2;
}

/**
 * Reads the marks of a file.
 *
 * @param scale - From px on the file's artboard to the unit asked for.
 * @returns Null where there are none.
 */
export function readMarkPrint(
  tree: WitnessTree,
  stands: readonly Stand[],
  context: { readonly reader: PathReader; readonly toUnit: (matrix: Matrix) => Matrix },
): MarkPrint | null {
  const group = findMarks(tree);
  if (group < 0) return null;
  const parts = new Map<string, Box[]>();
  let extent: Box = EMPTY_BOX;
  for (let i = group + 1; i < tree.elements[group]!.end; i += 1) {
    const element = tree.elements[i]!;
    const name = attributeOf(element, 'data-mark') ?? element.kind;
    if (name === 'label' || !SHAPE_KINDS.has(element.kind) || element.kind === 'text') continue;
    const matrix = context.toUnit(stands[i]!.matrix);
    const half = halfStroke(tree, i, matrix);
    const boxes = boxSubpaths(outlineShape(element, stands[i]!.viewport, context.reader), matrix);
    const list = parts.get(name) ?? [];
    for (const box of boxes) {
      const drawn = half === 0 ? box : grow(box, half);
      if (isEmptyBox(drawn)) continue;
      list.push(drawn);
      extent = unite(extent, drawn);
    }
    parts.set(name, list);
  }
  return { parts, extent };
}

/** Unites each `count` boxes that follow each other: the broken rim of a disc is one mark. */
function gather(boxes: readonly Box[], count: number): readonly Box[] {
  const gathered: Box[] = [];
  for (let i = 0; i < boxes.length; i += count) gathered.push(boxes.slice(i, i + count).reduce(unite, EMPTY_BOX));
  return gathered;
}

function boxDistance(a: Box, b: Box): number {
  return Math.max(Math.abs(a.x0 - b.x0), Math.abs(a.y0 - b.y0), Math.abs(a.x1 - b.x1), Math.abs(a.y1 - b.y1));
}

function listDistance(a: readonly Box[], b: readonly Box[]): number {
  const [few, many] = a.length <= b.length ? [a, b] : [b, a];
  if (few.length === 0 || many.length % few.length !== 0) return Infinity;
  const gathered = gather(many, many.length / few.length);
  let distance = 0;
  for (let i = 0; i < few.length; i += 1) distance = Math.max(distance, boxDistance(few[i]!, gathered[i]!));
  return distance;
}

/**
 * Compares the marks of two files: those both have lie on each other, and both end at the same extent.
 *
 * A pass may go without register marks; a disc may be broken into its rim.
 *
 * @returns What differs, in plain words, and by how much; empty where nothing does.
 */
export function compareMarkPrints(
  a: MarkPrint,
  b: MarkPrint,
  tolerance: number,
): readonly { readonly text: string; readonly distance: number }[] {
  const found: { text: string; distance: number }[] = [];
  for (const [name, boxes] of a.parts) {
    const others = b.parts.get(name);
    if (others === undefined) continue;
    const distance = listDistance(boxes, others);
    if (!(distance <= tolerance)) found.push({ text: `the mark "${name}" lies elsewhere`, distance });
  }
  const distance = isEmptyBox(a.extent) === isEmptyBox(b.extent) ? boxDistance(a.extent, b.extent) : Infinity;
  if (!isEmptyBox(a.extent) && !(distance <= tolerance)) {
    found.push({ text: 'the extent of the marks differs', distance });
  }
  return found;
}

/** Numbers of a transform function, whatever stands between them. */
function listNumbers(transform: string): string {
  return (transform.match(/[a-zA-Z]+|[-+.\deE]+/g) ?? []).join(' ');
}

/** Marks that are not drawn, or not where their transform attribute says: readers with and without CSS would differ. */
export function listUnseenMarks(
  tree: WitnessTree,
  hidden: Uint8Array,
): readonly { readonly ordinal: number; readonly text: string }[] {
  const group = findMarks(tree);
  if (group < 0) return [];
  const found: { ordinal: number; text: string }[] = [];
  for (const element of tree.elements.slice(group, tree.elements[group]!.end)) {
    const { ordinal } = element;
    if (hidden[ordinal] === 1) found.push({ ordinal, text: 'is a mark, but hidden' });
    else if (Number(plainValue(element, 'opacity') ?? '1') !== 1) found.push({ ordinal, text: 'is a mark, but faint' });
    const attribute = attributeOf(element, 'transform') ?? 'none';
    const style = inlineValue(attributeOf(element, 'style') ?? '', 'transform') ?? attribute;
    if (listNumbers(style) !== listNumbers(attribute)) {
      found.push({ ordinal, text: 'is placed by its style otherwise than by its attribute' });
    }
  }
  return found;
}
