// Everything a file draws, on its artboard in millimetres.
import { type Box, containsBox, EMPTY_BOX, grow, unite } from '../geometry/box.js';
import { IDENTITY, type Matrix } from '../geometry/matrix.js';
import { pathBox } from '../geometry/path-box.js';
import { ARC, createPathReader, type PathData, type PathReader } from '../geometry/path-data.js';
import { strokeBox } from '../geometry/stroke-box.js';
import { INITIAL_PAINT, type PaintState, paintElement, signPaint } from './drawn-paint.js';
import { compose, enterViewport, readOwnLength, type Stand, stepInto, type WitnessBoard } from './own-matrix.js';
import { attributeOf, hrefOf, type WitnessElement, type WitnessTree } from './read-tree.js';
import { outlineShape, SHAPE_KINDS, UNDRAWN_KINDS } from './shape-outline.js';
import { readStyleBook, type StyleBook } from './style-rules.js';

/** One drawn shape; a shape drawn through a use counts once per use. Lengths in mm on the artboard. */
export interface DrawnShape {
  readonly kind: string;
  readonly id: string;
  /** Stands for the kinds of segments and for the text, so that only like shapes are compared. */
  readonly build: number;
  /** Points of the outline in `DrawnList.points`: where they start (a pair each), and how many numbers. */
  readonly pointStart: number;
  readonly pointCount: number;
  readonly box: Box;
  readonly fill: string;
  readonly stroke: string;
  /** More that must agree for equal paint; see `signPaint`. */
  readonly rest: string;
}

/** What a file draws, marks left out. */
export interface DrawnList {
  readonly shapes: readonly DrawnShape[];
  readonly points: Float64Array;
  /** Extent with strokes, as if undashed, mm. */
  readonly extent: Box;
  /** Whether uses drew more copies than are followed. */
  readonly isCut: boolean;
}

/** Most elements visited for one file, copies through uses included. */
export const VISIT_LIMIT = 1_000_000;
const USE_DEPTH = 32;
const POINTS_PER_OP = [1, 1, 3, 2, 1, 0] as const;

interface Task {
  readonly ordinal: number;
  readonly around: Stand;
  readonly paint: PaintState;
  /** Ordinals of the uses it is drawn through. */
  readonly uses: readonly number[];
  /** Width and height that a use gives to a symbol or nested svg. */
  readonly use: WitnessElement | null;
}

interface Listing {
  readonly tree: WitnessTree;
  readonly book: StyleBook;
  readonly toMm: Matrix;
  readonly reader: PathReader;
  readonly shapes: DrawnShape[];
  readonly tasks: Task[];
  points: Float64Array;
  pointCount: number;
  extent: Box;
}

/** Copies the mapped points of an outline; an arc leaves its end alone. */
function storePoints(listing: Listing, path: PathData, matrix: Matrix): number {
  const start = listing.pointCount;
  if (start + path.coordCount > listing.points.length) {
    const larger = new Float64Array(2 * (start + path.coordCount) + 1024);
    larger.set(listing.points);
    listing.points = larger;
  }
  const [a, b, c, d, e, f] = matrix;
  let at = 0;
  for (let i = 0; i < path.opCount; i += 1) {
    const op = path.ops[i]!;
    if (op === ARC) at += 5;
    for (let k = 0; k < POINTS_PER_OP[op]!; k += 1) {
      const x = path.coords[at]!;
      const y = path.coords[at + 1]!;
      listing.points[listing.pointCount] = a * x + c * y + e;
      listing.points[listing.pointCount + 1] = b * x + d * y + f;
      listing.pointCount += 2;
      at += 2;
    }
  }
  return start;
}

