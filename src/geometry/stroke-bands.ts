// The band that a stroke lays along one segment, without joins and caps.
import { type Arc, passesAngle, readArc } from './arc.js';
import { cubicLow } from './cubic-low.js';
import { findOffsetCusps } from './offset-cusps.js';
import { ARC, CLOSE, CUBIC, type PathData, QUADRATIC } from './path-data.js';
import { includeAcross, isCovered, type StrokeFrame } from './stroke-frame.js';

/** Where the speed falls below this share of the greatest, the direction is taken from the second derivative. */
const CUSP = 1e-10;

/** Share of the size of the box that rounding may take. */
const ROUNDING = 1e-14;

/**
 * Takes in the bands along all curves of a path, whose ends, joins and caps are taken in already.
 *
 * @param noise - Curves that go no further than this are left out, in user units.
 * @throws Never.
 */
export function includeBands(frame: StrokeFrame, path: PathData, noise: number): void {
  // Seldom does an inner offset reach past everything else: those are looked at when the rest is known.
  const late = eachCurve(path, (points, at) => includeLevels(frame, points, at, noise));
  eachArc(frame, path);
  if (late) eachCurve(path, (points, at) => includeCusps(frame, points, at, noise));
}

/** Shows each curve as a cubic at an offset in an array: start, two controls, end; true where one call said so. */
function eachCurve(path: PathData, visit: (points: Float64Array, at: number) => boolean): boolean {
  const { ops, opCount, coords } = path;
  const raised = new Float64Array(8);
  let any = false;
  let at = 0;
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    if (op === CUBIC) {
      if (visit(coords, at - 2)) any = true;
    } else if (op === QUADRATIC) {
      elevate(coords, at - 2, raised);
      if (visit(raised, 0)) any = true;
    }
    at += op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : op === CLOSE ? 0 : 2;
  }
  return any;
}

/** Writes a quadratic at an offset as the cubic that it is: start, two controls, end. */
export function elevate(coords: Float64Array, at: number, out: Float64Array): void {
  for (let axis = 0; axis < 2; axis++) {
    const start = coords[at + axis]!;
    const control = coords[at + 2 + axis]!;
    const end = coords[at + 4 + axis]!;
    out[axis] = start;
    out[2 + axis] = start + (2 / 3) * (control - start);
    out[4 + axis] = end + (2 / 3) * (control - end);
    out[6 + axis] = end;
  }
}

function eachArc(frame: StrokeFrame, path: PathData): void {
  const { ops, opCount, coords } = path;
  let at = 0;
  for (let index = 0; index < opCount; index++) {
    const op = ops[index]!;
    if (op === ARC) {
      const arc = readArc(coords, at, coords[at - 2]!, coords[at - 1]!);
      if (arc !== null) includeArc(frame, arc);
    }
    at += op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : op === CLOSE ? 0 : 2;
  }
}

/** Takes in the places where a curve moves along the sides of the box; false where nothing of the curve can matter. */
function includeLevels(frame: StrokeFrame, points: Float64Array, at: number, noise: number): boolean {
  if (isBesides(frame, points, at, noise)) return false;
  includeLevel(frame, points, at, frame.a, frame.c);
  includeLevel(frame, points, at, frame.b, frame.d);
  return true;
}

/** Whether the controls show that a curve adds nothing. */
function isBesides(frame: StrokeFrame, points: Float64Array, at: number, noise: number): boolean {
  if (
    isCovered(frame, points[at]!, points[at + 1]!, 1) &&
    isCovered(frame, points[at + 2]!, points[at + 3]!, 1) &&
    isCovered(frame, points[at + 4]!, points[at + 5]!, 1) &&
    isCovered(frame, points[at + 6]!, points[at + 7]!, 1)
  ) {
    return true;
  }
  for (let next = at + 2; next < at + 8; next++) {
    if (Math.abs(points[next]! - points[next - 2]!) > noise) return false;
  }
  return true;
}

