// Where print has to reach beyond the blank: the band along the edges that it touches.
import { type Box, grow, intersect, isEmptyBox } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import { clipRings } from '../geometry/clip-rings.js';
import { type JoinedPart, joinParts } from '../geometry/join-parts.js';
import {
  cutLines,
  fillRings,
  type GridLine,
  growRegion,
  intersectRegions,
  outlineLength,
  type Pen,
  type Region,
  regionBox,
  splitRegion,
  splitWithin,
  strokeLines,
  subtractRegion,
  uniteRegions,
} from '../geometry/region.js';
import { type BleedCell, cutCells } from './bleed-cells.js';
import { type Ply, printedRegion } from './printed-region.js';

/** Lengths on the grid. */
export interface BleedLengths {
  readonly bleed: number;
  /** How far from the edge print may end and still count as touching it. */
  readonly touch: number;
}

const BUTT: Omit<Pen, 'half'> = { cap: 'butt', join: 'miter', miterLimit: 8 };
const ROUND: Omit<Pen, 'half'> = { cap: 'round', join: 'round', miterLimit: 2 };

/** Heights above the edge, as shares of the bleed, between which slanting print is judged. */
const STEPS: readonly number[] = [0, 1 / 8, 1 / 4, 1 / 2, 1];
/** Length of a slope that goes two across for one up. */
const SLOPE: number = Math.sqrt(5);
/** A tenth of a millimetre is less than any machine holds: parts nowhere wider than twice this are no fault, grid units. */
const THINNEST = 500;
/** Parts smaller than this are not worth a word: 0.05 mm2 on the grid. */
const SMALLEST = 5e6;
/** Lines up to which a pen goes along all of them at once. */
const FEW_LINES = 8;
/** How far the lines of neighbouring cells overlap, grid units. */
const OVERLAP = 1000;
/** Points of edge and print that are looked at at once, and in all cells together: some ten seconds. */
const MOST_POINTS = 1000;
const MOST_IN_CELLS = 300_000;

function keyOf(point: { readonly x: number; readonly y: number }): string {
  return `${point.x},${point.y}`;
}

/** Rings as open lines from their first point back to it. */
function openRings(region: Region): readonly GridLine[] {
  return region.map((ring) => [...ring, ring[0]!]);
}

/** Joins the pieces that a ring was cut into where it began. */
export function joinAtStarts(
  pieces: readonly GridLine[],
  rings: readonly GridLine[],
): { readonly open: readonly GridLine[]; readonly closed: readonly GridLine[] } {
  const starts = new Set(rings.map((ring) => keyOf(ring[0]!)));
  const open: GridLine[] = [];
  const closed: GridLine[] = [];
  const atStart = new Map<string, GridLine[]>();
  for (const piece of pieces) {
    if (piece.length < 2) continue;
    const [first, last] = [keyOf(piece[0]!), keyOf(piece.at(-1)!)];
    if (first === last && piece.length > 3) {
      closed.push(piece.slice(0, -1));
      continue;
    }
    const start = starts.has(first) ? first : starts.has(last) ? last : null;
    if (start === null) open.push(piece);
    else atStart.set(start, [...(atStart.get(start) ?? []), piece]);
  }
  for (const [start, [one, other, ...rest]] of atStart) {
    if (one === undefined || other === undefined || rest.length > 0) {
      open.push(...[one, other, ...rest].filter((piece) => piece !== undefined));
      continue;
    }
    const into = keyOf(one.at(-1)!) === start ? one : one.toReversed();
    const onwards = keyOf(other[0]!) === start ? other : other.toReversed();
    open.push([...into, ...onwards.slice(1)]);
  }
  return { open, closed };
}

/** What one cell gives to those around it: lines on a line `touch` inside of the edge. */
interface CellEdge {
  readonly cell: BleedCell;
  readonly blank: Region;
  readonly printed: Region;
  /** The band along the stretches that print touches, not yet ended where the bleed ends. */
  readonly wide: Region;
  /** Stretches that print does not touch. */
  readonly bare: readonly GridLine[];
}

