// Whether lines are so tangled that to work out all their crossings would take too long.
import { countPieces } from '../geometry/outline.js';
import type { ToolLine } from '../model/tool-line.js';
import { isAroundPiece, type ToolPieces } from './tool-pieces.js';

/** Most straight pieces of tool lines that are looked at: ten times a sheet full of small labels. */
export const MOST_PIECES = 1_000_000;
/** Meetings of two pieces that every drawing may have, and how many more for each piece: neighbours alone make two. */
const FREE_MEETINGS = 500_000;
const MEETINGS_A_PIECE = 8;

/** Whether there are more pieces than are looked at. */
export function areTooMany(lines: readonly Pick<ToolLine, 'outline'>[], allowed: number = MOST_PIECES): boolean {
  return lines.reduce((sum, { outline }) => sum + countPieces(outline), 0) > allowed;
}

/** How many meetings of pieces are allowed. */
export function allowMeetings(count: number): number {
  return FREE_MEETINGS + MEETINGS_A_PIECE * count;
}

/**
 * Whether the boxes of more pieces meet than allowed.
 *
 * @throws Never. Ends as soon as it knows.
 */
export function isTangled(pieces: ToolPieces, allowed: number = allowMeetings(pieces.count)): boolean {
  if ((pieces.count * (pieces.count - 1)) / 2 <= allowed) return false;
  let meetings = 0;
  let piece = 0;
  const count = (other: number): boolean => {
    if (other > piece) meetings += 1;
    return meetings > allowed;
  };
  while (piece < pieces.count && !isAroundPiece(pieces, piece, 0, count)) piece += 1;
  return meetings > allowed;
}
