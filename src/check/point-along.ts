// A point along a tool line, found without walking it.
import { endsOf } from '../geometry/segment.js';
import type { ToolPieces } from './tool-pieces.js';

/** The point of a line at a length from its start; its first or last point where it is not that long. @unit px */
export function pointAlong(pieces: ToolPieces, line: number, length: number): readonly [number, number] {
  let [low, high] = [pieces.first[line]!, pieces.first[line + 1]! - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (pieces.start[middle]! <= length) low = middle;
    else high = middle - 1;
  }
  const [x0, y0, x1, y1] = endsOf(pieces, low);
  const along = Math.hypot(x1 - x0, y1 - y0);
  const t = along > 0 ? Math.min(1, Math.max(0, (length - pieces.start[low]!) / along)) : 0;
  return [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
}
