// The exact box of a stroked path.
import { readArc } from './arc.js';
import { type Box, EMPTY_BOX } from './box.js';
import type { Matrix } from './matrix.js';
import { ARC, CLOSE, CUBIC, LINE, MOVE, type PathData } from './path-data.js';
import { elevate, includeBands } from './stroke-bands.js';
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
  /** Size of the coordinates met so far. */
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
  const walk = walkPath(frame, path, stroke);
  includeBands(frame, path, NOISE * walk.scale);
  const { bounds } = frame;
  if (!(bounds[0]! <= bounds[2]!)) return EMPTY_BOX;
  // Adding zero turns -0 into 0.
  return { x0: bounds[0]! + 0, y0: bounds[1]! + 0, x1: bounds[2]! + 0, y1: bounds[3]! + 0 };
}

/** Takes in the ends of all segments, joins and caps. */
function walkPath(frame: StrokeFrame, path: PathData, stroke: StrokeShape): StrokeWalk {
  const walk = startWalk(frame, stroke);
  const { ops, opCount, coords } = path;
  const raised = new Float64Array(8);
  let at = 0;
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    if (op === MOVE) {
      endSubpath(walk);
      walk.x = coords[at]!;
      walk.y = coords[at + 1]!;
      walk.startX = walk.x;
      walk.startY = walk.y;
      walk.scale = Math.max(walk.scale, Math.abs(walk.x) + Math.abs(walk.y));
    } else if (op === CLOSE) closeSubpath(walk);
    else {
      walk.drawn = true;
      if (op === LINE) strokeLine(walk, coords[at]!, coords[at + 1]!);
      else if (op === ARC) strokeArc(walk, coords, at);
      else if (op === CUBIC) strokeCurve(walk, coords, at - 2);
      else {
        elevate(coords, at - 2, raised);
        strokeCurve(walk, raised, 0);
      }
    }
    at += op === CUBIC ? 6 : op === ARC ? 7 : op === CLOSE ? 0 : op === MOVE || op === LINE ? 2 : 4;
  }
  endSubpath(walk);
  return walk;
}

function startWalk(frame: StrokeFrame, stroke: StrokeShape): StrokeWalk {
  return {
    frame,
    stroke,
    x: 0,
    y: 0,
    startX: 0,
    startY: 0,
    scale: 0,
    drawn: false,
    directed: false,
    firstX: 0,
    firstY: 0,
    lastX: 0,
    lastY: 0,
  };
}

/** Whether a step from where the walk is, in user units, is no step. */
function isNoise(walk: StrokeWalk, dx: number, dy: number): boolean {
  return Math.abs(dx) + Math.abs(dy) <= NOISE * walk.scale;
}

function strokeLine(walk: StrokeWalk, x: number, y: number): void {
  const dx = x - walk.x;
  const dy = y - walk.y;
  if (isNoise(walk, dx, dy)) return;
  leave(walk, dx, dy);
  arrive(walk, x, y, dx, dy);
}

/** `points` holds start, two controls and end from `at`. */
function strokeCurve(walk: StrokeWalk, points: Float64Array, at: number): void {
  const [x0, y0, x3, y3] = [walk.x, walk.y, points[at + 6]!, points[at + 7]!];
  let from = at + 2;
  while (from < at + 8 && isNoise(walk, points[from]! - x0, points[from + 1]! - y0)) from += 2;
  if (from === at + 8) return;
  let to = at + 4;
  while (to > at && isNoise(walk, x3 - points[to]!, y3 - points[to + 1]!)) to -= 2;
  leave(walk, points[from]! - x0, points[from + 1]! - y0);
  arrive(walk, x3, y3, x3 - points[to]!, y3 - points[to + 1]!);
}

function strokeArc(walk: StrokeWalk, coords: Float64Array, at: number): void {
  const x = coords[at + 5]!;
  const y = coords[at + 6]!;
  const arc = readArc(coords, at, walk.x, walk.y);
  if (arc === null) {
    strokeLine(walk, x, y);
    return;
  }
  const side = Math.sign(arc.sweep);
  const [cos, sin] = [side * Math.cos(arc.start), side * Math.sin(arc.start)];
  leave(walk, cos * arc.vx - sin * arc.ux, cos * arc.vy - sin * arc.uy);
  const end = arc.start + arc.sweep;
  const [endCos, endSin] = [side * Math.cos(end), side * Math.sin(end)];
  arrive(walk, x, y, endCos * arc.vx - endSin * arc.ux, endCos * arc.vy - endSin * arc.uy);
}

/** Takes in the start of a segment along (dx, dy) and the join before it. */
function leave(walk: StrokeWalk, dx: number, dy: number): void {
  const { frame } = walk;
  if (!isCovered(frame, walk.x, walk.y, 1)) includeAcross(frame, walk.x, walk.y, dx, dy);
  if (walk.directed) includeJoin(walk, dx, dy);
  else {
    walk.firstX = dx;
    walk.firstY = dy;
  }
}

/** Takes in the end of a segment that came along (dx, dy). */
function arrive(walk: StrokeWalk, x: number, y: number, dx: number, dy: number): void {
  const { frame } = walk;
  if (!isCovered(frame, x, y, 1)) includeAcross(frame, x, y, dx, dy);
  walk.directed = true;
  walk.lastX = dx;
  walk.lastY = dy;
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
