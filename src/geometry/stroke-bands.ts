// The band that a stroke lays along one segment, without joins and caps.
import { type Arc, passesAngle } from './arc.js';
import { binomials, findRoots, multiplyScaled } from './bernstein.js';
import { includeAcross, isCovered, type StrokeFrame } from './stroke-frame.js';

/** Start, two controls, end: x, y four times, in user units. */
export type Cubic = readonly [number, number, number, number, number, number, number, number];

/** Where the speed falls below this share of the greatest, the direction is taken from the second derivative. */
const CUSP = 1e-10;

/** Takes in the band along a curve whose ends are taken in already. */
export function includeCubic(frame: StrokeFrame, curve: Cubic): void {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = curve;
  if (
    isCovered(frame, x0, y0, 1) &&
    isCovered(frame, x1, y1, 1) &&
    isCovered(frame, x2, y2, 1) &&
    isCovered(frame, x3, y3, 1)
  ) {
    return;
  }
  const steps = Float64Array.of(x1 - x0, y1 - y0, x2 - x1, y2 - y1, x3 - x2, y3 - y2);
  includeLevel(frame, curve, steps, frame.a, frame.c);
  includeLevel(frame, curve, steps, frame.b, frame.d);
  for (const t of findOffsetCusps(steps, frame.radius)) includeAt(frame, curve, steps, t);
}

/** Takes in the places where the curve moves at a right angle to (p, q). */
function includeLevel(frame: StrokeFrame, curve: Cubic, steps: Float64Array, p: number, q: number): void {
  const d0 = p * steps[0]! + q * steps[1]!;
  const d1 = p * steps[2]! + q * steps[3]!;
  const d2 = p * steps[4]! + q * steps[5]!;
  const half = d1 - d0;
  const discriminant = d1 * d1 - d0 * d2;
  if (!(discriminant >= 0)) return;
  const root = half > 0 ? -half - Math.sqrt(discriminant) : Math.sqrt(discriminant) - half;
  includeAt(frame, curve, steps, root / (d0 - 2 * d1 + d2));
  includeAt(frame, curve, steps, d0 / root);
}

function includeAt(frame: StrokeFrame, curve: Cubic, steps: Float64Array, t: number): void {
  if (!(t > 0 && t < 1)) return;
  const [x0, y0, x1, y1, x2, y2, x3, y3] = curve;
  const [dx0 = 0, dy0 = 0, dx1 = 0, dy1 = 0, dx2 = 0, dy2 = 0] = steps;
  const s = 1 - t;
  const x = s * s * (s * x0 + 3 * t * x1) + t * t * (3 * s * x2 + t * x3);
  const y = s * s * (s * y0 + 3 * t * y1) + t * t * (3 * s * y2 + t * y3);
  let dx = s * s * dx0 + 2 * s * t * dx1 + t * t * dx2;
  let dy = s * s * dy0 + 2 * s * t * dy1 + t * t * dy2;
  const scale = Math.abs(dx0) + Math.abs(dy0) + Math.abs(dx1) + Math.abs(dy1) + Math.abs(dx2) + Math.abs(dy2);
  if (Math.abs(dx) + Math.abs(dy) <= CUSP * scale) {
    dx = s * (dx1 - dx0) + t * (dx2 - dx1);
    dy = s * (dy1 - dy0) + t * (dy2 - dy1);
  }
  if (dx !== 0 || dy !== 0) includeAcross(frame, x, y, dx, dy);
}

/**
 * Where the radius of curvature equals half the stroke width: there the inner offset of the curve turns back on itself.
 *
 * With D = P'/3 the curvature is 2/3 (D x D')/|D|^3 for suitable D', so the places are roots of (2r/3)^2 (D x D')^2 - |D|^6.
 */
function findOffsetCusps(steps: Float64Array, radius: number): readonly number[] {
  const scale = steps.reduce((most, step) => Math.max(most, Math.abs(step)), 0);
  if (!(scale > 0)) return [];
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = steps.map((step) => step / scale);
  const factor = (2 * radius) / (3 * scale);
  const turn = Float64Array.of(x0 * y1 - y0 * x1, x0 * y2 - y0 * x2, x1 * y2 - y1 * x2).map((value) => value * factor);
  const speed = Float64Array.of(
    x0 * x0 + y0 * y0,
    4 * (x0 * x1 + y0 * y1),
    2 * (x0 * x2 + y0 * y2) + 4 * (x1 * x1 + y1 * y1),
    4 * (x1 * x2 + y1 * y2),
    x2 * x2 + y2 * y2,
  );
  const slowest = Math.min(speed[0]!, speed[1]! / 4, speed[2]! / 6, speed[3]! / 4, speed[4]!);
  const sharpest = Math.max(Math.abs(turn[0]!), Math.abs(turn[1]!) / 2, Math.abs(turn[2]!));
  if (slowest > 0 && sharpest * sharpest < slowest * slowest * slowest) return [];
  const sixth = multiplyScaled(multiplyScaled(speed, speed), speed);
  const turned = multiplyScaled(multiplyScaled(turn, turn), binomials(8));
  const weights = binomials(12);
  return findRoots(sixth.map((value, at) => (turned[at]! - value) / weights[at]!));
}

/** Takes in the band along an arc whose ends are taken in already. */
export function includeArc(frame: StrokeFrame, arc: Arc): void {
  const { a, b, c, d } = frame;
  const acrossX = Math.atan2(a * arc.vx + c * arc.vy, a * arc.ux + c * arc.uy);
  const acrossY = Math.atan2(b * arc.vx + d * arc.vy, b * arc.ux + d * arc.uy);
  for (const angle of [acrossX, acrossX + Math.PI, acrossY, acrossY + Math.PI]) includeAngle(frame, arc, angle);
  // The same as for curves, in closed form: the squared speed is (r rx ry)^(2/3).
  const uu = arc.ux * arc.ux + arc.uy * arc.uy;
  const vv = arc.vx * arc.vx + arc.vy * arc.vy;
  const speed = Math.cbrt(frame.radius * frame.radius * uu * vv);
  const sine = Math.sqrt((speed - vv) / (uu - vv));
  if (!(sine >= 0 && sine <= 1)) return;
  const angle = Math.asin(sine);
  for (const cusp of [angle, -angle, Math.PI - angle, Math.PI + angle]) includeAngle(frame, arc, cusp);
}

function includeAngle(frame: StrokeFrame, arc: Arc, angle: number): void {
  if (!passesAngle(arc, angle)) return;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const x = arc.cx + cos * arc.ux + sin * arc.vx;
  const y = arc.cy + cos * arc.uy + sin * arc.vy;
  includeAcross(frame, x, y, cos * arc.vx - sin * arc.ux, cos * arc.vy - sin * arc.uy);
}
