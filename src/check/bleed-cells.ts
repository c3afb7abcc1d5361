// Divides the strip along the blank's edge into cells, so that each is looked at with only what lies near it.
import { type Box, grow } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import { clipRings } from '../geometry/clip-rings.js';
import { type GridLine, regionBox } from '../geometry/region.js';
import { leaveOutBled } from './leave-out-bled.js';
import type { Ply } from './printed-region.js';
import { indexSegments, type SegmentIndex, segmentsOf } from './segment-index.js';

/** A part of the plane, and what lies in and near it. */
export interface BleedCell {
  readonly box: Box;
  /** Whether nothing was cut off. */
  readonly whole: boolean;
  /** Rings of the blank, and the print, within `halo` of the box. */
  readonly blank: readonly GridLine[];
  readonly plies: readonly Ply[];
  /** Whether bleed may be short in it; else only its lines matter, to cells nearby. */
  readonly mayLack: boolean;
}

/** How to divide. Lengths on the grid. */
export interface CellSizes {
  /** How far around a cell blank and print are needed. */
  readonly halo: number;
  readonly bleed: number;
  /** How far what print touches may matter: a cell has no bleed that is short if print ends nowhere within this of it. */
  readonly far: number;
  /** Points up to which a cell is not divided. */
  readonly mostPoints: number;
  /** Points of all cells, beyond which there are too many. */
  readonly allPoints: number;
  /** Sides below twice this are not divided. */
  readonly least: number;
}

function countPoints(rings: readonly GridLine[]): number {
  return rings.reduce((sum, ring) => sum + ring.length, 0);
}

function countAll({ blank, plies }: Pick<BleedCell, 'blank' | 'plies'>): number {
  return countPoints(blank) + plies.reduce((sum, { region }) => sum + countPoints(region), 0);
}

function halve({ x0, y0, x1, y1 }: Box): readonly [Box, Box] {
  if (x1 - x0 >= y1 - y0) {
    const middle = Math.round((x0 + x1) / 2);
    return [
      { x0, y0, x1: middle, y1 },
      { x0: middle, y0, x1, y1 },
    ];
  }
  const middle = Math.round((y0 + y1) / 2);
  return [
    { x0, y0, x1, y1: middle },
    { x0, y0: middle, x1, y1 },
  ];
}

function cutOut({ blank, plies }: BleedCell, box: Box, halo: number): Omit<BleedCell, 'mayLack'> {
  const around = grow(box, halo);
  return {
    box,
    whole: false,
    blank: clipRings(blank, around),
    plies: plies
      .map((ply) => ({ ink: ply.ink, region: clipRings(ply.region, around) }))
      .filter(({ region }) => region.length > 0),
  };
}

/**
 * What may matter to rings in doubt: rings that come near them, whole, and all the print near those.
 *
 * A ring stays with its print or goes without it, so none that has its bleed seems to lack it.
 */
function keepNear(cell: BleedCell, doubtful: SegmentIndex, reach: number): BleedCell {
  const boxed = cell.blank.map((ring) => ({ ring, around: grow(regionBox([ring]), reach) }));
  const near = boxed.filter(({ around }) => doubtful.meets(around));
  const index = indexBoxList(near.map(({ around }) => around));
  const plies = cell.plies.filter(({ region }) => {
    const { x0, y0, x1, y1 } = regionBox(region);
    return index.meets(x0, y0, x1, y1);
  });
  return { ...cell, blank: near.map(({ ring }) => ring), plies };
}

/**
 * Cells along the edge of the blank, those left out where print goes on all around, is nowhere near, or has its bleed.
 *
 * @param whole - The blank and the print as a cell that holds all of them.
 * @returns Null where there are more points than allowed.
 */
export function cutCells(whole: BleedCell, sizes: CellSizes): readonly BleedCell[] | null {
  if (countAll(whole) <= sizes.mostPoints) return [whole];
  const { halo, far, mostPoints, least, bleed } = sizes;
  const rings = leaveOutBled(whole.blank, whole.plies, bleed);
  if (rings.length === 0) return [];
  const doubtful = indexSegments(segmentsOf(rings, true), far);
  const narrow = keepNear(whole, doubtful, far + halo);
  const edges = indexSegments(segmentsOf(narrow.blank, true), far);
  const regions = narrow.plies.flatMap(({ region }) => region);
  const rims = indexSegments(segmentsOf(regions, true), far);
  const cells: BleedCell[] = [];
  let left = sizes.allPoints;
  const divide = (cell: BleedCell): void => {
    const { x0, y0, x1, y1 } = cell.box;
    const points = countAll(cell);
    if (left < 0) return;
    if (points <= mostPoints || Math.max(x1 - x0, y1 - y0) < 2 * least) {
      left -= points;
      cells.push(cell);
      return;
    }
    for (const half of halve(cell.box)) {
      const around = grow(half, far);
      if (!edges.meets(grow(half, halo)) || !rims.meets(around) || !doubtful.meets(around)) continue;
      divide({ ...cutOut(cell, half, halo), mayLack: doubtful.meets(grow(half, halo)) });
    }
  };
  divide(narrow);
  return left < 0 ? null : cells;
}
