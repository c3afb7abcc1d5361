// Whether lines are so tangled that to work out all their crossings would take too long.
import { countPieces } from '../geometry/outline.js';
import type { ToolLine } from '../model/tool-line.js';
import { listToolPieces, piecesNear, type ToolPieces } from './tool-pieces.js';

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
  for (let piece = 0; piece < pieces.count && meetings <= allowed; piece += 1) {
    for (const other of piecesNear(pieces, piece, 0)) if (other > piece) meetings += 1;
  }
  return meetings > allowed;
}

/** Most straight pieces of print near the blank's edge that are looked at, and of print and edge once parted into cells. */
export const MOST_PRINT_PIECES = 500_000;
/** Meetings of pieces that print may have, and how many more for each piece: art lies in layers. */
const FREE_PRINT_MEETINGS = 2_000_000;
const PRINT_MEETINGS_A_PIECE = 30;

/** Why outlines of print are too many or too tangled to be united; null where they are not. */
export function measurePrint(
  lines: readonly Pick<ToolLine, 'outline'>[],
  allowed: { readonly pieces?: number; readonly meetings?: number } = {},
): 'pieces' | 'meetings' | null {
  if (areTooMany(lines, allowed.pieces ?? MOST_PRINT_PIECES)) return 'pieces';
  const pieces = listToolPieces(lines);
  const meetings = allowed.meetings ?? FREE_PRINT_MEETINGS + PRINT_MEETINGS_A_PIECE * pieces.count;
  return isTangled(pieces, meetings) ? 'meetings' : null;
}
