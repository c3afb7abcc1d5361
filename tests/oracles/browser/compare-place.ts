// Boxes and matrices: the browser's against ours.
import { IDENTITY, type Matrix, multiply } from '../../../src/geometry/matrix.js';
import { pathBox } from '../../../src/geometry/path-box.js';
import { ARC, CLOSE, CUBIC, LINE, MOVE, type PathData, QUADRATIC } from '../../../src/geometry/path-data.js';
import type { GeometryGrounds } from '../../../src/resolve/drawing.js';
import type { ResolvedShape } from '../../../src/resolve/resolved-shape.js';
import { readGeometry } from '../../../src/resolve/shape-geometry.js';
import { readAttributeValue } from '../../../src/source/read-attribute.js';
import { closedFormBox } from './closed-form-box.js';
import { leaveOut, type Tally } from './tally.js';

/** One file on both sides. */
export interface Comparing {
  readonly tally: Tally;
  readonly file: string;
  readonly grounds: GeometryGrounds;
  /** From the artboard to the user units of the root. */
  readonly toRoot: Matrix;
  /** The longer side of the artboard, user units of the root. */
  readonly boardSize: number;
}

/** Share of the size that single precision leaves. */
const TOLERANCE = 1e-6;
/** Share of the radius by which cubics may miss an arc. */
const ARC_TOLERANCE = 1e-3;
/** What the browser may be off where an arc turns nearly half around. */
const ARC_FAULT = 2e-2;
/** Ours against closed forms. */
const CLOSED_FORM = 1e-9;

const COORDS: Readonly<Record<number, number>> = {
  [MOVE]: 2,
  [LINE]: 2,
  [QUADRATIC]: 4,
  [CUBIC]: 6,
  [ARC]: 7,
  [CLOSE]: 0,
};

/** Notes a difference. */
export function differ(comparing: Comparing, row: number, what: string, theirs: unknown, ours: unknown): void {
  const [said, made] = [theirs, ours].map((value) => (typeof value === 'string' ? value : JSON.stringify(value)));
  comparing.tally.differences.push({ file: comparing.file, row, what, theirs: said!, ours: made! });
}

function isWithin(one: readonly number[], other: readonly number[], allowed: number): boolean {
  return one.every((value, at) => Math.abs(value - other[at]!) <= allowed);
}

/** Our box with every moveto in it, those without a segment too; null where that is our box. */
function withLoneMoves(path: PathData, ours: readonly number[]): readonly number[] | null {
  const [x0, y0, x1, y1] = ours as [number, number, number, number];
  const all = [x0, y0, x1, y1];
  let at = 0;
  for (let index = 0; index < path.opCount; index += 1) {
    const op = path.ops[index]!;
    if (op === MOVE) {
      const [x, y] = [path.coords[at]!, path.coords[at + 1]!];
      all.splice(0, 4, Math.min(all[0]!, x), Math.min(all[1]!, y), Math.max(all[2]!, x), Math.max(all[3]!, y));
    }
    at += COORDS[op]!;
  }
  return all.every((side, place) => side === ours[place]) ? null : all;
}

/** How far the browser may miss the arcs of a path for want of more than single precision and cubics, and where it fails. */
interface Allowance {
  readonly usual: number;
  readonly fault: number;
}

/** Holds a path with arcs against closed forms, and says what the browser is allowed. */
function judgeArcs(comparing: Comparing, shape: ResolvedShape, ours: readonly number[], size: number): Allowance {
  const { tally, grounds } = comparing;
  const truth = closedFormBox(readAttributeValue(grounds.source, shape.element, 'd') ?? '');
  if (truth === null) return { usual: 0, fault: 0 };
  tally.closedForms += 1;
  if (!isWithin(truth.box, ours, CLOSED_FORM * size)) differ(comparing, shape.element, 'closed form', truth.box, ours);
  return { usual: ARC_TOLERANCE * truth.radius, fault: ARC_FAULT * truth.radius };
}

/** Box of a shape in its own user units; `said` is x, y, width, height. */
export function compareBox(comparing: Comparing, shape: ResolvedShape, said: readonly number[]): void {
  const { grounds, tally } = comparing;
  if (shape.kind === 'text') {
    leaveOut(tally, 'box of type');
    return;
  }
  const code = grounds.codes[grounds.source.elements.name[shape.element]!]!;
  const path = readGeometry(grounds, shape.element, code, shape.setting);
  const box = pathBox(path, IDENTITY);
  const [x, y, width, height] = said as [number, number, number, number];
  const theirs = [x, y, x + width, y + height];
  if (!(box.x0 <= box.x1)) {
    if (shape.kind === 'image' || shape.kind === 'foreignObject') {
      leaveOut(tally, 'box of a picture');
      return;
    }
    if (width === 0 || height === 0) {
      leaveOut(tally, 'box without size');
      return;
    }
    differ(comparing, shape.element, 'box', theirs, 'none');
    return;
  }
  tally.boxes += 1;
  const ours = [box.x0, box.y0, box.x1, box.y1];
  const size = Math.max(...ours.map(Math.abs), 1e-3);
  const hasArcs = shape.kind === 'path' && path.ops.subarray(0, path.opCount).includes(ARC);
  const arcs = hasArcs ? judgeArcs(comparing, shape, ours, size) : { usual: 0, fault: 0 };
  if (isWithin(theirs, ours, TOLERANCE * size + arcs.usual)) return;
  const wider = withLoneMoves(path, ours);
  if (wider !== null && isWithin(theirs, wider, TOLERANCE * size + arcs.usual)) {
    leaveOut(tally, 'lone moveto');
    return;
  }
  if (isWithin(theirs, ours, arcs.fault)) {
    leaveOut(tally, 'arc as cubics');
    return;
  }
  differ(comparing, shape.element, 'box', theirs, ours);
}

function mapPoint([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Matrix to the user units of the root: both on the corners of the shape's box and on a square of the artboard's size. */
export function compareMatrix(comparing: Comparing, shape: ResolvedShape, said: Matrix, box: readonly number[]): void {
  const ours = multiply(comparing.toRoot, shape.matrix);
  const { boardSize } = comparing;
  const scale = Math.max(...said.slice(0, 4).map(Math.abs), 1e-9);
  const reach = boardSize / scale;
  const [x, y, width, height] = box as [number, number, number, number];
  const points = [
    [x, y],
    [x + width, y + height],
    [0, 0],
    [reach, 0],
    [0, reach],
  ] as const;
  comparing.tally.matrices += 1;
  let size = boardSize;
  let off = 0;
  for (const [px, py] of points) {
    const theirs = mapPoint(said, px, py);
    const mine = mapPoint(ours, px, py);
    size = Math.max(size, Math.abs(px) * scale, Math.abs(py) * scale, Math.abs(theirs[0]), Math.abs(theirs[1]));
    off = Math.max(off, Math.abs(theirs[0] - mine[0]), Math.abs(theirs[1] - mine[1]));
  }
  if (!(off <= TOLERANCE * size)) differ(comparing, shape.element, 'matrix', said, ours);
}
