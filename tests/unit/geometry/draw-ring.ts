// Rings for tests, written as pairs of numbers and turned so that equal ones can be told to be equal.
import type { GridLine } from '../../../src/geometry/region.js';

/** A ring of x, y pairs. */
export function drawRing(...pairs: readonly (readonly [number, number])[]): GridLine {
  return pairs.map(([x, y]) => ({ x, y }));
}

/** The ring from its leftmost point on, the topmost of several. */
export function fromLeft(ring: GridLine): GridLine {
  const first = ring.reduce((best, { x, y }, at) => {
    const least = ring[best]!;
    return x < least.x || (x === least.x && y < least.y) ? at : best;
  }, 0);
  return [...ring.slice(first), ...ring.slice(0, first)];
}
