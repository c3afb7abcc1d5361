// Stretches of tool lines as places: those that overlap or meet end to end are one.
import { indexBoxes } from '../geometry/box-index.js';
import type { ToolLine } from '../model/tool-line.js';
import { pointAlong } from './point-along.js';
import type { ToolPieces } from './tool-pieces.js';

/** A stretch of a tool line, and how near another line comes along it. @unit px */
export interface LineStretch {
  /** Position of the line. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly distance: number;
}

/** Stretches that hang together. @unit px */
export interface Place {
  /** The longest stretch first. */
  readonly stretches: readonly LineStretch[];
  /** Of all stretches. */
  readonly length: number;
  /** The least of all stretches. */
  readonly distance: number;
  /** The middle of the longest stretch. */
  readonly at: readonly [number, number];
}

/** The stretches of each line, joined where they touch. */
function joinAlong(stretches: readonly LineStretch[], tolerance: number): readonly LineStretch[] {
  const joined: LineStretch[] = [];
  for (const stretch of stretches.toSorted((p, q) => p.line - q.line || p.from - q.from)) {
    const last = joined.at(-1);
    if (last === undefined || last.line !== stretch.line || stretch.from > last.to + tolerance) {
      joined.push(stretch);
      continue;
    }
    const distance = Math.min(last.distance, stretch.distance);
    joined[joined.length - 1] = { ...last, to: Math.max(last.to, stretch.to), distance };
  }
  return joined;
}

/** Groups of stretches whose ends meet, in the same pass and layer. */
function groupMeeting(
  lines: readonly ToolLine[],
  pieces: ToolPieces,
  stretches: readonly LineStretch[],
  tolerance: number,
): readonly (readonly LineStretch[])[] {
  const ends = stretches.flatMap(({ line, from, to }) => [
    pointAlong(pieces, line, from),
    pointAlong(pieces, line, to),
  ]);
  const index = indexBoxes(Float64Array.from(ends.flatMap(([x, y]) => [x, y, x, y])));
  const isOneSet = (p: ToolLine, q: ToolLine): boolean => p.pass === q.pass && p.shape.layer === q.shape.layer;
  const seen = new Uint8Array(stretches.length);
  const groups: LineStretch[][] = [];
  for (let start = 0; start < stretches.length; start += 1) {
    if (seen[start] === 1) continue;
    seen[start] = 1;
    const group: LineStretch[] = [];
    const open = [start];
    for (let place = open.pop(); place !== undefined; place = open.pop()) {
      const stretch = stretches[place]!;
      group.push(stretch);
      for (const [x, y] of [ends[2 * place]!, ends[2 * place + 1]!]) {
        for (const end of index.search(x - tolerance, y - tolerance, x + tolerance, y + tolerance)) {
          const other = end >> 1;
          const [otherX, otherY] = ends[end]!;
          if (Math.hypot(otherX - x, otherY - y) > tolerance) continue;
          if (seen[other] === 1 || !isOneSet(lines[stretch.line]!, lines[stretches[other]!.line]!)) continue;
          seen[other] = 1;
          open.push(other);
        }
      }
    }
    groups.push(group);
  }
  return groups;
}

/**
 * The places of some stretches: however a line is parted, and from where it is drawn, they are as many and as long.
 *
 * @param tolerance - Ends nearer to each other meet, px.
 */
export function joinPlaces(
  { toolLines, toolPieces }: { readonly toolLines: readonly ToolLine[]; readonly toolPieces: ToolPieces },
  stretches: readonly LineStretch[],
  tolerance: number,
): readonly Place[] {
  const joined = joinAlong(stretches, tolerance);
  return groupMeeting(toolLines, toolPieces, joined, tolerance).map((group) => {
    const sorted = group.toSorted((p, q) => q.to - q.from - (p.to - p.from));
    const longest = sorted[0]!;
    return {
      stretches: sorted,
      length: sorted.reduce((sum, { from, to }) => sum + to - from, 0),
      distance: sorted.reduce((least, stretch) => Math.min(least, stretch.distance), Infinity),
      at: pointAlong(toolPieces, longest.line, (longest.from + longest.to) / 2),
    };
  });
}
