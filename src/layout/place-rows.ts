// Copies in columns and rows.
import type { Box } from '../geometry/box.js';
import type { TurnedPiece } from './turned-piece.js';

/** A copy and the top left of its box, mm. */
export interface PlacedCopy {
  readonly piece: TurnedPiece;
  readonly x: number;
  readonly y: number;
}

/** Clear distances across and down, mm. */
export interface Gutters {
  readonly x: number;
  readonly y: number;
}

/** What is short of a whole copy by less than this is a whole one, mm. */
const EQUAL_MM = 1e-6;

/** How many lengths with gutters between them fit. */
export function countAlong(room: number, length: number, gutter: number): number {
  if (!(length > 0)) return 0;
  return Math.max(0, Math.floor((room + gutter + EQUAL_MM) / (length + gutter)));
}

/** Columns and rows of upright boxes that an area holds. */
export function countGrid(area: Box, piece: TurnedPiece, gutters: Gutters): readonly [number, number] {
  return [
    countAlong(area.x1 - area.x0, piece.width, gutters.x),
    countAlong(area.y1 - area.y0, piece.height, gutters.y),
  ];
}

/** Rows from the top left of an area; every other one of another piece where one is given, of the same size. */
export function placeRows(
  area: Box,
  grid: { readonly columns: number; readonly rows: number; readonly copies: number },
  pieces: readonly TurnedPiece[],
  gutters: Gutters,
): readonly PlacedCopy[] {
  const copies: PlacedCopy[] = [];
  for (let at = 0; at < grid.copies; at += 1) {
    const row = Math.floor(at / grid.columns);
    const piece = pieces[row % pieces.length]!;
    copies.push({
      piece,
      x: area.x0 + (at % grid.columns) * (piece.width + gutters.x),
      y: area.y0 + row * (piece.height + gutters.y),
    });
  }
  return copies;
}

/** The box around what copies draw, mm. */
function drawnAround(copies: readonly PlacedCopy[]): Box {
  return {
    x0: Math.min(...copies.map(({ x, piece }) => x - piece.overhang[0])),
    y0: Math.min(...copies.map(({ y, piece }) => y - piece.overhang[1])),
    x1: Math.max(...copies.map(({ x, piece }) => x + piece.width + piece.overhang[2])),
    y1: Math.max(...copies.map(({ y, piece }) => y + piece.height + piece.overhang[3])),
  };
}

/** The copies, moved so that what they draw lies in the middle of a box. */
export function centreCopies(copies: readonly PlacedCopy[], box: Box): readonly PlacedCopy[] {
  const around = drawnAround(copies);
  const dx = (box.x0 + box.x1 - around.x0 - around.x1) / 2;
  const dy = (box.y0 + box.y1 - around.y0 - around.y1) / 2;
  return copies.map((copy) => ({ ...copy, x: copy.x + dx, y: copy.y + dy }));
}
