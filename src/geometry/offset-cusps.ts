// Where the edge of a stroke turns back on itself.
import { binomials, findRoots, multiplyScaled } from './bernstein.js';

/** A stretch of a curve that may bend that tightly. */
interface Stretch {
  /** A third of the derivative in Bernstein form over the stretch: x, y three times. */
  readonly steps: Float64Array;
  readonly from: number;
  readonly width: number;
}

/** Stretches are looked at by their polynomial from this width on. */
const NARROW = 1 / 16;

/**
 * The parameters at which a cubic (start, two controls and end from `at`) has a radius of curvature equal to `radius`, and perhaps
 * others.
 *
 * With D a third of the derivative the curvature is 2/3 (D x D')/|D|^3, D' being half of D's derivative, so the places are roots of
 * (2/3 radius)^2 (D x D')^2 - |D|^6. Most curves bend nowhere that tightly, which bounds of both terms show.
 *
 * @throws Never.
 * @accuracy That of `findRoots`, for polynomials of degree 12.
 * @source The curvature of a plane curve, (x' y" - y' x")/(x'^2 + y'^2)^(3/2)
 */
export function findOffsetCusps(points: Float64Array, at: number, radius: number): readonly number[] {
  const steps = new Float64Array(6);
  let scale = 0;
  for (let index = 0; index < 6; index++) {
    steps[index] = points[at + index + 2]! - points[at + index]!;
    scale = Math.max(scale, Math.abs(steps[index]!));
  }
  if (!(scale > 0)) return [];
  for (let index = 0; index < 6; index++) steps[index] = steps[index]! / scale;
  const found: number[] = [];
  const open: Stretch[] = [{ steps, from: 0, width: 1 }];
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    const factor = (2 * radius) / (3 * scale * stretch.width);
    if (isGentle(stretch.steps, factor)) continue;
    if (stretch.width <= NARROW) {
      // A root between two stretches is in neither.
      found.push(stretch.from);
      for (const t of findRoots(balanceOf(stretch.steps, factor))) found.push(stretch.from + t * stretch.width);
      continue;
    }
    const [left, right] = halve(stretch.steps);
    const width = stretch.width / 2;
    open.push({ steps: left, from: stretch.from, width }, { steps: right, from: stretch.from + width, width });
  }
  return found;
}

/** Whether the greatest turn stays below the least speed, by their Bernstein coefficients. */
function isGentle(steps: Float64Array, factor: number): boolean {
  const x0 = steps[0]!;
  const y0 = steps[1]!;
  const x1 = steps[2]!;
  const y1 = steps[3]!;
  const x2 = steps[4]!;
  const y2 = steps[5]!;
  const slowest = Math.min(
    x0 * x0 + y0 * y0,
    x0 * x1 + y0 * y1,
    (x0 * x2 + y0 * y2 + 2 * (x1 * x1 + y1 * y1)) / 3,
    x1 * x2 + y1 * y2,
    x2 * x2 + y2 * y2,
  );
  const sharpest = Math.max(Math.abs(x0 * y1 - y0 * x1), Math.abs(x0 * y2 - y0 * x2) / 2, Math.abs(x1 * y2 - y1 * x2));
  return slowest > 0 && sharpest * sharpest * factor * factor < slowest * slowest * slowest;
}

/** The difference of the squared turn and the sixth power of the speed, in Bernstein form. */
function balanceOf(steps: Float64Array, factor: number): Float64Array {
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = steps;
  const turn = Float64Array.of(x0 * y1 - y0 * x1, x0 * y2 - y0 * x2, x1 * y2 - y1 * x2).map((value) => value * factor);
  const speed = Float64Array.of(
    x0 * x0 + y0 * y0,
    4 * (x0 * x1 + y0 * y1),
    2 * (x0 * x2 + y0 * y2) + 4 * (x1 * x1 + y1 * y1),
    4 * (x1 * x2 + y1 * y2),
    x2 * x2 + y2 * y2,
  );
  const sixth = multiplyScaled(multiplyScaled(speed, speed), speed);
  const turned = multiplyScaled(multiplyScaled(turn, turn), binomials(8));
  const weights = binomials(12);
  return sixth.map((value, at) => (turned[at]! - value) / weights[at]!);
}

/** De Casteljau's scheme at one half, for the three points of a derivative. */
function halve(steps: Float64Array): readonly [Float64Array, Float64Array] {
  const left = new Float64Array(6);
  const right = new Float64Array(6);
  for (let axis = 0; axis < 2; axis++) {
    const first = (steps[axis]! + steps[2 + axis]!) / 2;
    const second = (steps[2 + axis]! + steps[4 + axis]!) / 2;
    const middle = (first + second) / 2;
    left[axis] = steps[axis]!;
    left[2 + axis] = first;
    left[4 + axis] = middle;
    right[axis] = middle;
    right[2 + axis] = second;
    right[4 + axis] = steps[4 + axis]!;
  }
  return [left, right];
}
