// Areas of the plane: united, cut, grown and shrunk, on a grid of whole numbers.
import {
  type ClipType as Clip,
  Clipper,
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type PolyPath64,
  PolyTree64,
  TriangulateResult,
} from 'clipper2-ts';
import { type Box, EMPTY_BOX } from './box.js';

/** A point of the grid: whole numbers. */
export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

/** Points one after the other; in a region the last joins the first. */
export type GridLine = readonly GridPoint[];

/** An area: rings that do not cross; a point is inside where they wind around it other than zero times. Grid units. */
export type Region = readonly GridLine[];

/** The area that holds nothing. */
export const NO_REGION: Region = [];

/** Where the grid lies on the artboard. */
export interface Grid {
  /** The point of the artboard at 0, 0. @unit px */
  readonly x: number;
  readonly y: number;
  /** Grid units to the px. */
  readonly scale: number;
}

/** How the end of a line looks. */
export type LineCap = 'butt' | 'round' | 'square';
/** How the corner of a line looks. */
export type LineJoin = 'miter' | 'round' | 'bevel';

/** How a line is drawn. Grid units. */
export interface Pen {
  /** Half its width. */
  readonly half: number;
  readonly cap: LineCap;
  readonly join: LineJoin;
  readonly miterLimit: number;
}

/** Corners up to which a ring is looked at for being convex, and so a region already. */
const MOST_CONVEX = 64;

/** Coordinates beyond this are taken for this, so that no sum overflows, grid units. */
const FARTHEST = 1e12;
/** Distances beyond this are taken for this, grid units. */
const WIDEST = 1e8;

/** Most that a corner rounded at a distance leaves its circle by, grid units: coarser where the distance is out of all reason. */
function roundingOf(distance: number): number {
  return Math.max(10, Math.abs(distance) / 10_000);
}

/** A coordinate as a whole number within reach; what is no number lies at 0. */
function toWhole(value: number): number {
  const near = Math.max(-FARTHEST, Math.min(FARTHEST, value));
  return Number.isNaN(near) ? 0 : Math.round(near) + 0;
}

const CAPS: Readonly<Record<LineCap, EndType>> = {
  butt: EndType.Butt,
  round: EndType.Round,
  square: EndType.Square,
};
const JOINS: Readonly<Record<LineJoin, JoinType>> = {
  miter: JoinType.Miter,
  round: JoinType.Round,
  bevel: JoinType.Bevel,
};

/** The library takes lists it may write to, and does not write to them. */
function pathsOf(region: Region): Path64[] {
  return region as Path64[];
}

/**
 * Points of the artboard on the grid; runs of equal points become one.
 *
 * @param points - x, y pairs, px.
 * @accuracy Half a grid unit on each axis.
 */
export function toGrid(grid: Grid, points: Float64Array): GridLine {
  const line: GridPoint[] = [];
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (let at = 0; at + 1 < points.length; at += 2) {
    const x = toWhole((points[at]! - grid.x) * grid.scale);
    const y = toWhole((points[at + 1]! - grid.y) * grid.scale);
    if (x !== lastX || y !== lastY) line.push({ x, y });
    [lastX, lastY] = [x, y];
  }
  return line;
}

/** A point of the grid on the artboard, px. */
export function fromGrid(grid: Grid, { x, y }: GridPoint): readonly [number, number] {
  return [grid.x + x / grid.scale, grid.y + y / grid.scale];
}

/** Twice the area within a ring, above zero where it runs clockwise as seen; null unless it is convex and goes round once. */
function convexArea(ring: GridLine): number | null {
  let twice = 0;
  let [turn, changes, lastX] = [0, 0, 0];
  let before = ring.at(-1)!;
  let at = ring[0]!;
  for (let i = 0; i < ring.length; i += 1) {
    const after = ring[(i + 1) % ring.length]!;
    const cross = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
    if (cross === 0 || (turn !== 0 && cross > 0 !== turn > 0)) return null;
    turn = cross;
    const step = after.x - at.x;
    if (step !== 0) {
      if (lastX !== 0 && step > 0 !== lastX > 0) changes += 1;
      lastX = step;
    }
    twice += (at.x - ring[0]!.x) * (after.y - ring[0]!.y) - (after.x - ring[0]!.x) * (at.y - ring[0]!.y);
    before = at;
    at = after;
  }
  return changes > 2 ? null : twice;
}

/** The area within rings that may cross themselves and each other. */
export function fillRings(rings: readonly GridLine[], rule: 'nonzero' | 'evenodd'): Region {
  if (rings.length === 0) return NO_REGION;
  const only = rings.length === 1 && rings[0]!.length <= MOST_CONVEX ? convexArea(rings[0]!) : null;
  if (only !== null) return [only > 0 ? rings[0]! : rings[0]!.toReversed()];
  return Clipper.union(pathsOf(rings), rule === 'evenodd' ? FillRule.EvenOdd : FillRule.NonZero);
}

function combine(how: Clip, a: Region, b: Region): Region {
  return Clipper.booleanOp(how, pathsOf(a), pathsOf(b), FillRule.NonZero);
}

/** What lies in `a` and not in `b`. */
export function subtractRegion(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0 ? a : combine(ClipType.Difference, a, b);
}

/** What lies in both. */
export function intersectRegions(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0 ? NO_REGION : combine(ClipType.Intersection, a, b);
}

