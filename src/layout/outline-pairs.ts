// How near two copies may lie, by their outlines: for each pair of turns the moves that are forbidden.
import { type Box, isEmptyBox } from '../geometry/box.js';
import { type Convex, joinTriangles, sumConvex } from '../geometry/convex.js';
import {
  closeRegion,
  fillRings,
  type Grid,
  growRegion,
  type Region,
  regionArea,
  regionBox,
  simplifyRegion,
  splitTriangles,
  subtractRegion,
  toGrid,
  uniteRegions,
} from '../geometry/region.js';
import type { LayoutPiece } from '../model/layout.js';
import { boxRing, type Ring } from './box-ring.js';
import { gatherMoves, type Moves, mirrorRegion, swapRegion } from './moves.js';
import type { Gutters } from './place-rows.js';
import type { TurnedPiece } from './turned-piece.js';

/** Grid units to the millimetre. */
export const PER_MM = 10_000;

/** Points of an outline that lie nearer to the line between their neighbours are left out, and the gutter made wider by as much for each copy. */
const SIMPLE = 0.02 * PER_MM;
/** Corners that an outline has at most in the search, and how far they may be left out for that. */
const MOST_CORNERS = 220;
const COARSEST = 1 * PER_MM;
/** Slits and notches narrower than twice this count as filled. */
const NARROW = 0.5 * PER_MM;
/** Print left beyond the gutter that is smaller counts as its box, grid units squared. */
const SLIVER = 25 * PER_MM * PER_MM;

/** Rounded corners of a gutter lie within this of their circle, on its inside: corner to corner it may be short by as much. */
const ROUNDING = 0.01 * PER_MM;

/** A copy as it lies, its box's top left at the origin, in convex parts. */
export interface OutlinedPiece {
  readonly piece: TurnedPiece;
  readonly blank: readonly Convex[];
  /** What it prints beyond the reach of the gutter; empty where the gutter keeps neighbours clear of it. */
  readonly print: readonly Convex[];
  /** How far corners that were left out may stick out, grid units. */
  readonly slack: number;
}

function ringsToRegion(rings: readonly Ring[], { matrix, box }: TurnedPiece): Region {
  const [a, b, c, d, e, f] = matrix;
  const grid: Grid = { x: box.x0, y: box.y0, scale: PER_MM };
  const lines = rings.map((ring) =>
    toGrid(grid, Float64Array.from(ring.flatMap(([x, y]) => [a * x + c * y + e, b * x + d * y + f]))),
  );
  return uniteRegions(lines.filter((line) => line.length > 2).map((line) => fillRings([line], 'nonzero')));
}

function boxConvex(box: Box): Convex {
  return boxRing(box).map(([x, y]) => ({ x, y }));
}

/** A region as few convex parts. */
function partRegion(region: Region): readonly Convex[] {
  if (region.length === 0) return [];
  const triangles = splitTriangles(region);
  // What cannot be parted counts as its box: never nearer than it may lie.
  return triangles === null ? region.map((ring) => boxConvex(regionBox([ring]))) : joinTriangles(triangles);
}

/** All differences between a point of the one and a point of the other: moves of the second that bring it onto the first. */
function subtractParts(stays: readonly Convex[], moves: readonly Convex[]): Region {
  const mirrored = moves.map((part) => part.map(({ x, y }) => ({ x: 0 - x, y: 0 - y })));
  // Neighbours first: sums of one part overlap, and what is united early is not gone over again.
  let regions: readonly Region[] = stays.map((part) =>
    uniteRegions(mirrored.map((other): Region => [sumConvex(part, other)])),
  );
  while (regions.length > 1) {
    const pairs = Array.from({ length: Math.ceil(regions.length / 2) }, (_, i) => regions.slice(2 * i, 2 * i + 2));
    regions = pairs.map(uniteRegions);
  }
  return regions[0] ?? [];
}

/** The region with a clear distance around it: as wide across and down as asked for, and round where both are the same. */
function guardMoves(moves: Region, { x, y }: Gutters, wider: number): Region {
  const [w, h] = [x * PER_MM + wider, y * PER_MM + wider];
  if (w === 0 && h === 0) return moves;
  if (x === y) return simplifyRegion(growRegion(moves, w), ROUNDING);
  const around = boxConvex({ x0: -w, y0: -h, x1: w, y1: h });
  return subtractParts(partRegion(moves), [around]);
}

