// The straight pieces of all tool lines, and which lie near which.
import { type BoxIndex, indexBoxes } from '../geometry/box-index.js';
import { countPieces } from '../geometry/outline.js';
import { lengthOf } from '../geometry/segment.js';
import type { ToolLine } from '../model/tool-line.js';

/** Straight pieces side by side. */
export interface ToolPieces {
  readonly count: number;
  /** x0, y0, x1, y1 each, px. */
  readonly ends: Float64Array;
  /** Position of the tool line of each piece. */
  readonly line: Uint32Array;
  /** Position of the first piece of each line, and one more for their end. */
  readonly first: Uint32Array;
  /** Length of the line before each piece, px. */
  readonly start: Float64Array;
  /** By piece. */
  readonly index: BoxIndex;
}

/** Lists the pieces of tool lines, or of any others. */
export function listToolPieces(lines: readonly Pick<ToolLine, 'outline'>[]): ToolPieces {
  const count = lines.reduce((sum, { outline }) => sum + countPieces(outline), 0);
  const ends = new Float64Array(4 * count);
  const line = new Uint32Array(count);
  const first = new Uint32Array(lines.length + 1);
  const start = new Float64Array(count);
  const boxes = new Float64Array(4 * count);
  let at = 0;
  for (let position = 0; position < lines.length; position += 1) {
    const { outline } = lines[position]!;
    const { points } = outline;
    const pieces = countPieces(outline);
    let length = 0;
    first[position] = at;
    for (let piece = 0; piece < pieces; piece += 1) {
      const next = 2 * piece + 2 < points.length ? 2 * piece + 2 : 0;
      const x0 = points[2 * piece]!;
      const y0 = points[2 * piece + 1]!;
      const x1 = points[next]!;
      const y1 = points[next + 1]!;
      ends[4 * at] = x0;
      ends[4 * at + 1] = y0;
      ends[4 * at + 2] = x1;
      ends[4 * at + 3] = y1;
      boxes[4 * at] = Math.min(x0, x1);
      boxes[4 * at + 1] = Math.min(y0, y1);
      boxes[4 * at + 2] = Math.max(x0, x1);
      boxes[4 * at + 3] = Math.max(y0, y1);
      line[at] = position;
      start[at] = length;
      length += lengthOf(x1 - x0, y1 - y0);
      at += 1;
    }
  }
  first[lines.length] = at;
  return { count, ends, line, first, start, index: indexBoxes(boxes) };
}

/** Whether a piece suits whose box comes nearer to a point than a distance along x and y. Ends at the first that does. */
export function isAroundPoint(
  pieces: ToolPieces,
  { x, y }: { readonly x: number; readonly y: number },
  distance: number,
  suits: (piece: number) => boolean,
): boolean {
  return pieces.index.meets(x - distance, y - distance, x + distance, y + distance, suits);
}

/** Whether a piece suits, itself included, whose box comes nearer to a piece's box than a distance. Ends at the first that does. */
export function isAroundPiece(
  pieces: ToolPieces,
  piece: number,
  distance: number,
  suits: (other: number) => boolean,
): boolean {
  const { ends } = pieces;
  const at = 4 * piece;
  const x0 = ends[at]!;
  const y0 = ends[at + 1]!;
  const x1 = ends[at + 2]!;
  const y1 = ends[at + 3]!;
  return pieces.index.meets(
    Math.min(x0, x1) - distance,
    Math.min(y0, y1) - distance,
    Math.max(x0, x1) + distance,
    Math.max(y0, y1) + distance,
    suits,
  );
}

/** The pieces whose boxes come nearer to a piece's box than a distance, itself included. */
export function piecesNear(pieces: ToolPieces, piece: number, distance: number): readonly number[] {
  const near: number[] = [];
  isAroundPiece(pieces, piece, distance, (other) => {
    near.push(other);
    return false;
  });
  return near;
}

/** Length of a piece. @unit px */
export function lengthOfPiece({ ends }: ToolPieces, piece: number): number {
  const at = 4 * piece;
  return lengthOf(ends[at + 2]! - ends[at]!, ends[at + 3]! - ends[at + 1]!);
}

/** Length of a line. @unit px */
export function lengthOfLine(pieces: ToolPieces, line: number): number {
  const last = pieces.first[line + 1]! - 1;
  if (last < pieces.first[line]!) return 0;
  return pieces.start[last]! + lengthOfPiece(pieces, last);
}
