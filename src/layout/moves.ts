// Moves that would bring a copy onto another: an area, and what upright lines run through of it.
import type { Region } from '../geometry/region.js';

/** An open stretch of a line. */
export type Stretch = readonly [number, number];

/** Forbidden moves of one copy against another: what lies inside, not on the rim. Grid units. */
export interface Moves {
  readonly region: Region;
  /** Edges that are not upright: x0, y0, x1, y1, and the way they wind, five numbers each; x0 < x1. */
  readonly edges: Float64Array;
  readonly low: number;
  readonly high: number;
  /** x of the corners, sorted, of neighbours one. */
  readonly corners: readonly number[];
}

/** Corners nearer to each other than this count as one, grid units. */
const NEAR = 100;

/** Prepares an area for being cut by upright lines. */
export function gatherMoves(region: Region): Moves {
  const edges: number[] = [];
  const xs: number[] = [];
  for (const ring of region) {
    let before = ring.at(-1)!;
    for (const at of ring) {
      xs.push(at.x);
      if (before.x < at.x) edges.push(before.x, before.y, at.x, at.y, 1);
      else if (before.x > at.x) edges.push(at.x, at.y, before.x, before.y, -1);
      before = at;
    }
  }
  xs.sort((a, b) => a - b);
  const corners = xs.filter((x, i) => i === 0 || i === xs.length - 1 || x - xs[i - 1]! >= NEAR);
  return { region, edges: Float64Array.from(edges), low: xs[0] ?? 0, high: xs.at(-1) ?? 0, corners };
}

/** The area point-mirrored at the origin: the moves of the first copy against the second. */
export function mirrorRegion(region: Region): Region {
  return region.map((ring) => ring.map(({ x, y }) => ({ x: 0 - x, y: 0 - y })));
}

/** The area mirrored at the diagonal, x for y. */
export function swapRegion(region: Region): Region {
  return region.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })).toReversed());
}

/** Stretches inside just left, or just right, of an upright line. */
function stretchesBeside(edges: Float64Array, x: number, isLeft: boolean): readonly Stretch[] {
  const crossings: number[] = [];
  const ways: number[] = [];
  for (let i = 0; i < edges.length; i += 5) {
    const x0 = edges[i]!;
    const x1 = edges[i + 2]!;
    if (x < x0 || x > x1 || (isLeft ? x === x0 : x === x1)) continue;
    const y0 = edges[i + 1]!;
    const y = x === x1 ? edges[i + 3]! : y0 + ((edges[i + 3]! - y0) * (x - x0)) / (x1 - x0);
    let at = crossings.length;
    for (; at > 0 && crossings[at - 1]! > y; at -= 1) {
      crossings[at] = crossings[at - 1]!;
      ways[at] = ways[at - 1]!;
    }
    crossings[at] = y;
    ways[at] = edges[i + 4]!;
  }
  const stretches: Stretch[] = [];
  let winding = 0;
  let from = 0;
  for (let i = 0; i < crossings.length; i += 1) {
    if (winding === 0) from = crossings[i]!;
    winding += ways[i]!;
    if (winding === 0 && crossings[i]! > from) stretches.push([from, crossings[i]!]);
  }
  return stretches;
}

/** The stretches of an upright line that are forbidden: inside on both sides of it, so that edges along it are rims. */
export function stretchesAt({ edges, low, high }: Moves, x: number): readonly Stretch[] {
  if (x <= low || x >= high) return [];
  const left = stretchesBeside(edges, x, true);
  const right = stretchesBeside(edges, x, false);
  const shared: Stretch[] = [];
  for (const [a, b] of left) {
    for (const [c, d] of right) if (Math.max(a, c) < Math.min(b, d)) shared.push([Math.max(a, c), Math.min(b, d)]);
  }
  return shared;
}

/** Less than this inside is the rim: what rounding leaves, grid units. */
const RIM = 1.5;

/** The first value from `from` on that lies in none of the stretches. */
export function firstFree(stretches: readonly Stretch[], from: number): number {
  let at = from;
  for (let moved = true; moved; ) {
    moved = false;
    for (const [low, high] of stretches) {
      if (!(at > low + RIM && at < high - RIM)) continue;
      at = Math.round(high);
      moved = true;
    }
  }
  return at;
}

/** Whether a move is forbidden; one that only touches is not. */
export function isForbidden(moves: Moves, x: number, y: number): boolean {
  return stretchesAt(moves, x).some(([low, high]) => y > low + RIM && y < high - RIM);
}
