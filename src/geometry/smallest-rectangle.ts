// The smallest rectangle around points, however it lies.
import { orient } from './orient.js';

/** Corners of the convex hull, one after the other; fewer than three where all points lie on a line. */
export function convexHull(points: Float64Array): Float64Array {
  const order = Array.from({ length: points.length / 2 }, (_, at) => at).sort(
    (a, b) => points[2 * a]! - points[2 * b]! || points[2 * a + 1]! - points[2 * b + 1]!,
  );
  const half = (list: readonly number[]): number[] => {
    const chain: number[] = [];
    for (const at of list) {
      while (chain.length >= 2) {
        const [a, b] = [chain[chain.length - 2]!, chain[chain.length - 1]!];
        const turn = orient(
          ...([points[2 * a]!, points[2 * a + 1]!, points[2 * b]!, points[2 * b + 1]!] as const),
          ...([points[2 * at]!, points[2 * at + 1]!] as const),
        );
        if (turn > 0) break;
        chain.pop();
      }
      chain.push(at);
    }
    return chain;
  };
  const lower = half(order);
  const upper = half(order.toReversed());
  const chain = [...lower.slice(0, -1), ...upper.slice(0, -1)];
  return Float64Array.from(chain.flatMap((at) => [points[2 * at]!, points[2 * at + 1]!]));
}

/**
 * Long and short side of the rectangle of least area around points.
 *
 * @source G. Toussaint, Solving geometric problems with the rotating calipers, 1983: it lies along an edge of the hull
 */
export function smallestRectangle(points: Float64Array): readonly [number, number] {
  const hull = convexHull(points);
  const count = hull.length / 2;
  if (count < 2) return [0, 0];
  let best: readonly [number, number] = [Infinity, Infinity];
  let corner = 1;
  const at = (index: number): number => 2 * (index % count);
  let [ahead, behind] = [1, 1];
  for (let edge = 0; edge < count; edge += 1) {
    const x = hull[at(edge)]!;
    const y = hull[at(edge) + 1]!;
    const length = Math.hypot(hull[at(edge + 1)]! - x, hull[at(edge + 1) + 1]! - y);
    if (!(length > 0)) continue;
    const ux = (hull[at(edge + 1)]! - x) / length;
    const uy = (hull[at(edge + 1) + 1]! - y) / length;
    const along = (index: number): number => (hull[at(index)]! - x) * ux + (hull[at(index) + 1]! - y) * uy;
    const across = (index: number): number => (hull[at(index) + 1]! - y) * ux - (hull[at(index)]! - x) * uy;
    const climb = (from: number, value: (index: number) => number): number => {
      let index = from;
      while (index < from + count && value(index + 1) > value(index)) index += 1;
      return index;
    };
    ahead = climb(Math.max(ahead, edge + 1), along);
    corner = climb(Math.max(corner, ahead), across);
    behind = climb(Math.max(behind, corner), (index) => -along(index));
    const sides = [along(ahead) - along(behind), across(corner)] as const;
    if (sides[0] * sides[1] < best[0] * best[1]) best = sides;
  }
  return [Math.max(...best), Math.min(...best)];
}