/** What a cell lacks. */
interface CellFaults {
  readonly box: Box;
  readonly parts: readonly Region[];
  readonly cores: readonly Region[];
}

/** Runs of whole lines of rings that come near a box. */
function listRuns(rings: readonly GridLine[], box: Box): readonly GridLine[] {
  const runs: GridLine[] = [];
  for (const ring of rings) {
    const isNear = ring.map(
      (point, at) => !isEmptyBox(intersect(regionBox([[point, ring[(at + 1) % ring.length]!]]), box)),
    );
    const gap = isNear.indexOf(false);
    if (gap < 0) {
      runs.push([...ring, ring[0]!]);
      continue;
    }
    let run: GridLine[number][] = [];
    for (let step = 1; step <= ring.length; step += 1) {
      const at = (gap + step) % ring.length;
      if (isNear[at] || run.length > 0) run.push(ring[at]!);
      if (isNear[at]) continue;
      if (run.length > 1) runs.push(run);
      run = [];
    }
  }
  return runs;
}

/**
 * The edge within a cell and a little around it, so that the lines of neighbours overlap and no seam is left between them.
 *
 * Lines are not cut off at the cell: a short rest of one would have another direction once its end is rounded.
 */
function readCell(cell: BleedCell, lengths: BleedLengths): CellEdge {
  const blank = fillRings(cell.blank, 'nonzero');
  const printed = printedRegion(cell.plies);
  const rings = growRegion(blank, -lengths.touch);
  const within = cell.whole ? openRings(rings) : listRuns(rings, grow(cell.box, OVERLAP));
  const touched = joinAtStarts(cutLines(within, printed, 'inside'), rings);
  const half = lengths.touch + lengths.bleed;
  const wide = [
    ...strokeLines(touched.open, false, { ...BUTT, half }),
    ...strokeLines(touched.closed, true, { ...BUTT, half }),
  ];
  return { cell, blank, printed, wide, bare: cutLines(within, printed, 'outside') };
}

/** The area that a round pen covers along many lines that lie in order: halves are united, since all at once cross each other over and over. */
function strokeMany(lines: readonly GridLine[], half: number): Region {
  if (lines.length <= FEW_LINES) return strokeLines(lines, false, { ...ROUND, half });
  const middle = lines.length >> 1;
  return uniteRegions([strokeMany(lines.slice(0, middle), half), strokeMany(lines.slice(middle), half)]);
}

/** The stretches of the band where white cannot be the slanting rim of print that goes on across the edge. */
function notSlanting(
  blank: Region,
  uncovered: Region,
  bare: (reach: number) => readonly GridLine[],
  lengths: BleedLengths,
): Region {
  const judged: Region[] = [];
  let inner = blank;
  for (const step of STEPS.slice(1)) {
    const height = step * lengths.bleed;
    const half = (height + lengths.touch) * SLOPE;
    const outer = growRegion(blank, height);
    const reach = strokeMany(bare(half), half);
    judged.push(subtractRegion(intersectRegions(uncovered, outer), [...inner, ...reach]));
    inner = outer;
  }
  return uniteRegions(judged);
}

/** Whether a part has an area that is more than a seam. */
function isMoreThanSeam(part: Region, area: number): boolean {
  if (area < SMALLEST || part.length === 0) return false;
  // A part that is nowhere wider than twice t has at most t times the length of its outline, and a little for each hole.
  const most = THINNEST * outlineLength(part) + Math.PI * THINNEST * THINNEST * (part.length - 1);
  return area > most || growRegion(part, -THINNEST).length > 0;
}

/** Finds what lies near a box, by place in a list of lines. */
function indexLines(lines: readonly GridLine[]): (box: Box) => readonly GridLine[] {
  const index = indexBoxList(lines.map((line) => regionBox([line])));
  return ({ x0, y0, x1, y1 }) => [...index.search(x0, y0, x1, y1)].sort((a, b) => a - b).map((at) => lines[at]!);
}

/** The blank grown by the bleed, as far as a rest that may reach beyond it asks: null where the rest lies within. */
function growNear(blank: Region, rest: Region, bleed: number): Region | null {
  // Corners that are cut off lie within round ones, and have few points.
  const least = growRegion(blank, bleed, 'bevel');
  return subtractRegion(rest, least).length === 0 ? null : growRegion(blank, bleed);
}

