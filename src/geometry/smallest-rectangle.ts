// The smallest rectangle around points, however it lies.
import { orient } from './orient.js';
import { lengthOf } from './segment.js';
import { sortFew } from './sort-few.js';

/** The corners from the first of a list to its last that turn one way only; the last is left out. */
function halfHull(points: Float64Array, order: readonly number[], step: 1 | -1, chain: number[]): void {
  const least = chain.length + 2;
  for (let i = step > 0 ? 0 : order.length - 1; i >= 0 && i < order.length; i += step) {
    const at = 2 * order[i]!;
    while (chain.length >= least) {
      const a = chain[chain.length - 2]!;
      const b = chain[chain.length - 1]!;
      if (orient(points[a]!, points[a + 1]!, points[b]!, points[b + 1]!, points[at]!, points[at + 1]!) > 0) break;
      chain.pop();
    }
    chain.push(at);
  }
  chain.pop();
}

/** Corners of the convex hull, one after the other; fewer than three where all points lie on a line. */
export function convexHull(points: Float64Array): Float64Array {
  const order: number[] = [];
  for (let at = 0; 2 * at < points.length; at += 1) order.push(at);
  const byPlace = (a: number, b: number): number =>
    points[2 * a]! - points[2 * b]! || points[2 * a + 1]! - points[2 * b + 1]!;
  sortFew(order, 0, order.length, byPlace);
  const chain: number[] = [];
  halfHull(points, order, 1, chain);
  halfHull(points, order, -1, chain);
  const hull = new Float64Array(2 * chain.length);
  for (let i = 0; i < chain.length; i += 1) {
    hull[2 * i] = points[chain[i]!]!;
    hull[2 * i + 1] = points[chain[i]! + 1]!;
  }
  return hull;
}

/** How far a corner lies along a direction. */
function lengthAlong(hull: Float64Array, corner: number, ux: number, uy: number): number {
  const at = (2 * corner) % hull.length;
  return hull[at]! * ux + hull[at + 1]! * uy;
}

/**
 * The corner farthest along a direction, sought from one on until the way goes down.
 *
 * @param slack - What rounding does to a length: no way down, where two corners are almost one.
 */
function climb(hull: Float64Array, from: number, ux: number, uy: number, slack: number): number {
  const end = from + hull.length / 2;
  let farthest = from;
  let most = lengthAlong(hull, from, ux, uy);
  for (let corner = from + 1; corner < end; corner += 1) {
    const length = lengthAlong(hull, corner, ux, uy);
    if (length < most - slack) break;
    if (length > most) [farthest, most] = [corner, length];
  }
  return farthest;
}

/** What rounding does to a length, and below what an edge has no direction to rely on, both as shares of the hull. */
const ROUNDING = 1e-12;
const LEAST_EDGE = 1e-9;
/** Areas that differ by a smaller share are the same. */
const SAME_AREA = 1e-9;

/** Whether one rectangle is smaller than another; of two alike, as all three around a triangle are, the one with the shorter way round. */
function isSmaller(along: number, across: number, long: number, short: number): boolean {
  const [own, best] = [along * across, long * short];
  if (Math.abs(own - best) <= SAME_AREA * best) return along + across < long + short;
  return own < best;
}

/**
 * Long and short side of the rectangle of least area around points; of several alike, of the one with the shortest way round.
 *
 * @source G. Toussaint, Solving geometric problems with the rotating calipers, 1983: it lies along an edge of the hull
 */
export function smallestRectangle(points: Float64Array): readonly [number, number] {
  // Measured from a point of it, so that what lies far away costs no digits.
  const hull = convexHull(points);
  const [x0, y0] = [hull[0]!, hull[1]!];
  let extent = 0;
  for (let at = 0; at < hull.length; at += 2) {
    hull[at]! -= x0;
    hull[at + 1]! -= y0;
    extent = Math.max(extent, Math.abs(hull[at]!), Math.abs(hull[at + 1]!));
  }
  if (!(extent > 0)) return [0, 0];
  const count = hull.length / 2;
  const slack = ROUNDING * extent;
  let [long, short] = [Infinity, Infinity];
  let [ahead, corner, behind] = [1, 1, 1];
  for (let edge = 0; edge < count; edge += 1) {
    const next = (2 * edge + 2) % hull.length;
    const [dx, dy] = [hull[next]! - hull[2 * edge]!, hull[next + 1]! - hull[2 * edge + 1]!];
    const length = lengthOf(dx, dy);
    if (!(length > LEAST_EDGE * extent)) continue;
    const [ux, uy] = [dx / length, dy / length];
    ahead = climb(hull, Math.max(ahead, edge + 1), ux, uy, slack);
    corner = climb(hull, Math.max(corner, ahead), -uy, ux, slack);
    behind = climb(hull, Math.max(behind, corner), -ux, -uy, slack);
    const along = lengthAlong(hull, ahead, ux, uy) - lengthAlong(hull, behind, ux, uy);
    const across = lengthAlong(hull, corner, -uy, ux) - lengthAlong(hull, edge, -uy, ux);
    if (isSmaller(along, across, long, short)) [long, short] = [along, across];
  }
  return [Math.max(long, short), Math.min(long, short)];
}
