// The exact box of a stroked path.
import { readArc } from './arc.js';
import { type Box, EMPTY_BOX } from './box.js';
import type { Matrix } from './matrix.js';
import { ARC, CLOSE, CUBIC, LINE, MOVE, type PathData } from './path-data.js';
import { type Cubic, includeArc, includeCubic } from './stroke-bands.js';
import { includeAcross, includeDisc, includePoint, isCovered, openFrame, type StrokeFrame } from './stroke-frame.js';

/** How a path is stroked. */
export interface StrokeShape {
  /** User units of the path. */
  readonly width: number;
  readonly linecap: 'butt' | 'round' | 'square';
  readonly linejoin: 'miter' | 'round' | 'bevel';
  readonly miterlimit: number;
}

/** Where a walk along a path is, in user units of the path. */
interface StrokeWalk {
  readonly frame: StrokeFrame;
  readonly stroke: StrokeShape;
  x: number;
  y: number;
  startX: number;
  startY: number;
  /** Size of the coordinates met in the subpath. */
  scale: number;
  /** Whether the subpath has a segment, of whatever length. */
  drawn: boolean;
  /** Whether it has one of a length above zero; only then do the directions count. */
  directed: boolean;
  firstX: number;
  firstY: number;
  lastX: number;
  lastY: number;
}

/** Shorter against the coordinates than this is what adding relative coordinates leaves behind, not a segment. */
const NOISE = 1e-11;

/**
 * The smallest upright box around the stroke of a path, outlined in the path's own space and then mapped by a matrix.
 * As if undashed.
 *
 * The band along each segment is what a line of the stroke's width sweeps, at right angles to the path; its extremes lie at ends, where
 * the path moves along the edge of the box, and where the radius of curvature equals half the width. Round joins count as sectors.
 *
 * @param path - The segments, in user units of the path.
 * @param matrix - From there to the frame of the box.
 * @returns The box; empty for a width that is not above zero and for a path without segments.
 * @throws Never. Numbers beyond 1e50 may overflow.
 * @unit target space of the matrix
 * @accuracy 1e-9 of the size at the sharpest bends, else a few units in the last place of the largest coordinate.
 * @source SVG 2, section 13.5 (stroke properties) and 8.10 (stroke bounding box)
 */
export function strokeBox(path: PathData, matrix: Matrix, stroke: StrokeShape): Box {
  if (!(stroke.width > 0)) return EMPTY_BOX;
  const frame = openFrame(matrix, stroke.width / 2);
  const walk: StrokeWalk = {
    ...{ frame, stroke, x: 0, y: 0, startX: 0, startY: 0, scale: 0, drawn: false, directed: false },
    ...{ firstX: 0, firstY: 0, lastX: 0, lastY: 0 },
  };
  const { ops, opCount, coords } = path;
  let at = 0;
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    if (op === MOVE) {
      endSubpath(walk);
      walk.x = coords[at]!;
      walk.y = coords[at + 1]!;
      walk.startX = walk.x;
      walk.startY = walk.y;
      walk.scale = Math.abs(walk.x) + Math.abs(walk.y);
    } else if (op === CLOSE) closeSubpath(walk);
    else {
      walk.drawn = true;
      if (op === LINE) strokeLine(walk, coords[at]!, coords[at + 1]!);
      else if (op === ARC) strokeArc(walk, coords, at);
      else strokeCurve(walk, op === CUBIC ? readCubic(coords, at) : readQuadratic(coords, at));
    }
    at += op === CUBIC ? 6 : op === ARC ? 7 : op === CLOSE ? 0 : op === MOVE || op === LINE ? 2 : 4;
  }
  endSubpath(walk);
  const { bounds } = frame;
  if (!(bounds[0]! <= bounds[2]!)) return EMPTY_BOX;
  // Adding zero turns -0 into 0.
  return { x0: bounds[0]! + 0, y0: bounds[1]! + 0, x1: bounds[2]! + 0, y1: bounds[3]! + 0 };
}

function readCubic(coords: Float64Array, at: number): Cubic {
  return [
    ...([coords[at - 2]!, coords[at - 1]!, coords[at]!, coords[at + 1]!] as const),
    ...([coords[at + 2]!, coords[at + 3]!, coords[at + 4]!, coords[at + 5]!] as const),
  ];
}

/** A quadratic segment as the cubic that it is. */
function readQuadratic(coords: Float64Array, at: number): Cubic {
  const [x0, y0, x1, y1] = [coords[at - 2]!, coords[at - 1]!, coords[at]!, coords[at + 1]!];
  const [x2, y2] = [coords[at + 2]!, coords[at + 3]!];
  const third = (end: number, control: number): number => end + (2 / 3) * (control - end);
  return [x0, y0, third(x0, x1), third(y0, y1), third(x2, x1), third(y2, y1), x2, y2];
}

/** Whether a step from where the walk is, in user units, is no step. */
function isNoise(walk: StrokeWalk, dx: number, dy: number): boolean {
  return Math.abs(dx) + Math.abs(dy) <= NOISE * walk.scale;
}

function strokeLine(walk: StrokeWalk, x: number, y: number): void {
  const dx = x - walk.x;
  const dy = y - walk.y;
  if (isNoise(walk, dx, dy)) return;
  advance(walk, x, y, [dx, dy, dx, dy]);
}