/** Takes in the cusps of both offsets of a curve, unless a disc at its outermost points shows that they add nothing. */
function includeCusps(frame: StrokeFrame, points: Float64Array, at: number, noise: number): boolean {
  if (isBesides(frame, points, at, noise)) return false;
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = frame.bounds;
  // What rounding took from the bounds is no reason to look closer.
  const reachX = frame.reachX - ROUNDING * (x1 - x0 + Math.abs(x0));
  const reachY = frame.reachY - ROUNDING * (y1 - y0 + Math.abs(y0));
  const shut =
    lowest(points, at, frame.a, frame.c) + frame.e - reachX >= x0 &&
    lowest(points, at, frame.b, frame.d) + frame.f - reachY >= y0 &&
    frame.e - lowest(points, at, -frame.a, -frame.c) + reachX <= x1 &&
    frame.f - lowest(points, at, -frame.b, -frame.d) + reachY <= y1;
  if (shut) return false;
  for (const t of findOffsetCusps(points, at, frame.radius)) includeAt(frame, points, at, t);
  return true;
}

/** The least value of p x + q y on a curve. */
function lowest(points: Float64Array, at: number, p: number, q: number): number {
  const p0 = p * points[at]! + q * points[at + 1]!;
  const p1 = p * points[at + 2]! + q * points[at + 3]!;
  const p2 = p * points[at + 4]! + q * points[at + 5]!;
  const p3 = p * points[at + 6]! + q * points[at + 7]!;
  return Math.min(p0, p3, cubicLow(p0, p1, p2, p3));
}

/** Takes in the places where the curve moves at a right angle to (p, q). */
function includeLevel(frame: StrokeFrame, points: Float64Array, at: number, p: number, q: number): void {
  const d0 = p * (points[at + 2]! - points[at]!) + q * (points[at + 3]! - points[at + 1]!);
  const d1 = p * (points[at + 4]! - points[at + 2]!) + q * (points[at + 5]! - points[at + 3]!);
  const d2 = p * (points[at + 6]! - points[at + 4]!) + q * (points[at + 7]! - points[at + 5]!);
  const half = d1 - d0;
  const discriminant = d1 * d1 - d0 * d2;
  if (!(discriminant >= 0)) return;
  const root = half > 0 ? -half - Math.sqrt(discriminant) : Math.sqrt(discriminant) - half;
  includeAt(frame, points, at, root / (d2 - d1 - half));
  includeAt(frame, points, at, d0 / root);
}

function includeAt(frame: StrokeFrame, points: Float64Array, at: number, t: number): void {
  if (!(t > 0 && t < 1)) return;
  const x0 = points[at]!;
  const y0 = points[at + 1]!;
  const x1 = points[at + 2]!;
  const y1 = points[at + 3]!;
  const x2 = points[at + 4]!;
  const y2 = points[at + 5]!;
  const x3 = points[at + 6]!;
  const y3 = points[at + 7]!;
  const s = 1 - t;
  const x = s * s * (s * x0 + 3 * t * x1) + t * t * (3 * s * x2 + t * x3);
  const y = s * s * (s * y0 + 3 * t * y1) + t * t * (3 * s * y2 + t * y3);
  let dx = s * s * (x1 - x0) + 2 * s * t * (x2 - x1) + t * t * (x3 - x2);
  let dy = s * s * (y1 - y0) + 2 * s * t * (y2 - y1) + t * t * (y3 - y2);
  const scale = Math.abs(x1 - x0) + Math.abs(y1 - y0) + Math.abs(x3 - x2) + Math.abs(y3 - y2);
  if (Math.abs(dx) + Math.abs(dy) <= CUSP * (scale + Math.abs(x2 - x1) + Math.abs(y2 - y1))) {
    dx = s * (x2 - x1 - (x1 - x0)) + t * (x3 - x2 - (x2 - x1));
    dy = s * (y2 - y1 - (y1 - y0)) + t * (y3 - y2 - (y2 - y1));
  }
  if (dx !== 0 || dy !== 0) includeAcross(frame, x, y, dx, dy);
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