/** What lies in any of the regions. */
export function uniteRegions(regions: readonly Region[]): Region {
  const some = regions.filter((region) => region.length > 0);
  if (some.length < 2) return some[0] ?? NO_REGION;
  return Clipper.union(pathsOf(some.flat()), FillRule.NonZero);
}

/**
 * The area grown on all sides by a distance, its corners round or cut off; shrunk where that is negative.
 *
 * @accuracy Round corners lie within 10 grid units of the circle, on its inside.
 */
export function growRegion(region: Region, distance: number, join: 'round' | 'bevel' = 'round'): Region {
  if (region.length === 0 || distance === 0) return region;
  const rounding = roundingOf(distance);
  return Clipper.inflatePaths(pathsOf(region), distance, JOINS[join], EndType.Polygon, 2, rounding);
}

/** The area that a pen covers along lines; `closed` lines have no ends. */
export function strokeLines(lines: readonly GridLine[], closed: boolean, pen: Pen): Region {
  if (lines.length === 0 || !(pen.half > 0)) return NO_REGION;
  const half = Math.min(WIDEST, pen.half);
  const offset = new ClipperOffset(Math.max(1, pen.miterLimit), roundingOf(half));
  offset.addPaths(pathsOf(lines), JOINS[pen.join], closed ? EndType.Joined : CAPS[pen.cap]);
  const result: Path64[] = [];
  offset.execute(half, result);
  return result;
}

/** The pieces of open lines within a region, or outside it. */
export function cutLines(lines: readonly GridLine[], region: Region, keep: 'inside' | 'outside'): readonly GridLine[] {
  if (lines.length === 0) return [];
  if (region.length === 0) return keep === 'inside' ? [] : lines;
  const clipper = new Clipper64();
  clipper.addOpenSubject(pathsOf(lines));
  clipper.addClip(pathsOf(region));
  const open: Path64[] = [];
  const how = keep === 'inside' ? ClipType.Intersection : ClipType.Difference;
  clipper.execute(how, FillRule.NonZero, [] as Path64[], open);
  return open;
}

/** The area of a region, grid units squared. */
export function regionArea(region: Region): number {
  return Math.abs(Clipper.areaPaths(pathsOf(region)));
}

/** The length of all rings of a region, grid units. */
export function outlineLength(region: Region): number {
  let sum = 0;
  for (const ring of region) {
    let before = ring.at(-1)!;
    for (const point of ring) {
      sum += Math.hypot(point.x - before.x, point.y - before.y);
      before = point;
    }
  }
  return sum;
}

/** The box of a region, grid units. */
export function regionBox(region: Region): Box {
  let { x0, y0, x1, y1 } = EMPTY_BOX;
  for (const ring of region) {
    for (const { x, y } of ring) {
      if (x < x0) x0 = x;
      if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      if (y > y1) y1 = y;
    }
  }
  return { x0, y0, x1, y1 };
}

function collectParts(node: PolyPath64, parts: Region[]): void {
  for (let index = 0; index < node.count; index += 1) {
    const outer = node.child(index);
    const part: GridLine[] = [outer.poly!];
    for (let hole = 0; hole < outer.count; hole += 1) {
      part.push(outer.child(hole).poly!);
      collectParts(outer.child(hole), parts);
    }
    parts.push(part);
  }
}

function listParts(how: Clip, region: Region, other: Region | null): readonly Region[] {
  const tree = new PolyTree64();
  Clipper.booleanOpWithPolyTree(how, pathsOf(region), other === null ? null : pathsOf(other), tree, FillRule.NonZero);
  const parts: Region[] = [];
  collectParts(tree, parts);
  return parts;
}

/** The parts of a region that hang together, each with its holes. */
export function splitRegion(region: Region): readonly Region[] {
  return region.length === 0 ? [] : listParts(ClipType.Union, region, null);
}

/** The parts that hang together of what lies in both regions; of the first alone where the second is null. */
export function splitWithin(region: Region, other: Region | null): readonly Region[] {
  if (other === null) return splitRegion(region);
  return region.length === 0 || other.length === 0 ? [] : listParts(ClipType.Intersection, region, other);
}

/**
 * The area as triangles, clockwise as seen; those without area left out. Null where its rings cross.
 */
export function splitTriangles(region: Region): readonly GridLine[] | null {
  const { result, solution } = Clipper.triangulate(pathsOf(region));
  if (result !== TriangulateResult.success) return null;
  return solution.flatMap((ring) => {
    const area = Clipper.area(ring);
    if (area === 0) return [];
    return [area > 0 ? ring : ring.toReversed()];
  });
}

/** The area with fewer corners: points nearer to the line between their neighbours than a distance are left out. */
export function simplifyRegion(region: Region, distance: number): Region {
  return region.map((ring) => Clipper.simplifyPath(ring as Path64, distance)).filter((ring) => ring.length > 2);
}

/** The area with slits, notches and gaps filled that are narrower than twice a distance; corners that stick out may be cut. */
export function closeRegion(region: Region, distance: number): Region {
  if (region.length === 0) return region;
  const grown = Clipper.inflatePaths(pathsOf(region), distance, JoinType.Miter, EndType.Polygon, 4);
  return Clipper.inflatePaths(grown, -distance, JoinType.Miter, EndType.Polygon, 4);
}
