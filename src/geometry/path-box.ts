// The exact box of a path.
import { type Arc, arcPeak, mapArc, readArc } from './arc.js';
import { type Box, EMPTY_BOX } from './box.js';
import { cubicLow } from './cubic-low.js';
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
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  let [x, y, at] = [0, 0, 0];
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    const fromX = x;
    const fromY = y;
    if (op !== CLOSE) {
      at += op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : 2;
      x = a * coords[at - 2]! + c * coords[at - 1]! + e;
      y = b * coords[at - 2]! + d * coords[at - 1]! + f;
      if (op === MOVE) continue;
    }
    if (index > 0 && ops[index - 1] === MOVE) {
      x0 = Math.min(x0, fromX);
      y0 = Math.min(y0, fromY);
      x1 = Math.max(x1, fromX);
      y1 = Math.max(y1, fromY);
    }
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
    if (op === CUBIC) {
      const px = a * coords[at - 6]! + c * coords[at - 5]! + e;
      const py = b * coords[at - 6]! + d * coords[at - 5]! + f;
      const qx = a * coords[at - 4]! + c * coords[at - 3]! + e;
      const qy = b * coords[at - 4]! + d * coords[at - 3]! + f;
      if (px < x0 || qx < x0) x0 = Math.min(x0, cubicLow(fromX, px, qx, x));
      if (py < y0 || qy < y0) y0 = Math.min(y0, cubicLow(fromY, py, qy, y));
      if (px > x1 || qx > x1) x1 = Math.max(x1, -cubicLow(-fromX, -px, -qx, -x));
      if (py > y1 || qy > y1) y1 = Math.max(y1, -cubicLow(-fromY, -py, -qy, -y));
    } else if (op === QUADRATIC) {
      const px = a * coords[at - 4]! + c * coords[at - 3]! + e;
      const py = b * coords[at - 4]! + d * coords[at - 3]! + f;
      x0 = Math.min(x0, quadraticLow(fromX, px, x));
      y0 = Math.min(y0, quadraticLow(fromY, py, y));
      x1 = Math.max(x1, -quadraticLow(-fromX, -px, -x));
      y1 = Math.max(y1, -quadraticLow(-fromY, -py, -y));
    } else if (op === ARC) {
      // After a closepath comes a moveto, so the current point is always right before the arc's own coordinates.
      const bulge = arcBox(readArc(coords, at - 7, coords[at - 9]!, coords[at - 8]!), matrix);
      x0 = Math.min(x0, bulge.x0);
      y0 = Math.min(y0, bulge.y0);
      x1 = Math.max(x1, bulge.x1);
      y1 = Math.max(y1, bulge.y1);
    }
  }
  // Adding zero turns -0 into 0.
  return x0 <= x1 && y0 <= y1 ? { x0: x0 + 0, y0: y0 + 0, x1: x1 + 0, y1: y1 + 0 } : EMPTY_BOX;
}

/** The extremes of an arc between its ends; infinite the wrong way where it has none. */
function arcBox(drawn: Arc | null, matrix: Matrix): Box {
  if (drawn === null) return EMPTY_BOX;
  const arc = mapArc(drawn, matrix);
  return {
    x0: arc.cx - arcPeak(arc, -arc.ux, -arc.vx),
    y0: arc.cy - arcPeak(arc, -arc.uy, -arc.vy),
    x1: arc.cx + arcPeak(arc, arc.ux, arc.vx),
    y1: arc.cy + arcPeak(arc, arc.uy, arc.vy),
  };
}

/** The value of a quadratic at its minimum, or Infinity where that is not inside (0, 1). */
function quadraticLow(p0: number, p1: number, p2: number): number {
  if (!(p1 < p0 && p1 < p2)) return Infinity;
  return p0 - ((p0 - p1) / (p0 - p1 + (p2 - p1))) * (p0 - p1);
}