function findFaults(edges: readonly CellEdge[], lengths: BleedLengths): readonly CellFaults[] {
  const wideNear = indexLines(edges.flatMap(({ wide }) => wide));
  const bareNear = indexLines(edges.flatMap(({ bare }) => bare));
  const found: CellFaults[] = [];
  for (const { cell, blank, printed } of edges) {
    const { box } = cell;
    if (!cell.mayLack) continue;
    const wide = clipRings(wideNear(box), box);
    if (wide.length === 0) continue;
    const rest = subtractRegion(wide, [...blank, ...printed]);
    if (rest.length === 0) continue;
    const parts = splitWithin(rest, growNear(blank, rest, lengths.bleed));
    if (parts.length === 0) continue;
    const uncovered = parts.flat();
    const around = regionBox(uncovered);
    const bare = (reach: number): readonly GridLine[] => bareNear(grow(around, reach));
    const reach = (lengths.bleed + lengths.touch) * SLOPE;
    const cores = bare(reach).length === 0 ? parts : splitRegion(notSlanting(blank, uncovered, bare, lengths));
    found.push({ box, parts, cores });
  }
  return found;
}

/**
 * The part of the bleed that print does not cover, in parts that hang together, each a fault of its own.
 *
 * The bleed is the blank grown by a distance with round corners, without the blank, along the edges that print touches from
 * inside. White that runs on from bare board at the edge, no steeper than two along for one out, is the rim of slanting print and no fault.
 *
 * @param blank - Rings of the blanks, outer ones and holes running in opposite ways.
 * @param most - Points that are looked at at once, and in all: where there are more, the edge is looked at in cells, or not at all.
 * @returns Null where there are too many points in all.
 * @accuracy On the grid, so 0.1 micrometre for straight edges; round corners within a micrometre.
 */
export function findMissingBleed(
  blank: readonly GridLine[],
  plies: readonly Ply[],
  lengths: BleedLengths,
  most: { readonly atOnce: number; readonly inAll: number } = { atOnce: MOST_POINTS, inAll: MOST_IN_CELLS },
): readonly JoinedPart[] | null {
  const half = lengths.bleed + lengths.touch;
  const whole = { box: grow(regionBox(blank), Math.ceil(2 * half)), whole: true, blank, plies, mayLack: true };
  const cells = cutCells(whole, {
    halo: Math.ceil(half + 2 * OVERLAP),
    far: BUTT.miterLimit * half,
    bleed: lengths.bleed,
    mostPoints: most.atOnce,
    allPoints: most.inAll,
    least: 2 * half,
  });
  if (cells === null) return null;
  const faults = findFaults(
    cells.map((cell) => readCell(cell, lengths)),
    lengths,
  );
  const parts = joinParts(faults);
  const cores = joinParts(faults.map(({ box, cores }) => ({ box, parts: cores }))).filter(({ region, area }) =>
    isMoreThanSeam(region, area),
  );
  return cores.length === 0 ? [] : keepTouching(faults, parts, cores);
}

/** The parts that hold any of the cores. */
function keepTouching(
  faults: readonly CellFaults[],
  parts: readonly JoinedPart[],
  cores: readonly JoinedPart[],
): readonly JoinedPart[] {
  const local = faults.map(({ parts: pieces }) => pieces.map(() => false));
  for (const { pieces } of cores) {
    for (const { cell, part } of pieces) {
      const fault = faults[cell]!;
      const core = fault.cores[part]!;
      if (fault.cores === fault.parts) {
        local[cell]![part] = true;
        continue;
      }
      const box = regionBox(core);
      for (const [at, whole] of fault.parts.entries()) {
        if (local[cell]![at] || isEmptyBox(intersect(regionBox(whole), box))) continue;
        if (intersectRegions(whole, core).length > 0) local[cell]![at] = true;
      }
    }
  }
  return parts.filter(
    ({ region, area, pieces }) => pieces.some(({ cell, part }) => local[cell]![part]) && isMoreThanSeam(region, area),
  );
}
