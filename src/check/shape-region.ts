// The area that a shape covers on the board.
import type { Box } from '../geometry/box.js';
import { isEmptyBox } from '../geometry/box.js';
import type { Outline } from '../geometry/outline.js';
import {
  fillRings,
  type Grid,
  type GridLine,
  intersectRegions,
  NO_REGION,
  type Pen,
  type Region,
  regionBox,
  strokeLines,
  toGrid,
  uniteRegions,
} from '../geometry/region.js';
import type { Shape } from '../model/artwork.js';
import type { ClipPart } from '../model/drawn-facts.js';
import type { CheckFacts } from './check-facts.js';

/** How far a region may stick out of what is drawn before it is cut, grid units. */
const CUT_TOLERANCE = 20;

function linesOf(grid: Grid, outlines: readonly Outline[], closed: boolean): readonly GridLine[] {
  return outlines
    .filter((outline) => outline.closed === closed)
    .map((outline) => toGrid(grid, outline.points))
    .filter((line) => line.length > 1);
}

/** A rectangle as a region. */
export function boxRegion(grid: Grid, box: Box): Region {
  if (isEmptyBox(box)) return NO_REGION;
  const { x0, y0, x1, y1 } = box;
  return [toGrid(grid, Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1))];
}

function ringsOf(grid: Grid, outlines: readonly Outline[]): readonly GridLine[] {
  return [...linesOf(grid, outlines, true), ...linesOf(grid, outlines, false)].filter((line) => line.length > 2);
}

/** Whether a region reaches beyond what is drawn of its shape. */
function sticksOut(grid: Grid, region: Region, drawn: Box): boolean {
  const box = regionBox(region);
  const left = box.x0 < (drawn.x0 - grid.x) * grid.scale - CUT_TOLERANCE;
  const top = box.y0 < (drawn.y0 - grid.y) * grid.scale - CUT_TOLERANCE;
  const right = box.x1 > (drawn.x1 - grid.x) * grid.scale + CUT_TOLERANCE;
  return left || top || right || box.y1 > (drawn.y1 - grid.y) * grid.scale + CUT_TOLERANCE;
}

/** Areas of shapes on one grid. */
export interface ShapeRegions {
  readonly grid: Grid;
  /** The area within a shape's lines, clips taken into account; that of a picture is its rectangle, type has none. */
  fill(shape: Shape): Region;
  /**
   * The area that a shape's stroke covers, as if undashed, clips taken into account.
   *
   * @accuracy Under a matrix that scales unevenly the mean width is taken all round.
   */
  stroke(shape: Shape): Region;
}

/** How the stroke of a shape is drawn on the grid. */
function penOf(grid: Grid, { paint, matrix }: Shape): Pen {
  const [a, b, c, d] = matrix;
  const widthPx = paint.strokeWidth * (paint.nonScalingStroke ? 1 : Math.sqrt(Math.abs(a * d - b * c)));
  const { strokeLinecap: cap, strokeLinejoin: join, strokeMiterlimit: miterLimit } = paint;
  return { half: (widthPx / 2) * grid.scale, cap, join, miterLimit };
}

/** A maker of areas; what a clip path lets through is worked out once for all shapes it clips. */
export function createShapeRegions(facts: CheckFacts, grid: Grid): ShapeRegions {
  const through = new Map<readonly ClipPart[], Region>();
  const letThrough = (clip: readonly ClipPart[]): Region => {
    const known = through.get(clip);
    if (known !== undefined) return known;
    const region = uniteRegions(clip.map(({ outlines, rule }) => fillRings(ringsOf(grid, outlines), rule)));
    through.set(clip, region);
    return region;
  };
  const cut = (shape: Shape, region: Region): Region => {
    if (region.length === 0) return region;
    const { drawnBox } = shape;
    const within = sticksOut(grid, region, drawnBox) ? intersectRegions(region, boxRegion(grid, drawnBox)) : region;
    return facts.clipsOf(shape).reduce((left, clip) => intersectRegions(left, letThrough(clip)), within);
  };
  return {
    grid,
    fill: (shape) => {
      if (shape.kind === 'text' || shape.kind === 'line') return NO_REGION;
      const isPicture = shape.kind === 'image' || shape.kind === 'foreignObject';
      const rule = isPicture ? 'nonzero' : shape.paint.fillRule;
      return cut(shape, fillRings(ringsOf(grid, facts.outlineOf(shape)), rule));
    },
    stroke: (shape) => {
      if (shape.kind === 'text') return NO_REGION;
      const outlines = facts.outlineOf(shape);
      const pen = penOf(grid, shape);
      const open = strokeLines(linesOf(grid, outlines, false), false, pen);
      const closed = strokeLines(linesOf(grid, outlines, true), true, pen);
      return cut(shape, uniteRegions([open, closed]));
    },
  };
}
