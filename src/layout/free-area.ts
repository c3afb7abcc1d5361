// What of a sheet is free for copies.
import type { Box } from '../geometry/box.js';
import type { SheetRequest } from '../model/layout.js';
import type { Overhang, TurnedPiece } from './turned-piece.js';

/** The sheet without gripper and margins, mm. */
export function freeBox({ widthMm, heightMm, gripperMm, gripperSide, marginsMm }: SheetRequest): Box {
  const strip = (side: string): number => (side === gripperSide ? Math.max(gripperMm, marginsMm) : marginsMm);
  return { x0: strip('left'), y0: strip('top'), x1: widthMm - strip('right'), y1: heightMm - strip('bottom') };
}

/** The furthest that any of the pieces draws beyond its box, side by side. */
export function widestOverhang(pieces: readonly TurnedPiece[]): Overhang {
  const side = (at: 0 | 1 | 2 | 3): number => Math.max(0, ...pieces.map(({ overhang }) => overhang[at]));
  return [side(0), side(1), side(2), side(3)];
}

/**
 * Where the boxes of blanks may lie: what they draw beyond them, and the marks around all, stay within what is free.
 *
 * @param reachMm - How far the marks reach beyond what is drawn.
 */
export function blankArea(free: Box, [left, top, right, bottom]: Overhang, reachMm: number): Box {
  return {
    x0: free.x0 + left + reachMm,
    y0: free.y0 + top + reachMm,
    x1: free.x1 - right - reachMm,
    y1: free.y1 - bottom - reachMm,
  };
}
