// A blank as it lies when it is turned and scaled.
import { type Box, isEmptyBox, transformBox } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { LayoutPiece } from '../model/layout.js';

/** Turns by quarters, clockwise as seen, degrees. */
export type Turn = 0 | 90 | 180 | 270;

/** How far something reaches beyond a box, mm: left, top, right, bottom; 0 where it does not. */
export type Overhang = readonly [number, number, number, number];

/** A piece turned about the artboard's top left. Lengths in mm. */
export interface TurnedPiece {
  readonly turn: Turn;
  readonly matrix: Matrix;
  readonly box: Box;
  readonly width: number;
  readonly height: number;
  /** How far what is drawn reaches beyond the box. */
  readonly overhang: Overhang;
}

const COSINES: Readonly<Record<Turn, readonly [number, number]>> = {
  0: [1, 0],
  90: [0, 1],
  180: [-1, 0],
  270: [0, -1],
};

/** The matrix of a turn and a scale: no sine is worked out, so quarters are exact. */
export function turnMatrix(turn: Turn, scale: number): Matrix {
  const [cosine, sine] = COSINES[turn];
  return [cosine * scale + 0, sine * scale + 0, 0 - sine * scale, cosine * scale + 0, 0, 0];
}

function measureOverhang(box: Box, drawn: Box): Overhang {
  if (isEmptyBox(drawn)) return [0, 0, 0, 0];
  return [
    Math.max(0, box.x0 - drawn.x0),
    Math.max(0, box.y0 - drawn.y0),
    Math.max(0, drawn.x1 - box.x1),
    Math.max(0, drawn.y1 - box.y1),
  ];
}

/** The piece as it lies. */
export function turnPiece(piece: LayoutPiece, turn: Turn, scale: number): TurnedPiece {
  const matrix = turnMatrix(turn, scale);
  const box = transformBox(matrix, piece.boxMm);
  const overhang = measureOverhang(box, transformBox(matrix, piece.drawnMm));
  return { turn, matrix, box, width: box.x1 - box.x0, height: box.y1 - box.y0, overhang };
}

/** Decimals of a place, mm: a millionth of a millimetre is far below what can be placed, and keeps the numbers short. */
const PLACES = 1e6;

/** The matrix that puts the top left of a turned piece's box at a point of the sheet. */
export function placePiece({ matrix, box }: TurnedPiece, x: number, y: number): Matrix {
  const [a, b, c, d] = matrix;
  const round = (value: number): number => Math.round(value * PLACES) / PLACES + 0;
  return [a, b, c, d, round(x - box.x0), round(y - box.y0)];
}