/** The outline for the search: narrow slits filled, corners left out that make no difference. */
function simplify(region: Region): { readonly region: Region; readonly slack: number } {
  const closed = uniteRegions([region, closeRegion(region, NARROW)]);
  const plain = simplifyRegion(closed, 1);
  const count = (rings: Region): number => rings.reduce((sum, ring) => sum + ring.length, 0);
  let slack = SIMPLE;
  let simple = simplifyRegion(plain, slack);
  while (count(simple) > MOST_CORNERS && slack < COARSEST) {
    slack *= 2;
    simple = simplifyRegion(plain, slack);
  }
  return count(simple) < count(plain) ? { region: uniteRegions([simple]), slack } : { region: plain, slack: 0 };
}

/** What is printed beyond the guard, slivers as their boxes. */
function partPrint(print: Region): readonly Convex[] {
  return print.flatMap((ring) => {
    if (regionArea([ring]) < SLIVER) return [boxConvex(regionBox([ring]))];
    return partRegion(growRegion(simplifyRegion([ring], 5 * SIMPLE), 5 * SIMPLE));
  });
}

/** The outlines of a turned piece. */
export function outlinePiece(piece: LayoutPiece, turned: TurnedPiece, gutters: Gutters): OutlinedPiece {
  const rims = piece.rimsMm.length === 0 ? [boxRing(piece.boxMm)] : piece.rimsMm;
  const whole = ringsToRegion(rims, turned);
  const { region, slack } = simplify(whole);
  const printed = isEmptyBox(piece.printedMm) ? [] : (piece.printedRingsMm ?? [boxRing(piece.printedMm)]);
  const guarded = growRegion(whole, Math.min(gutters.x, gutters.y) * PER_MM);
  const print = subtractRegion(ringsToRegion(printed, turned), guarded);
  return { piece: turned, blank: partRegion(region), print: partPrint(print), slack };
}

/** Moves of the second copy against the first, box's top left against box's top left, that would bring them onto each other. */
function forbidMoves(first: OutlinedPiece, second: OutlinedPiece, gutters: Gutters): Region {
  const wider = first.slack + second.slack;
  return uniteRegions([
    guardMoves(subtractParts(first.blank, second.blank), gutters, wider),
    subtractParts(first.print, second.blank),
    subtractParts(first.blank, second.print),
  ]);
}

/** Forbidden moves between all pairs of some pieces, as they are and mirrored at the diagonal. */
export interface MoveTable {
  readonly pieces: readonly OutlinedPiece[];
  readonly moves: readonly (readonly Moves[])[];
  readonly swapped: readonly (readonly Moves[])[];
}

/** Forbidden moves of two pieces that are both turned further by the same: box's top lefts go along. */
function turnMoves(region: Region, by: number, first: OutlinedPiece, second: OutlinedPiece): Region {
  const wide = Math.round((second.piece.width - first.piece.width) * PER_MM);
  const high = Math.round((second.piece.height - first.piece.height) * PER_MM);
  if (by === 180) return region.map((ring) => ring.map(({ x, y }) => ({ x: 0 - x - wide, y: 0 - y - high })));
  return region.map((ring) => ring.map(({ x, y }) => ({ x: 0 - y - high, y: x + 0 })));
}

interface KnownPair {
  readonly first: OutlinedPiece;
  readonly second: OutlinedPiece;
  readonly region: Region;
}

/** The moves of a pair: turned from a pair that lies alike where there is one, else worked out. */
function findMoves(known: readonly KnownPair[], pair: Omit<KnownPair, 'region'>, gutters: Gutters): Region {
  const difference = ({ first, second }: Omit<KnownPair, 'region'>): number =>
    (second.piece.turn - first.piece.turn + 360) % 360;
  for (const one of known) {
    const by = (pair.first.piece.turn - one.first.piece.turn + 360) % 360;
    if (difference(one) !== difference(pair) || by === 270 || (by === 90 && gutters.x !== gutters.y)) continue;
    return by === 0 ? one.region : turnMoves(one.region, by, one.first, one.second);
  }
  return forbidMoves(pair.first, pair.second, gutters);
}

/** Works out the forbidden moves of every pair. */
export function tabulateMoves(pieces: readonly OutlinedPiece[], gutters: Gutters): MoveTable {
  const moves: Moves[][] = pieces.map(() => []);
  const known: KnownPair[] = [];
  for (const [i, first] of pieces.entries()) {
    for (const [k, second] of pieces.entries()) {
      if (k < i) continue;
      const region = findMoves(known, { first, second }, gutters);
      known.push({ first, second, region });
      moves[i]![k] = gatherMoves(region);
      if (k !== i) moves[k]![i] = gatherMoves(mirrorRegion(region));
    }
  }
  const swapped = moves.map((row) => row.map((one) => gatherMoves(swapRegion(one.region))));
  return { pieces, moves, swapped };
}