function strokeCurve(walk: StrokeWalk, curve: Cubic): void {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = curve;
  let [firstX, firstY, lastX, lastY] = [x1 - x0, y1 - y0, x3 - x2, y3 - y2];
  if (isNoise(walk, firstX, firstY)) [firstX, firstY] = [x2 - x0, y2 - y0];
  if (isNoise(walk, firstX, firstY)) [firstX, firstY] = [x3 - x0, y3 - y0];
  if (isNoise(walk, firstX, firstY)) return;
  if (isNoise(walk, lastX, lastY)) [lastX, lastY] = [x3 - x1, y3 - y1];
  if (isNoise(walk, lastX, lastY)) [lastX, lastY] = [x3 - x0, y3 - y0];
  advance(walk, x3, y3, [firstX, firstY, lastX, lastY]);
  includeCubic(walk.frame, curve);
}

function strokeArc(walk: StrokeWalk, coords: Float64Array, at: number): void {
  const [x, y] = [coords[at + 5]!, coords[at + 6]!];
  const arc = readArc(coords, at, walk.x, walk.y);
  if (arc === null) {
    strokeLine(walk, x, y);
    return;
  }
  const side = Math.sign(arc.sweep);
  const [cos, sin] = [side * Math.cos(arc.start), side * Math.sin(arc.start)];
  const end = arc.start + arc.sweep;
  const [endCos, endSin] = [side * Math.cos(end), side * Math.sin(end)];
  advance(walk, x, y, [
    ...([cos * arc.vx - sin * arc.ux, cos * arc.vy - sin * arc.uy] as const),
    ...([endCos * arc.vx - endSin * arc.ux, endCos * arc.vy - endSin * arc.uy] as const),
  ]);
  includeArc(walk.frame, arc);
}

/** Takes in both ends of a segment and the join before it; `directions` are those at its start and end. */
function advance(walk: StrokeWalk, x: number, y: number, directions: readonly [number, number, number, number]): void {
  const [firstX, firstY, lastX, lastY] = directions;
  const { frame } = walk;
  if (!isCovered(frame, walk.x, walk.y, 1)) includeAcross(frame, walk.x, walk.y, firstX, firstY);
  if (!isCovered(frame, x, y, 1)) includeAcross(frame, x, y, lastX, lastY);
  if (walk.directed) includeJoin(walk, firstX, firstY);
  else {
    walk.firstX = firstX;
    walk.firstY = firstY;
  }
  walk.directed = true;
  walk.lastX = lastX;
  walk.lastY = lastY;
  walk.x = x;
  walk.y = y;
  walk.scale = Math.max(walk.scale, Math.abs(x) + Math.abs(y));
}

/** Joins the last segment to one that leaves along (nextX, nextY). */
function includeJoin(walk: StrokeWalk, nextX: number, nextY: number): void {
  const { frame, stroke, x, y } = walk;
  // The ends of both segments are in already, and so is the triangle of a bevel.
  if (stroke.linejoin === 'bevel') return;
  if (isCovered(frame, x, y, stroke.linejoin === 'miter' ? Math.max(1, stroke.miterlimit) : 1)) return;
  const last = Math.sqrt(walk.lastX * walk.lastX + walk.lastY * walk.lastY);
  const next = Math.sqrt(nextX * nextX + nextY * nextY);
  const [inX, inY, outX, outY] = [walk.lastX / last, walk.lastY / last, nextX / next, nextY / next];
  const turn = inX * outY - inY * outX;
  // The join lies on the outer side of the turn.
  const side = turn > 0 ? -1 : 1;
  if (stroke.linejoin === 'miter') {
    const [sumX, sumY] = [inX + outX, inY + outY];
    const square = sumX * sumX + sumY * sumY;
    // 1 / sin(angle / 2) squared is 4 / |sum| squared.
    if (4 > stroke.miterlimit * stroke.miterlimit * square) return;
    const reach = (2 * side * frame.radius) / square;
    includePoint(frame, x - reach * sumY, y + reach * sumX);
    return;
  }
  includeDisc(frame, x, y, (dx, dy) => {
    if (turn === 0) return inX * outX + inY * outY < 0 && dx * inX + dy * inY >= 0;
    // Between the outer normals: ahead of the first segment's end and behind the next one's start.
    return inX * dx + inY * dy >= 0 && outX * dx + outY * dy <= 0;
  });
}

function closeSubpath(walk: StrokeWalk): void {
  walk.drawn = true;
  strokeLine(walk, walk.startX, walk.startY);
  walk.x = walk.startX;
  walk.y = walk.startY;
  if (walk.directed) includeJoin(walk, walk.firstX, walk.firstY);
  else includeDot(walk);
  walk.drawn = false;
  walk.directed = false;
}

function endSubpath(walk: StrokeWalk): void {
  if (walk.directed) {
    includeCap(walk, walk.startX, walk.startY, [-walk.firstX, -walk.firstY]);
    includeCap(walk, walk.x, walk.y, [walk.lastX, walk.lastY]);
  } else if (walk.drawn) includeDot(walk);
  walk.drawn = false;
  walk.directed = false;
}

/** The cap of an end that looks along a direction. */
function includeCap(walk: StrokeWalk, x: number, y: number, [dx, dy]: readonly [number, number]): void {
  const { frame, stroke } = walk;
  if (stroke.linecap === 'round') includeDisc(frame, x, y, (p, q) => p * dx + q * dy >= 0);
  else if (stroke.linecap === 'square') {
    const scale = frame.radius / Math.sqrt(dx * dx + dy * dy);
    includeAcross(frame, x + scale * dx, y + scale * dy, dx, dy);
  }
}

/** A subpath without length: a disc, a square along the axes of the path's own space, or nothing. */
function includeDot(walk: StrokeWalk): void {
  const { frame, stroke, startX, startY } = walk;
  if (stroke.linecap === 'round') includeDisc(frame, startX, startY, () => true);
  else if (stroke.linecap === 'square') {
    includeAcross(frame, startX - frame.radius, startY, 1, 0);
    includeAcross(frame, startX + frame.radius, startY, 1, 0);
  }
}
