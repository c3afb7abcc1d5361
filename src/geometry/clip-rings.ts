// The part of an area within an upright box.
import { type Box, containsBox } from './box.js';
import { type GridLine, type GridPoint, regionBox } from './region.js';

/** One side of a box: what is kept has a coordinate of at least, or of at most, a bound. */
interface Side {
  readonly axis: 'x' | 'y';
  readonly bound: number;
  readonly sign: 1 | -1;
}

/** Where the line between two points meets a bound, the same from either end. */
function crossing(a: GridPoint, b: GridPoint, { axis, bound }: Side): GridPoint {
  const [from, to] = a[axis] <= b[axis] ? [a, b] : [b, a];
  const share = (bound - from[axis]) / (to[axis] - from[axis]);
  if (axis === 'x') return { x: bound, y: Math.round(from.y + (to.y - from.y) * share) + 0 };
  return { x: Math.round(from.x + (to.x - from.x) * share) + 0, y: bound };
}

function cutAtSide(ring: GridLine, side: Side): GridLine {
  const { axis, bound, sign } = side;
  const kept: GridPoint[] = [];
  const push = (point: GridPoint): void => {
    const last = kept.at(-1);
    if (last === undefined || last.x !== point.x || last.y !== point.y) kept.push(point);
  };
  let before = ring.at(-1)!;
  let wasIn = sign * (before[axis] - bound) >= 0;
  for (const point of ring) {
    const isIn = sign * (point[axis] - bound) >= 0;
    if (isIn !== wasIn) push(crossing(before, point, side));
    if (isIn) push(point);
    before = point;
    wasIn = isIn;
  }
  while (kept.length > 1 && kept[0]!.x === kept.at(-1)!.x && kept[0]!.y === kept.at(-1)!.y) kept.pop();
  return kept;
}

/** Whether a ring of two lines or more runs on one upright or level line only. */
function isFlat({ x0, y0, x1, y1 }: Box): boolean {
  return x0 === x1 || y0 === y1;
}

/**
 * The part of rings within a box with whole numbers. Each ring stays one ring, joined along the sides of the box, so that every point within
 * the box is wound around as often as before.
 *
 * @accuracy Half a grid unit where a slanting line meets a side.
 */
export function clipRings(rings: readonly GridLine[], box: Box): readonly GridLine[] {
  const clipped: GridLine[] = [];
  for (const ring of rings) {
    const own = regionBox([ring]);
    if (own.x0 >= box.x1 || own.x1 <= box.x0 || own.y0 >= box.y1 || own.y1 <= box.y0) continue;
    if (containsBox(box, own)) {
      clipped.push(ring);
      continue;
    }
    let left = ring;
    if (own.x0 < box.x0) left = cutAtSide(left, { axis: 'x', bound: box.x0, sign: 1 });
    if (own.x1 > box.x1 && left.length > 2) left = cutAtSide(left, { axis: 'x', bound: box.x1, sign: -1 });
    if (own.y0 < box.y0 && left.length > 2) left = cutAtSide(left, { axis: 'y', bound: box.y0, sign: 1 });
    if (own.y1 > box.y1 && left.length > 2) left = cutAtSide(left, { axis: 'y', bound: box.y1, sign: -1 });
    if (left.length > 2 && !isFlat(regionBox([left]))) clipped.push(left);
  }
  return clipped;
}
