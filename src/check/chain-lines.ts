// Lines of a pass that run into each other end to end, as the one line that they are.
import { createNumberMap } from '../geometry/number-map.js';
import type { Outline } from '../geometry/outline.js';
import type { Shape } from '../model/artwork.js';
import type { ToolLine } from '../model/tool-line.js';
import { closeUp } from './close-up.js';

/** One or more tool lines, drawn as one. */
export interface Chain extends ToolLine {
  /** Positions of the lines in it, in the order in which they follow each other. */
  readonly lines: readonly number[];
  /** The shape that draws each written segment; null where one draws them all. */
  readonly shapes: readonly Shape[] | null;
}

/** Ends nearer to each other are one point, as in the faces. @unit mm */
const WELD_MM = 0.01;

/** No point, and more than one. */
const [NONE, SEVERAL] = [-1, -2];

/** Points by place: the only other one that lies within a distance of one of them along x and y and is asked for, NONE, or SEVERAL. */
function createPlaces(
  points: readonly number[],
  distance: number,
): (at: number, isMet: (other: number) => boolean) => number {
  const cell = 2 * distance;
  // Cells far away may share a key: their points are told apart by their distance.
  const keyOf = (column: number, row: number): number => column * 67_108_864 + row;
  const newest = createNumberMap();
  const older = new Int32Array(points.length / 2).fill(NONE);
  for (let at = 0; at < older.length; at += 1) {
    const key = keyOf(Math.floor(points[2 * at]! / cell), Math.floor(points[2 * at + 1]! / cell));
    older[at] = newest.get(key);
    newest.set(key, at);
  }
  return (at, isMet) => {
    const [x, y] = [points[2 * at]!, points[2 * at + 1]!];
    let only = NONE;
    const [column, row] = [Math.floor((x - distance) / cell), Math.floor((y - distance) / cell)];
    const columns = Math.floor((x + distance) / cell) - column;
    const rows = Math.floor((y + distance) / cell) - row;
    // Counted from nought: beyond 2^53 a cell and one are the same cell.
    for (let across = 0; across <= columns; across += 1) {
      for (let down = 0; down <= rows; down += 1) {
        for (let other = newest.get(keyOf(column + across, row + down)); other >= 0; other = older[other]!) {
          const near = Math.max(Math.abs(points[2 * other]! - x), Math.abs(points[2 * other + 1]! - y)) <= distance;
          if (!near || other === at || !isMet(other)) continue;
          if (only !== NONE) return SEVERAL;
          only = other;
        }
      }
    }
    return only;
  };
}

/** The other end of each end where just the two meet, or -1. Ends are numbered 2 i and 2 i + 1 for line i. */
function linkEnds(lines: readonly ToolLine[], weld: number): Int32Array {
  const places: number[] = [];
  const ends: number[] = [];
  for (let position = 0; position < lines.length; position += 1) {
    const { points, closed } = lines[position]!.outline;
    if (closed || points.length < 4) continue;
    const last = points.length - 2;
    places.push(2 * position, 2 * position + 1);
    ends.push(points[0]!, points[1]!, points[last]!, points[last + 1]!);
  }
  const onlyNear = createPlaces(ends, weld);
  const links = new Int32Array(2 * lines.length).fill(-1);
  for (let at = 0; at < places.length; at += 1) {
    const place = places[at]!;
    const { pass } = lines[place >> 1]!;
    const met = onlyNear(at, (other) => lines[places[other]! >> 1]!.pass === pass);
    if (met >= 0) links[place] = places[met]!;
  }
  return links.map((other, place) => (other >= 0 && links[other] === place ? other : -1));
}

/** An outline drawn from its other end. */
function reverseOutline({ points, starts, curved, closed }: Outline): Outline {
  const count = points.length / 2;
  const turned = new Float64Array(points.length);
  for (let at = 0; at < count; at += 1) {
    turned[2 * at] = points[2 * (count - 1 - at)]!;
    turned[2 * at + 1] = points[2 * (count - 1 - at) + 1]!;
  }
  const ends = Array.from(starts, (_, segment) => starts[segment + 1] ?? count - 1);
  return {
    closed,
    points: turned,
    starts: Uint32Array.from(ends, (end) => count - 1 - end).reverse(),
    curved: curved.toReversed(),
  };
}

/** Outlines one after the other as one, each without its first point but the first. */
function joinOutlines(outlines: readonly Outline[]): Outline {
  const pairs = outlines.reduce((sum, { points }) => sum + points.length / 2 - 1, 1);
  const points = new Float64Array(2 * pairs);
  const starts: number[] = [];
  const curved: number[] = [];
  let at = 0;
  for (const outline of outlines) {
    for (const start of outline.starts) starts.push(at + start);
    for (const curve of outline.curved) curved.push(curve);
    points.set(at === 0 ? outline.points : outline.points.subarray(2), at === 0 ? 0 : 2 * (at + 1));
    at += outline.points.length / 2 - 1;
  }
  return { closed: false, points, starts: Uint32Array.from(starts), curved: Uint8Array.from(curved) };
}

function buildChain(lines: readonly ToolLine[], ends: readonly number[], mmPerPx: number): Chain {
  const { shape, pass, role, kind, outline } = lines[ends[0]! >> 1]!;
  if (ends.length === 1) {
    // Written out: a copy of an object that is added to is slow.
    return {
      shape,
      pass,
      role,
      kind,
      outline: closeUp(outline, mmPerPx),
      lines: [ends[0]! >> 1],
      shapes: null,
    };
  }
  const outlines = ends.map((end) => {
    const own = lines[end >> 1]!.outline;
    return end % 2 === 0 ? own : reverseOutline(own);
  });
  const shapes = ends.flatMap((end) => Array.from(lines[end >> 1]!.outline.starts, () => lines[end >> 1]!.shape));
  return {
    ...{ shape, pass, role, kind },
    outline: closeUp(joinOutlines(outlines), mmPerPx),
    lines: ends.map((end) => end >> 1),
    shapes,
  };
}

/**
 * Lines that meet end to end as one, closed where they come round; every line is in one chain. Where three or more ends meet, none of
 * them is joined.
 */
export function chainLines(lines: readonly ToolLine[], mmPerPx: number): readonly Chain[] {
  const links = linkEnds(lines, WELD_MM / mmPerPx);
  const seen = new Uint8Array(lines.length);
  const chains: Chain[] = [];
  /** The ends at which each line of the chain is entered, from one on. */
  const follow = (from: number): readonly number[] => {
    const ends: number[] = [];
    for (let end = from; end >= 0 && seen[end >> 1] === 0; end = links[end ^ 1]!) {
      seen[end >> 1] = 1;
      ends.push(end);
    }
    return ends;
  };
  const add = (end: number): void => {
    if (seen[end >> 1] === 0) chains.push(buildChain(lines, follow(end), mmPerPx));
  };
  // From loose ends first; what is left comes round.
  for (let end = 0; end < links.length; end += 1) if (links[end]! < 0) add(end);
  for (let line = 0; line < lines.length; line += 1) add(2 * line);
  return chains;
}
