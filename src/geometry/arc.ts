// Elliptical arcs as centre and two half diameters.
import { turnOf } from './degrees.js';
import type { Matrix } from './matrix.js';

/** The points `(cx + cos t ux + sin t vx, cy + cos t uy + sin t vy)` for t from `start` to `start + sweep`, in radians. */
export interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
  readonly start: number;
  /** Signed, at most a full turn. */
  readonly sweep: number;
}

/** An extremum this close to an end (radians) is the end. */
const ANGLE_SLACK = 1e-9;

/**
 * The arc that seven path coordinates at `at` (rx, ry, rotation, flags, x, y) draw from a point; null where they draw a straight
 * line or nothing: a radius of zero, or ends that are equal.
 *
 * @unit radius and point in user units, rotation in degrees
 * @accuracy A few units in the last place of the radii; radii that cannot reach are scaled up.
 * @source SVG 2, appendix B.2.4 and B.2.5
 */
export function readArc(coords: Float64Array, at: number, fromX: number, fromY: number): Arc | null {
  const rx = coords[at]!;
  const ry = coords[at + 1]!;
  const toX = coords[at + 5]!;
  const toY = coords[at + 6]!;
  const clockwise = coords[at + 4] !== 0;
  const [cos, sin] = turnOf(coords[at + 2]!);
  const halfX = (fromX - toX) / 2;
  const halfY = (fromY - toY) / 2;
  // In the frame where the ellipse is the unit circle the ends are (u, v) and (-u, -v) about their middle.
  const u = (cos * halfX + sin * halfY) / rx;
  const v = (cos * halfY - sin * halfX) / ry;
  const reach = Math.hypot(u, v);
  if (!(reach > 0 && reach < Infinity && rx > 0 && ry > 0)) return null;
  const scale = Math.max(1, reach);
  const side = (coords[at + 3] !== 0) === clockwise ? -1 : 1;
  const offset = reach < 1 ? (side * Math.sqrt((1 - reach) * (1 + reach))) / reach : 0;
  const middleU = offset * v;
  const middleV = -offset * u;
  const start = Math.atan2(v - middleV, u - middleU);
  let sweep = Math.atan2(-v - middleV, -u - middleU) - start;
  if (reach >= 1) sweep = clockwise ? Math.PI : -Math.PI;
  else if (clockwise && sweep < 0) sweep += 2 * Math.PI;
  else if (!clockwise && sweep > 0) sweep -= 2 * Math.PI;
  return {
    cx: (fromX + toX) / 2 + cos * rx * middleU - sin * ry * middleV,
    cy: (fromY + toY) / 2 + sin * rx * middleU + cos * ry * middleV,
    ux: cos * rx * scale,
    uy: sin * rx * scale,
    vx: 0 - sin * ry * scale,
    vy: cos * ry * scale,
    start,
    sweep,
  };
}

/** The image of an arc: affine maps turn ellipses into ellipses. */
export function mapArc(arc: Arc, matrix: Matrix): Arc {
  const [a, b, c, d, e, f] = matrix;
  return {
    cx: a * arc.cx + c * arc.cy + e,
    cy: b * arc.cx + d * arc.cy + f,
    ux: a * arc.ux + c * arc.uy,
    uy: b * arc.ux + d * arc.uy,
    vx: a * arc.vx + c * arc.vy,
    vy: b * arc.vx + d * arc.vy,
    start: arc.start,
    sweep: arc.sweep,
  };
}

/** Whether the arc passes the angle (radians, any turn) strictly between its ends. */
export function passesAngle(arc: Arc, angle: number): boolean {
  const turn = 2 * Math.PI;
  let ahead = (arc.sweep < 0 ? arc.start - angle : angle - arc.start) % turn;
  if (ahead < 0) ahead += turn;
  return ahead > ANGLE_SLACK && ahead < Math.abs(arc.sweep) - ANGLE_SLACK;
}

/** The greatest value of `cos t u + sin t v` on the arc between its ends; -Infinity where its peak is not passed. */
export function arcPeak(arc: Arc, u: number, v: number): number {
  return passesAngle(arc, Math.atan2(v, u)) ? Math.hypot(u, v) : -Infinity;
}
