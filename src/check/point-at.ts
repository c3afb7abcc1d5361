// A point along a line.
import type { Outline } from '../geometry/outline.js';

/** The point of an outline at a length from its start; its first point where it is not that long. @unit px */
export function pointAt({ points }: Outline, length: number): readonly [number, number] {
  let left = length;
  for (let at = 0; at < points.length; at += 2) {
    const next = (at + 2) % points.length;
    const [dx, dy] = [points[next]! - points[at]!, points[next + 1]! - points[at + 1]!];
    const piece = Math.hypot(dx, dy);
    if (left <= piece && piece > 0) return [points[at]! + (dx * left) / piece, points[at + 1]! + (dy * left) / piece];
    left -= piece;
  }
  return [points[0]!, points[1]!];
}
