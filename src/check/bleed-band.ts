// Where print has to reach beyond the blank: the band along the edges that it touches.
import { indexBoxes } from '../geometry/box-index.js';
import {
  cutLines,
  type GridLine,
  growRegion,
  intersectRegions,
  type Pen,
  type Region,
  regionArea,
  regionBox,
  splitRegion,
  strokeLines,
  subtractRegion,
  uniteRegions,
} from '../geometry/region.js';

/** Lengths on the grid. */
export interface BleedLengths {
  readonly bleed: number;
  /** How far from the edge print may end and still count as touching it. */
  readonly touch: number;
}

/** What is missing of the bleed. */
export interface MissingBleed {
  /** Parts that hang together, each a fault of its own. */
  readonly parts: readonly Region[];
  /** Stretches of the edge that print touches, on a line `touch` inside of it. */
  readonly touched: readonly GridLine[];
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

/** The stretches of the band where white cannot be the slanting rim of print that goes on across the edge. */
function notSlanting(blank: Region, uncovered: Region, bare: readonly GridLine[], lengths: BleedLengths): Region {
  if (bare.length === 0) return uncovered;
  const judged: Region[] = [];
  let inner = blank;
  for (const step of STEPS.slice(1)) {
    const height = step * lengths.bleed;
    const outer = growRegion(blank, height);
    const layer = intersectRegions(uncovered, subtractRegion(outer, inner));
    const reach = strokeLines(bare, false, { ...ROUND, half: (height + lengths.touch) * SLOPE });
    judged.push(subtractRegion(layer, reach));
    inner = outer;
  }
  return uniteRegions(judged);
}

/** Whether a part has an area that is more than a seam. */
function isMoreThanSeam(part: Region): boolean {
  return regionArea(part) >= SMALLEST && growRegion(part, -THINNEST).length > 0;
}

/**
 * The part of the bleed that print does not cover.
 *
 * The bleed is the blank grown by a distance with round corners, without the blank, along the edges that print touches from
 * inside. White that runs on from bare board at the edge, no steeper than two along for one out, is the rim of slanting print and no fault.
 *
 * @accuracy On the grid, so 0.1 micrometre for straight edges; round corners within a micrometre.
 */
export function findMissingBleed(blank: Region, printed: Region, lengths: BleedLengths): MissingBleed {
  const rings = openRings(growRegion(blank, -lengths.touch));
  const touched = joinAtStarts(cutLines(rings, printed, 'inside'), rings);
  const all = [...touched.open, ...touched.closed.map((ring) => [...ring, ring[0]!])];
  if (all.length === 0) return { parts: [], touched: [] };
  const half = lengths.touch + lengths.bleed;
  const wide = uniteRegions([
    strokeLines(touched.open, false, { ...BUTT, half }),
    strokeLines(touched.closed, true, { ...BUTT, half }),
  ]);
  const band = subtractRegion(growRegion(blank, lengths.bleed), blank);
  const uncovered = subtractRegion(intersectRegions(wide, band), printed);
  const faults = notSlanting(blank, uncovered, cutLines(rings, printed, 'outside'), lengths);
  const cores = splitRegion(faults).filter(isMoreThanSeam);
  if (cores.length === 0) return { parts: [], touched: all };
  const whole = splitRegion(uncovered);
  return { parts: keepTouching(whole, cores), touched: all };
}

/** The parts that hold any of the cores. */
function keepTouching(parts: readonly Region[], cores: readonly Region[]): readonly Region[] {
  const boxes = parts.map(regionBox);
  const index = indexBoxes(Float64Array.from(boxes.flatMap(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1])));
  const kept = new Set<number>();
  for (const core of cores) {
    const box = regionBox(core);
    for (const place of index.search(box.x0, box.y0, box.x1, box.y1)) {
      if (!kept.has(place) && intersectRegions(parts[place]!, core).length > 0) kept.add(place);
    }
  }
  return parts.filter((part, place) => kept.has(place) && isMoreThanSeam(part));
}
