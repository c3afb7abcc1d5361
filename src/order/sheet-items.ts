// What each sheet paints, in paint order, and which of it meets what another sheet paints.
import { type Area, extentOfLines } from '../geometry/area.js';
import { areaMeetsBox, areasMeet, type Effort } from '../geometry/areas-meet.js';
import { type Box, intersect, isEmptyBox } from '../geometry/box.js';
import { indexBoxes } from '../geometry/box-index.js';
import type { Artwork, Shape } from '../model/artwork.js';
import { type Assignment, type Part, type Placement, placementsByPass } from '../model/pass.js';

/** Says what a part of a shape covers on the artboard, px. */
export type AreaReader = (shape: Shape, part: Part) => Area;

/** The placements of one pass, in paint order. */
export interface SheetItems {
  readonly placements: readonly Placement[];
  /** When each is painted, ascending: twice the shape's index, and one more for a stroke by itself. */
  readonly times: Int32Array;
}

/** The sheets of a job, ready to be asked what lies over what. */
export interface SheetStack {
  readonly sheets: readonly SheetItems[];
  /**
   * Whether an item of a sheet lies over one of another sheet that is painted from `since` on.
   *
   * @param item - Place in the placements of `upper`.
   */
  liesOver(upper: number, item: number, lower: number, since: number): boolean;
  /** Whether all answers so far came of what is covered, none of boxes alone. */
  readonly isExact: () => boolean;
}

/** Lines and pairs of lines that are looked at, readings included; beyond it boxes decide. */
const MOST_EFFORT = 5_000_000;
/** What reading an outline costs besides its lines. */
const READING = 50;
/** Lines kept at hand. */
const MOST_KEPT = 500_000;

/** Boxes of what is placed: x0, y0, x1, y1. */
function listBoxes(artwork: Artwork, placements: readonly Placement[], readArea: AreaReader): Float64Array {
  const boxes = new Float64Array(4 * placements.length);
  placements.forEach(({ shape: index, part }, item) => {
    const shape = artwork.shapes[index]!;
    // The box of live type holds its anchors alone.
    const box = shape.kind === 'text' ? extentOfLines(readArea(shape, part)) : shape.drawnBound;
    const at = 4 * item;
    boxes[at] = box.x0;
    boxes[at + 1] = box.y0;
    boxes[at + 2] = box.x1;
    boxes[at + 3] = box.y1;
  });
  return boxes;
}

function timeOf({ shape, part }: Placement): number {
  return 2 * shape + (part === 'stroke' ? 1 : 0);
}

function boxAt(boxes: Float64Array, item: number): Box {
  const at = 4 * item;
  return { x0: boxes[at]!, y0: boxes[at + 1]!, x1: boxes[at + 2]!, y1: boxes[at + 3]! };
}

function sizeOf(box: Box): number {
  return Math.max(box.x1 - box.x0, box.y1 - box.y0);
}

/** How many items of a sheet are painted before a time. */
export function countBefore({ times }: SheetItems, time: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Compares what two items cover: larger ones are read first, so that they are kept at hand. */
function createComparer(artwork: Artwork, readArea: AreaReader): Comparer {
  const areas = new Map<number, Area>();
  const effort: Effort = { left: MOST_EFFORT };
  let kept = 0;
  const readKept = ({ sheet, item }: Item): Area => {
    const { shape, part } = sheet.placements[item]!;
    const key = sheet.times[item]!;
    const known = areas.get(key);
    if (known !== undefined) return known;
    const area = readArea(artwork.shapes[shape]!, part);
    const count = area.lines.length / 4;
    effort.left -= READING + count;
    if (kept > MOST_KEPT) {
      areas.clear();
      kept = 0;
    }
    kept += READING + count;
    areas.set(key, area);
    return area;
  };
  const meet = (a: Item, b: Item): boolean => {
    const within = intersect(a.box, b.box);
    if (isEmptyBox(within)) return false;
    if (effort.left <= 0) return true;
    const [large, small] = sizeOf(a.box) < sizeOf(b.box) ? [b, a] : [a, b];
    const area = readKept(large);
    return areaMeetsBox(area, within, effort) && areasMeet(area, readKept(small), within, effort);
  };
  return { meet, isExact: () => effort.left > 0 };
}

interface Comparer {
  meet(a: Item, b: Item): boolean;
  readonly isExact: () => boolean;
}

interface Item {
  readonly sheet: SheetItems;
  readonly item: number;
  readonly box: Box;
}

/**
 * Lists what each sheet paints.
 *
 * What two items cover is compared until five million lines and pairs of lines were looked at; after that boxes that meet count as lying over each other.
 */
export function stackSheets(artwork: Artwork, assignment: Assignment, readArea: AreaReader): SheetStack {
  const sheets = placementsByPass(assignment).map((placements) => ({
    placements,
    times: Int32Array.from(placements, timeOf),
  }));
  const boxes = sheets.map(({ placements }) => keep(() => listBoxes(artwork, placements, readArea)));
  const indexes = boxes.map((read) => keep(() => indexBoxes(read())));
  const { meet, isExact } = createComparer(artwork, readArea);
  return {
    sheets,
    isExact,
    liesOver(upper, item, lower, since) {
      const sheet = sheets[lower]!;
      const first = countBefore(sheet, since);
      const end = countBefore(sheet, sheets[upper]!.times[item]!);
      if (first >= end) return false;
      const above: Item = { sheet: sheets[upper]!, item, box: boxAt(boxes[upper]!(), item) };
      const below = boxes[lower]!();
      const { x0, y0, x1, y1 } = above.box;
      const liesUnder = (at: number): boolean =>
        at >= first && at < end && meet(above, { sheet, item: at, box: boxAt(below, at) });
      return indexes[lower]!().meets(x0, y0, x1, y1, liesUnder);
    },
  };
}

/** Works a thing out when it is first asked for. */
function keep<Thing>(make: () => Thing): () => Thing {
  let thing: Thing | undefined;
  return () => {
    thing ??= make();
    return thing;
  };
}
