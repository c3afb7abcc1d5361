// The area that some polygons cover by a rule on their winding numbers, by slabs between all corners and crossings.
import type { GridLine } from '../../../src/geometry/region.js';

interface Side {
  readonly polygon: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** 1 where it was written downwards, -1 upwards. */
  readonly winds: number;
}

function sidesOf(polygons: readonly GridLine[]): readonly Side[] {
  return polygons.flatMap((ring, polygon) =>
    ring.flatMap((a, i): readonly Side[] => {
      const b = ring[(i + 1) % ring.length]!;
      if (a.y === b.y) return [];
      const [top, low, winds] = a.y < b.y ? [a, b, 1] : [b, a, -1];
      return [{ polygon, x0: top.x, y0: top.y, x1: low.x, y1: low.y, winds }];
    }),
  );
}

function at(side: Side, y: number): number {
  return side.x0 + ((side.x1 - side.x0) * (y - side.y0)) / (side.y1 - side.y0);
}

/** Heights of corners and crossings. */
function heightsOf(sides: readonly Side[]): readonly number[] {
  const heights = new Set(sides.flatMap((side) => [side.y0, side.y1]));
  for (const [i, p] of sides.entries()) {
    for (const q of sides.slice(i + 1)) {
      const [dx, dy] = [p.x1 - p.x0, p.y1 - p.y0];
      const [ex, ey] = [q.x1 - q.x0, q.y1 - q.y0];
      const across = dx * ey - dy * ex;
      if (across === 0) continue;
      const share = ((q.x0 - p.x0) * ey - (q.y0 - p.y0) * ex) / across;
      if (share > 0 && share < 1) heights.add(p.y0 + share * dy);
    }
  }
  return [...heights].sort((a, b) => a - b);
}

/**
 * The area where `holds` is true of the winding numbers, one per polygon.
 *
 * Between two heights no sides cross, so each slab is made of trapezia, whose area is their width halfway up times their height.
 */
export function areaBySweep(polygons: readonly GridLine[], holds: (windings: readonly number[]) => boolean): number {
  const sides = sidesOf(polygons);
  const heights = heightsOf(sides);
  let area = 0;
  for (let i = 0; i + 1 < heights.length; i += 1) {
    const [low, high] = [heights[i]!, heights[i + 1]!];
    const middle = (low + high) / 2;
    const crossed = sides
      .filter((side) => side.y0 < middle && side.y1 > middle)
      .sort((p, q) => at(p, middle) - at(q, middle));
    const windings = polygons.map(() => 0);
    for (let k = 0; k + 1 < crossed.length; k += 1) {
      windings[crossed[k]!.polygon]! += crossed[k]!.winds;
      if (holds(windings)) area += (at(crossed[k + 1]!, middle) - at(crossed[k]!, middle)) * (high - low);
    }
  }
  return area;
}
