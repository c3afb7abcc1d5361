// Measures of a closed area.

import { isInsideLoop } from '../geometry/inside-loop.js';
import { signedArea } from '../geometry/outline.js';
import { smallestRectangle } from '../geometry/smallest-rectangle.js';
import type { Region } from '../model/faces.js';

function centroid(outer: Float64Array): readonly [number, number] {
  const [x0, y0] = [outer[0]!, outer[1]!];
  let [sum, x, y] = [0, 0, 0];
  for (let at = 0; at < outer.length; at += 2) {
    const next = (at + 2) % outer.length;
    const [px, py, qx, qy] = [outer[at]! - x0, outer[at + 1]! - y0, outer[next]! - x0, outer[next + 1]! - y0];
    const twice = px * qy - qx * py;
    sum += twice;
    x += twice * (px + qx);
    y += twice * (py + qy);
  }
  return sum === 0 ? [x0, y0] : [x0 + x / (3 * sum), y0 + y / (3 * sum)];
}

/** The middle of the widest stretch within, on the level of a point. */
function widestStretch(loops: readonly Float64Array[], y: number): number | null {
  const crossings: number[] = [];
  for (const loop of loops) {
    for (let at = 0; at < loop.length; at += 2) {
      const next = (at + 2) % loop.length;
      const [ay, by] = [loop[at + 1]!, loop[next + 1]!];
      if (ay > y === by > y) continue;
      crossings.push(loop[at]! + ((y - ay) / (by - ay)) * (loop[next]! - loop[at]!));
    }
  }
  crossings.sort((p, q) => p - q);
  let best: number | null = null;
  let width = 0;
  for (let at = 0; at + 1 < crossings.length; at += 2) {
    const wide = crossings[at + 1]! - crossings[at]!;
    if (wide > width) [best, width] = [(crossings[at]! + crossings[at + 1]!) / 2, wide];
  }
  return best;
}

/** A region with its measures. The point within is the centroid where that lies within. */
export function describeRegion(outer: Float64Array, holes: readonly Float64Array[], mmPerPx: number): Region {
  const net = holes.reduce((area, hole) => area - Math.abs(signedArea(hole)), Math.abs(signedArea(outer)));
  const [long, short] = smallestRectangle(outer);
  let [x, y] = centroid(outer);
  if (!isInsideLoop(outer, x, y) || holes.some((hole) => isInsideLoop(hole, x, y))) {
    x = widestStretch([outer, ...holes], y) ?? x;
  }
  return {
    outer,
    holes,
    areaMm2: net * mmPerPx * mmPerPx,
    lengthMm: long * mmPerPx,
    widthMm: short * mmPerPx,
    x,
    y,
  };
}
