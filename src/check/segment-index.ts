// Straight pieces of lines, found by place.
import type { Box } from '../geometry/box.js';
import { type BoxIndex, indexBoxes } from '../geometry/box-index.js';
import type { GridLine } from '../geometry/region.js';
import { distanceToPiece } from '../geometry/segment.js';

/** Straight pieces: x0, y0, x1, y1 each. */
export interface SegmentIndex {
  readonly ends: Float64Array;
  /** Places of the pieces whose boxes meet a box. */
  readonly near: (box: Box) => readonly number[];
  /** Whether there is any. */
  readonly meets: (box: Box) => boolean;
}

/** Indexes straight pieces; long ones are found by their parts, so that a slanting line has no box as large as itself. */
export function indexSegments(ends: Float64Array, longest: number): SegmentIndex {
  const boxes: number[] = [];
  const owners: number[] = [];
  for (let at = 0; at < ends.length; at += 4) {
    const [x0, y0, x1, y1] = [ends[at]!, ends[at + 1]!, ends[at + 2]!, ends[at + 3]!];
    const upright = x0 === x1 || y0 === y1;
    const parts = upright ? 1 : Math.min(1000, Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / longest)));
    for (let part = 0; part < parts; part += 1) {
      const ax = x0 + ((x1 - x0) * part) / parts;
      const ay = y0 + ((y1 - y0) * part) / parts;
      const bx = x0 + ((x1 - x0) * (part + 1)) / parts;
      const by = y0 + ((y1 - y0) * (part + 1)) / parts;
      boxes.push(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
      owners.push(at / 4);
    }
  }
  const index: BoxIndex = indexBoxes(Float64Array.from(boxes));
  return {
    ends,
    near: ({ x0, y0, x1, y1 }) => [...new Set(index.search(x0, y0, x1, y1).map((found) => owners[found]!))],
    meets: ({ x0, y0, x1, y1 }) => index.meets(x0, y0, x1, y1),
  };
}

/** Distance of a point from piece number `place`. */
export function distanceTo(index: SegmentIndex, place: number, x: number, y: number): number {
  const { ends } = index;
  const at = 4 * place;
  return distanceToPiece(ends[at]!, ends[at + 1]!, ends[at + 2]!, ends[at + 3]!, x, y);
}

/** The straight pieces of lines, x0, y0, x1, y1 each; `closed` ones run on from their last point to their first. */
export function segmentsOf(lines: readonly GridLine[], closed: boolean): Float64Array {
  let count = 0;
  for (const line of lines) count += closed ? line.length : Math.max(0, line.length - 1);
  const ends = new Float64Array(4 * count);
  let at = 0;
  for (const line of lines) {
    for (let next = closed ? 0 : 1; next < line.length; next += 1) {
      const from = line[next === 0 ? line.length - 1 : next - 1]!;
      const to = line[next]!;
      ends[at] = from.x;
      ends[at + 1] = from.y;
      ends[at + 2] = to.x;
      ends[at + 3] = to.y;
      at += 4;
    }
  }
  return ends;
}
