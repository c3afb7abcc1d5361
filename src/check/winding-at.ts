// How often lines wind around a point.
import type { Outline } from '../geometry/outline.js';

/**
 * How often outlines, closed by straight lines where they are open, wind around a point; 0 outside of all.
 *
 * On a line either side may come out.
 */
export function windingAt(outlines: readonly Outline[], x: number, y: number): number {
  let winding = 0;
  for (const { points } of outlines) {
    let px = points[points.length - 2]!;
    let py = points[points.length - 1]!;
    for (let at = 0; at < points.length; at += 2) {
      const qx = points[at]!;
      const qy = points[at + 1]!;
      if (py > y !== qy > y) {
        const isLeft = (qx - px) * (y - py) - (x - px) * (qy - py) > 0;
        if (qy > py && isLeft) winding += 1;
        else if (qy < py && !isLeft) winding -= 1;
      }
      px = qx;
      py = qy;
    }
  }
  return winding;
}