function hashBuild(path: PathData, element: WitnessElement): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < path.opCount; i += 1) hash = Math.imul(hash ^ path.ops[i]!, 0x01000193);
  if (element.kind === 'text' || element.kind === 'image') {
    const told = element.kind + element.text.trim();
    for (let i = 0; i < told.length; i += 1) hash = Math.imul(hash ^ told.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}

function strokeShapeOf(paint: PaintState): Parameters<typeof strokeBox>[2] {
  const cap = paint.strokeLinecap;
  const join = paint.strokeLinejoin;
  return {
    width: Math.max(0, readOwnLength(paint.strokeWidth, 0) ?? 1),
    linecap: cap === 'round' || cap === 'square' ? cap : 'butt',
    linejoin: join === 'round' || join === 'bevel' ? join : 'miter',
    miterlimit: Math.max(1, Number(paint.strokeMiterlimit) || 4),
  };
}

/** Takes a stroke into the extent; its exact box only where it could reach beyond. */
function widenByStroke(listing: Listing, path: PathData, matrix: Matrix, paint: PaintState): void {
  const shape = strokeShapeOf(paint);
  const stretch = Math.abs(matrix[0]) + Math.abs(matrix[1]) + Math.abs(matrix[2]) + Math.abs(matrix[3]);
  const reach = (shape.width / 2) * stretch * Math.max(shape.miterlimit, 2);
  if (containsBox(listing.extent, grow(pathBox(path, matrix), reach))) return;
  listing.extent = unite(listing.extent, strokeBox(path, matrix, shape));
}

function drawShape(
  listing: Listing,
  element: WitnessElement,
  stand: Stand,
  task: Task & { readonly own: PaintState },
): void {
  const path = outlineShape(element, stand.viewport, listing.reader);
  if (path.opCount === 0) return;
  const matrix = compose(listing.toMm, stand.matrix);
  const { fill, stroke, rest } = signPaint(task.own, element, listing.book);
  const isLine = element.kind === 'line';
  const isPlain = element.kind === 'image' || element.kind === 'text';
  if (!isPlain && (fill === 'none' || isLine) && stroke === 'none') return;
  const box = pathBox(path, matrix);
  listing.extent = unite(listing.extent, box);
  if (!isPlain && stroke !== 'none') widenByStroke(listing, path, matrix, task.own);
  const build = hashBuild(path, element);
  const pointStart = storePoints(listing, path, matrix);
  const names = task.uses.map((ordinal) => listing.tree.elements[ordinal]!.id).filter((name) => name !== '');
  listing.shapes.push({
    kind: element.kind,
    id: task.uses.length === 0 ? element.id : [...names, element.id].join(' > '),
    build,
    pointStart,
    pointCount: listing.pointCount - pointStart,
    box,
    fill: isPlain && element.kind === 'image' ? '' : fill,
    stroke: element.kind === 'image' ? '' : stroke,
    rest,
  });
}

/** Queues the children of a container, last first, so that they are taken in order. */
function queueChildren(listing: Listing, element: WitnessElement, next: Omit<Task, 'ordinal'>): void {
  const children: number[] = [];
  for (let at = element.ordinal + 1; at < element.end; at = listing.tree.elements[at]!.end) {
    if (listing.tree.elements[at]!.kind === '') continue;
    children.push(at);
    if (element.kind === 'switch') break;
  }
  for (let i = children.length - 1; i >= 0; i -= 1) listing.tasks.push({ ...next, ordinal: children[i]! });
}

function queueTarget(
  listing: Listing,
  element: WitnessElement,
  stand: Stand,
  task: Task & { readonly own: PaintState },
): void {
  const target = listing.tree.ids.get((hrefOf(element) ?? '').trim().replace(/^#/, ''));
  if (target === undefined || task.uses.includes(element.ordinal) || task.uses.length >= USE_DEPTH) return;
  listing.tasks.push({
    ordinal: target,
    around: stand,
    paint: task.own,
    uses: [...task.uses, element.ordinal],
    use: element,
  });
}

/** The stand of a symbol or svg that a use draws. */
function standThroughUse(element: WitnessElement, around: Stand, use: WitnessElement): Stand {
  const { width, height } = around.viewport;
  const size = (name: 'width' | 'height', whole: number): number =>
    readOwnLength(attributeOf(use, name), whole) ?? readOwnLength(attributeOf(element, name), whole) ?? whole;
  return enterViewport(element, around, { x: 0, y: 0, width: size('width', width), height: size('height', height) });
}

function visit(listing: Listing, task: Task): void {
  const element = listing.tree.elements[task.ordinal]!;
  const isReferenced = task.use !== null;
  const isViewport = isReferenced && (element.kind === 'symbol' || element.kind === 'svg');
  if (element.kind === '' || (UNDRAWN_KINDS.has(element.kind) && !isViewport)) return;
  if (element.parent === 0 && element.id === 'pinbar-marks') return;
  const { paint, isGone } = paintElement(element, task.paint, listing.book);
  if (isGone) return;
  const stand =
    isViewport && task.use !== null ? standThroughUse(element, task.around, task.use) : stepInto(element, task.around);
  const drawn = { ...task, own: paint };
  if (SHAPE_KINDS.has(element.kind)) {
    if (paint.visibility === 'visible') drawShape(listing, element, stand, drawn);
  } else if (element.kind === 'use') {
    queueTarget(listing, element, stand, drawn);
  } else {
    queueChildren(listing, element, { around: stand, paint, uses: task.uses, use: null });
  }
}

/**
 * Lists what a file draws, uses followed, hidden shapes left out.
 *
 * @param mmPerPx - Millimetres per px of the artboard.
 * @param place - Where the artboard lies, from mm on it to the mm that are answered.
 * @unit mm from the artboard's top left, y down
 */
export function listDrawn(
  tree: WitnessTree,
  board: WitnessBoard,
  mmPerPx: number,
  place: Matrix = IDENTITY,
): DrawnList {
  const listing: Listing = {
    tree,
    book: readStyleBook(tree),
    toMm: compose(place, [mmPerPx, 0, 0, mmPerPx, 0, 0]),
    reader: createPathReader(),
    shapes: [],
    tasks: [],
    points: new Float64Array(1024),
    pointCount: 0,
    extent: EMPTY_BOX,
  };
  const root = tree.elements[0]!;
  const { paint, isGone } = paintElement(root, INITIAL_PAINT, listing.book);
  const stand: Stand = { matrix: board.matrix, viewport: board.inner };
  if (!isGone) queueChildren(listing, root, { around: stand, paint, uses: [], use: null });
  let visits = 0;
  for (let task = listing.tasks.pop(); task !== undefined && visits < VISIT_LIMIT; task = listing.tasks.pop()) {
    visit(listing, task);
    visits += 1;
  }
  const { shapes, points, extent } = listing;
  return { shapes, points, extent, isCut: visits >= VISIT_LIMIT };
}
