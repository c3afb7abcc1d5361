// Whether print beyond the edge of a copy reaches into the blank of a neighbour.
import { type Box, intersect, isEmptyBox, transformBox } from '../geometry/box.js';
import { type Matrix, multiply } from '../geometry/matrix.js';
import { fillRings, type Grid, intersectRegions, type Region, regionArea, toGrid } from '../geometry/region.js';
import { type Finding, finding } from '../model/finding.js';
import type { Layout, LayoutPiece } from '../model/layout.js';
import { boxRing, type Ring } from './box-ring.js';
import { PER_MM } from './outline-pairs.js';

/** Less than this in common is a touch, square mm. */
const TOUCH_MM2 = 0.01;

const GRID: Grid = { x: 0, y: 0, scale: PER_MM };

function toRegion(rings: readonly Ring[], [a, b, c, d, e, f]: Matrix): Region {
  const lines = rings.map((ring) =>
    Float64Array.from(ring.flatMap(([x, y]) => [a * x + c * y + e, b * x + d * y + f])),
  );
  return fillRings(
    lines.map((line) => toGrid(GRID, line)),
    'nonzero',
  );
}

/** Two copies and what the first prints on the second. */
interface Trespass {
  readonly from: number;
  readonly on: number;
  readonly areaMm2: number;
  /** How much further apart they would have to lie. */
  readonly missingMm: number;
}

/** How far a box reaches into another, along the way that is shorter out of it. */
function depthOf(box: Box, other: Box): number {
  const both = intersect(box, other);
  return isEmptyBox(both) ? 0 : Math.min(both.x1 - both.x0, both.y1 - both.y0);
}

/** Copies in place. */
export type Placed = Pick<Layout, 'matricesMm' | 'boxesMm' | 'copies'>;

/** Copies that print on each other; pairs that lie alike are looked at once. */
function listTrespasses(layout: Placed, piece: LayoutPiece): readonly Trespass[] {
  const printed = layout.matricesMm.map((matrix) => transformBox(matrix, piece.printedMm));
  const print = piece.printedRingsMm ?? [boxRing(piece.printedMm)];
  const rims = piece.rimsMm.length === 0 ? [boxRing(piece.boxMm)] : piece.rimsMm;
  const known = new Map<string, number>();
  const found: Trespass[] = [];
  for (const [from, matrix] of layout.matricesMm.entries()) {
    for (const [on, other] of layout.matricesMm.entries()) {
      if (on === from || isEmptyBox(intersect(printed[from]!, layout.boxesMm[on]!))) continue;
      const [dx, dy] = [other[4] - matrix[4], other[5] - matrix[5]];
      const key = `${matrix.slice(0, 4)} ${other.slice(0, 4)} ${dx.toFixed(4)} ${dy.toFixed(4)}`;
      let areaMm2 = known.get(key);
      if (areaMm2 === undefined) {
        const back: Matrix = [1, 0, 0, 1, -matrix[4], -matrix[5]];
        const shared = intersectRegions(toRegion(print, multiply(back, matrix)), toRegion(rims, multiply(back, other)));
        areaMm2 = regionArea(shared) / (PER_MM * PER_MM);
        known.set(key, areaMm2);
      }
      if (areaMm2 > TOUCH_MM2)
        found.push({ from, on, areaMm2, missingMm: depthOf(printed[from]!, layout.boxesMm[on]!) });
    }
  }
  return found;
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}

/**
 * Print of a copy within the blank of another, as one finding.
 *
 * Art is never clipped: the gutter keeps neighbours apart.
 */
export function findBleed(layout: Placed, piece: LayoutPiece, gutterMm: number): readonly Finding[] {
  if (isEmptyBox(piece.printedMm)) return [];
  const found = listTrespasses(layout, piece);
  if (found.length === 0) return [];
  const worst = found.reduce((most, one) => (one.missingMm > most.missingMm ? one : most));
  const wanted = Math.ceil((gutterMm + worst.missingMm) * 10 - 1e-6) / 10;
  const count = new Set(found.map(({ on }) => on)).size;
  return [
    finding('sheet/bleed-into-neighbour', {
      message: `Print beyond the edge of copy ${worst.from + 1} reaches ${Math.round(worst.missingMm * 100) / 100} mm into the blank of copy ${worst.on + 1}; ${count} of ${layout.copies} copies are printed on like this. The gutter is ${gutterMm} mm.`,
      remedy: `Say --gutter ${wanted}: the gutter must be as wide as the print reaches beyond the blank. Copies are never clipped.`,
      data: {
        measuredMm: round(worst.missingMm),
        allowedMm: 0,
        gutterMm: wanted,
        areaMm2: round(worst.areaMm2),
        count,
      },
    }),
  ];
}
