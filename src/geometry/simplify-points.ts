// Which points of a run of straight lines are needed.
import { distanceToPiece } from './segment.js';

/**
 * Marks the points that keep a run within a tolerance of where it was: 1 for each one needed, both ends among them.
 *
 * @param points - x, y pairs of an open run.
 * @source D. Douglas, T. Peucker, Algorithms for the reduction of the number of points required to represent a digitized line, 1973
 */
export function markNeeded(points: Float64Array, tolerance: number): Uint8Array {
  const count = points.length / 2;
  const needed = new Uint8Array(count);
  if (count === 0) return needed;
  needed[0] = 1;
  needed[count - 1] = 1;
  const open: (readonly [number, number])[] = [[0, count - 1]];
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    const [from, to] = stretch;
    const ends = [points[2 * from]!, points[2 * from + 1]!, points[2 * to]!, points[2 * to + 1]!] as const;
    let farthest = -1;
    let most = tolerance;
    for (let at = from + 1; at < to; at += 1) {
      const distance = distanceToPiece(...ends, points[2 * at]!, points[2 * at + 1]!);
      if (distance > most) [farthest, most] = [at, distance];
    }
    if (farthest < 0) continue;
    needed[farthest] = 1;
    open.push([from, farthest], [farthest, to]);
  }
  return needed;
}
