// Which lines lie within which outlines: what is within is cut first, while the board around it still holds.
import { chainLines } from '../geometry/chain-runs.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { boundPoints, type Outline, signedArea } from '../geometry/outline.js';

/** Ends of lines that miss each other by less are joined. @unit px */
const SNAP_PX = 0.2;

/** A closed outline, and the items whose lines make it. */
interface Loop {
  readonly items: readonly number[];
  readonly points: Float64Array;
  readonly area: number;
  readonly box: readonly [number, number, number, number];
}

/** First item, then the one that must come after it. */
export type Before = readonly [number, number];

function makeLoop(items: readonly number[], points: Float64Array): Loop {
  return { items, points, area: Math.abs(signedArea(points)), box: boundPoints(points) };
}

/** The points of an outline the other way round. */
function turnRound(points: Float64Array): Float64Array {
  const turned = new Float64Array(points.length);
  for (let at = 0; at < points.length; at += 2) {
    turned[at] = points[points.length - 2 - at]!;
    turned[at + 1] = points[points.length - 1 - at]!;
  }
  return turned;
}

function listLoops(outlines: readonly (readonly Outline[])[]): readonly Loop[] {
  const loops: Loop[] = [];
  const open: { readonly item: number; readonly points: Float64Array }[] = [];
  outlines.forEach((runs, item) => {
    for (const { closed, points } of runs) {
      if (closed && points.length >= 6) loops.push(makeLoop([item], points));
      else if (points.length >= 4) open.push({ item, points });
    }
  });
  const ends = open.map(({ points }) => ({
    x0: points[0]!,
    y0: points[1]!,
    x1: points.at(-2)!,
    y1: points.at(-1)!,
  }));
  for (const { links, closed } of chainLines(ends, SNAP_PX)) {
    if (!closed) continue;
    const parts = links.map(({ line, reversed }) => (reversed ? turnRound(open[line]!.points) : open[line]!.points));
    const points = Float64Array.from(parts.flatMap((part) => [...part]));
    if (points.length >= 6) loops.push(makeLoop([...new Set(links.map(({ line }) => open[line]!.item))], points));
  }
  return loops.filter(({ area }) => area > 0).sort((a, b) => a.area - b.area);
}

/** A place on a line that is not one of its ends: the middle of its longest piece. */
function middleOf(points: Float64Array): readonly [number, number] {
  let longest = -1;
  let middle: readonly [number, number] = [points[0]!, points[1]!];
  for (let at = 0; at + 3 < points.length; at += 2) {
    const length = Math.hypot(points[at + 2]! - points[at]!, points[at + 3]! - points[at + 1]!);
    if (!(length > longest)) continue;
    longest = length;
    middle = [(points[at]! + points[at + 2]!) / 2, (points[at + 1]! + points[at + 3]!) / 2];
  }
  return middle;
}

function contains(loop: Loop, points: Float64Array, box: Loop['box']): boolean {
  const [x0, y0, x1, y1] = loop.box;
  if (box[0] < x0 - SNAP_PX || box[1] < y0 - SNAP_PX || box[2] > x1 + SNAP_PX || box[3] > y1 + SNAP_PX) return false;
  return isInsideLoop(loop.points, ...middleOf(points));
}

/**
 * Pairs of items: the first lies within an outline that the second has a part of.
 *
 * Only the nearest outline around each line is told; what lies farther out follows from that one's own.
 *
 * @param outlines - By item, its lines on the artboard, px.
 */
export function findNesting(outlines: readonly (readonly Outline[])[]): readonly Before[] {
  const loops = listLoops(outlines);
  const pairs = new Map<string, Before>();
  outlines.forEach((runs, item) => {
    for (const { points, closed } of runs) {
      if (points.length < 4) continue;
      const box = boundPoints(points);
      const area = closed ? Math.abs(signedArea(points)) : 0;
      const around = loops.find(
        (loop) => loop.area > area && !loop.items.includes(item) && contains(loop, points, box),
      );
      for (const outer of around?.items ?? []) pairs.set(`${item} ${outer}`, [item, outer]);
    }
  });
  return [...pairs.values()];
}
