// The area that a drawing prints beyond the edge of its blank: what could reach into a neighbour.
import type { CheckFacts } from '../check/check-facts.js';
import { touchesOf } from '../check/printed-region.js';
import { createShapeRegions } from '../check/shape-region.js';
import { type Box, isEmptyBox } from '../geometry/box.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { type Grid, type Region, uniteRegions } from '../geometry/region.js';
import type { Shape } from '../model/artwork.js';
import { isToolpath, type Placement } from '../model/pass.js';

/** Shapes beyond the edge that are united; above, the box of all that is printed counts. */
const MOST_SHAPES = 5000;
/** Grid units to the px. */
const PER_PX = 2000;

/** Whether a box lies within a blank, clear of its outline. */
function liesWithin(
  box: Box,
  loops: readonly { readonly outer: Float64Array; readonly holes: readonly Float64Array[] }[],
): boolean {
  return loops.some(({ outer, holes }) => {
    if (!isInsideLoop(outer, box.x0, box.y0) || holes.some((hole) => isInsideLoop(hole, box.x0, box.y0))) return false;
    return [outer, ...holes].every((loop) => !meetsBox(loop, box));
  });
}

/** Whether an edge of a loop comes into a box; edges whose own boxes do count. */
function meetsBox(loop: Float64Array, box: Box): boolean {
  for (let at = 0; at < loop.length; at += 2) {
    const next = (at + 2) % loop.length;
    const [x0, x1] = [Math.min(loop[at]!, loop[next]!), Math.max(loop[at]!, loop[next]!)];
    const [y0, y1] = [Math.min(loop[at + 1]!, loop[next + 1]!), Math.max(loop[at + 1]!, loop[next + 1]!)];
    if (x0 <= box.x1 && x1 >= box.x0 && y0 <= box.y1 && y1 >= box.y0) return true;
  }
  return false;
}

function boxRegion({ x0, y0, x1, y1 }: Box, grid: Grid): Region {
  const point = (x: number, y: number) => ({
    x: Math.round((x - grid.x) * grid.scale),
    y: Math.round((y - grid.y) * grid.scale),
  });
  return [[point(x0, y0), point(x1, y0), point(x1, y1), point(x0, y1)]];
}

/**
 * Rings of the printed area, mm on the artboard, shapes that lie within the blank left out.
 *
 * @returns Null where there are too many shapes to unite, or no blank to leave any out by.
 */
export function readPrint(facts: CheckFacts): readonly (readonly (readonly [number, number])[])[] | null {
  const { artwork, assignment, faces } = facts;
  const blanks = faces?.blanks ?? [];
  if (blanks.length === 0) return null;
  const covers = assignment.passes.map((pass) => !isToolpath(pass.role));
  const looksOut = ({ shape }: Placement): boolean => {
    const { drawnBound, draws } = artwork.shapes[shape]!;
    return draws && !isEmptyBox(drawnBound) && !liesWithin(drawnBound, blanks);
  };
  const beyond = assignment.placements.filter((placement) => covers[placement.pass]! && looksOut(placement));
  if (beyond.length > MOST_SHAPES) return null;
  const grid: Grid = { x: 0, y: 0, scale: PER_PX };
  const regions = createShapeRegions(facts, grid);
  const areaOf = (shape: Shape, part: Placement['part']): readonly Region[] => {
    if (shape.kind === 'text') return [boxRegion(shape.drawnBox, grid)];
    return touchesOf(regions, { shape, part }, 'all').map(({ region }) => region);
  };
  const printed = uniteRegions(beyond.flatMap(({ shape, part }) => areaOf(artwork.shapes[shape]!, part)));
  const { mmPerPx } = artwork.artboard;
  return printed.map((ring) => ring.map(({ x, y }) => [(x / PER_PX) * mmPerPx, (y / PER_PX) * mmPerPx]));
}
