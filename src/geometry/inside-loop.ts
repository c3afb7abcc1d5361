// Whether a point lies within a closed loop.
import { orient } from './orient.js';

/** Whether a point lies within a closed loop of x, y pairs, by the odd number of sides right of it; on the rim either may come out. */
export function isInsideLoop(loop: Float64Array, x: number, y: number): boolean {
  let inside = false;
  let px = loop[loop.length - 2]!;
  let py = loop[loop.length - 1]!;
  for (let at = 0; at < loop.length; at += 2) {
    const qx = loop[at]!;
    const qy = loop[at + 1]!;
    if (py > y !== qy > y) {
      if (px > x && qx > x) inside = !inside;
      else if ((px > x || qx > x) && orient(px, py, qx, qy, x, y) > 0 === qy > py) inside = !inside;
    }
    px = qx;
    py = qy;
  }
  return inside;
}
