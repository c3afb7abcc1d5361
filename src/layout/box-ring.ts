// A box as a ring of its corners.
import type { Box } from '../geometry/box.js';

/** Points around an area, mm; the last is joined to the first. */
export type Ring = readonly (readonly [number, number])[];

/** The corners of a box, clockwise from the upper left. */
export function boxRing({ x0, y0, x1, y1 }: Box): Ring {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
