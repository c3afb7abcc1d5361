// How white lies under the print it carries.
import {
  growRegion,
  intersectRegions,
  type Region,
  regionArea,
  splitRegion,
  subtractRegion,
} from '../geometry/region.js';

/** Lengths on the grid. */
export interface ChokeLengths {
  /** How far white is to stay inside the rim of the print; null: it must only not stick out. */
  readonly choke: number | null;
  /** How far it may be off. */
  readonly tolerance: number;
  /** White that ends farther inside than this beyond the choke is not meant to follow the rim. */
  readonly reach: number;
}

/** Areas where white and print do not fit. */
export interface WhiteFit {
  /** White that hangs together and carries no print at all. */
  readonly bare: readonly Region[];
  /** White that reaches nearer to the rim of the print than it may, or beyond it. */
  readonly wide: readonly Region[];
  /** Print along a rim that white follows, but too far inside. */
  readonly narrow: readonly Region[];
}

/** Parts thinner than twice this are rounding, grid units. */
const THINNEST = 50;
/** Parts smaller than this are not worth a word: 0.05 mm2 on the grid. */
const SMALLEST = 5e6;

/** The parts of a region that are more than seams. */
function listParts(region: Region): readonly Region[] {
  return splitRegion(region).filter((part) => regionArea(part) >= SMALLEST && growRegion(part, -THINNEST).length > 0);
}

/** White against the print of the same sheet. */
export function fitWhite(white: Region, printed: Region, lengths: ChokeLengths): WhiteFit {
  const { choke, tolerance, reach } = lengths;
  const excess = subtractRegion(white, growRegion(printed, tolerance - (choke ?? 0)));
  const wide: Region[] = [];
  const bare: Region[] = [];
  const patches = splitRegion(white).map((patch) => ({ patch, carries: intersectRegions(patch, printed).length > 0 }));
  for (const { patch, carries } of patches) {
    if (carries) wide.push(...listParts(intersectRegions(excess, patch)));
    else bare.push(...listParts(patch));
  }
  if (choke === null) return { bare, wide, narrow: [] };
  const rim = subtractRegion(growRegion(printed, -(choke + tolerance)), growRegion(printed, -(choke + reach)));
  const near = intersectRegions(subtractRegion(rim, white), growRegion(white, reach));
  return { bare, wide, narrow: listParts(near) };
}
