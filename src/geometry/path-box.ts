// The exact box of a path.
import { type Arc, arcPeak, mapArc, readArc } from './arc.js';
import { type Box, EMPTY_BOX } from './box.js';
import type { Matrix } from './matrix.js';
import { ARC, CLOSE, CUBIC, MOVE, type PathData, QUADRATIC } from './path-data.js';

/**
 * The smallest upright box around a path mapped by a matrix.
 *
 * Curves are mapped and then solved for their extrema on each axis, arcs as the ellipses they are. A moveto counts where its
 * subpath has a segment; a closepath is one.
 *
 * @param path - The segments, in user units of the path.
 * @param matrix - From there to the frame of the box.
 * @returns The box, or the empty box for a path without segments.
 * @throws Never. Numbers beyond 1e150 may overflow.
 * @unit target space of the matrix
 * @accuracy A few units in the last place of the largest coordinate.
 * @source SVG 2, section 8.10 (object bounding box) and appendix B.2 (arcs)
 */
export function pathBox(path: PathData, matrix: Matrix): Box {
  const { ops, opCount, coords } = path;
  const [a, b, c, d, e, f] = matrix;
  const bounds = Float64Array.of(Infinity, Infinity, -Infinity, -Infinity);
  let x = 0;
  let y = 0;
  let at = 0;
  let pending = false;
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    const fromX = x;
    const fromY = y;
    if (op !== CLOSE) {
      at += op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : 2;
      x = a * coords[at - 2]! + c * coords[at - 1]! + e;
      y = b * coords[at - 2]! + d * coords[at - 1]! + f;
    }
    if (op === MOVE) {
      pending = true;
      continue;
    }
    if (pending) include(bounds, fromX, fromY);
    pending = false;
    include(bounds, x, y);
    if (op === CUBIC) {
      const x1 = a * coords[at - 6]! + c * coords[at - 5]! + e;
      const y1 = b * coords[at - 6]! + d * coords[at - 5]! + f;
      const x2 = a * coords[at - 4]! + c * coords[at - 3]! + e;
      const y2 = b * coords[at - 4]! + d * coords[at - 3]! + f;
      if (x1 < bounds[0]! || x2 < bounds[0]!) bounds[0] = Math.min(bounds[0]!, cubicLow(fromX, x1, x2, x));
      if (y1 < bounds[1]! || y2 < bounds[1]!) bounds[1] = Math.min(bounds[1]!, cubicLow(fromY, y1, y2, y));
      if (x1 > bounds[2]! || x2 > bounds[2]!) bounds[2] = Math.max(bounds[2]!, -cubicLow(-fromX, -x1, -x2, -x));
      if (y1 > bounds[3]! || y2 > bounds[3]!) bounds[3] = Math.max(bounds[3]!, -cubicLow(-fromY, -y1, -y2, -y));
    } else if (op === QUADRATIC) {
      includeQuadratic(bounds, 0, fromX, a * coords[at - 4]! + c * coords[at - 3]! + e, x);
      includeQuadratic(bounds, 1, fromY, b * coords[at - 4]! + d * coords[at - 3]! + f, y);
    } else if (op === ARC) {
      // After a closepath comes a moveto, so the current point is always right before the arc's own coordinates.
      includeArc(bounds, readArc(coords, at - 7, coords[at - 9]!, coords[at - 8]!), matrix);
    }
  }
  if (!(bounds[0]! <= bounds[2]!)) return EMPTY_BOX;
  // Adding zero turns -0 into 0.
  return { x0: bounds[0]! + 0, y0: bounds[1]! + 0, x1: bounds[2]! + 0, y1: bounds[3]! + 0 };
}

function include(bounds: Float64Array, x: number, y: number): void {
  if (x < bounds[0]!) bounds[0] = x;
  if (y < bounds[1]!) bounds[1] = y;
  if (x > bounds[2]!) bounds[2] = x;
  if (y > bounds[3]!) bounds[3] = y;
}

/** `axis` 0 for x, 1 for y. */
function includeQuadratic(bounds: Float64Array, axis: number, p0: number, p1: number, p2: number): void {
  if (p1 >= bounds[axis]! && p1 <= bounds[axis + 2]!) return;
  const extremum = p0 - ((p0 - p1) / (p0 - p1 + (p2 - p1))) * (p0 - p1);
  if (p1 < p0 && p1 < p2 && extremum < bounds[axis]!) bounds[axis] = extremum;
  if (p1 > p0 && p1 > p2 && extremum > bounds[axis + 2]!) bounds[axis + 2] = extremum;
}

function includeArc(bounds: Float64Array, drawn: Arc | null, matrix: Matrix): void {
  if (drawn === null) return;
  const arc = mapArc(drawn, matrix);
  bounds[0] = Math.min(bounds[0]!, arc.cx - arcPeak(arc, -arc.ux, -arc.vx));
  bounds[1] = Math.min(bounds[1]!, arc.cy - arcPeak(arc, -arc.uy, -arc.vy));
  bounds[2] = Math.max(bounds[2]!, arc.cx + arcPeak(arc, arc.ux, arc.vx));
  bounds[3] = Math.max(bounds[3]!, arc.cy + arcPeak(arc, arc.uy, arc.vy));
}

/** The least value of a cubic over [0, 1] at an inner extremum; Infinity where there is none. */
function cubicLow(p0: number, p1: number, p2: number, p3: number): number {
  const d0 = p1 - p0;
  const d1 = p2 - p1;
  const d2 = p3 - p2;
  const half = d1 - d0;
  const square = d0 - 2 * d1 + d2;
  const discriminant = d1 * d1 - d0 * d2;
  if (!(discriminant > 0)) return Infinity;
  const root = Math.sqrt(discriminant);
  const q = half > 0 ? -half - root : root - half;
  return Math.min(cubicAt(q / square, p0, p1, p2, p3), cubicAt(d0 / q, p0, p1, p2, p3));
}

function cubicAt(t: number, p0: number, p1: number, p2: number, p3: number): number {
  if (!(t > 0 && t < 1)) return Infinity;
  const s = 1 - t;
  return s * s * (s * p0 + 3 * t * p1) + t * t * (3 * s * p2 + t * p3);
}
