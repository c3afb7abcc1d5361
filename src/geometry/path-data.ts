// Path data as numbers.

export type PathOp = 0 | 1 | 2 | 3 | 4 | 5;

/** Coordinates: x, y. */
export const MOVE = 0;
/** Coordinates: x, y. */
export const LINE = 1;
/** Coordinates: x1, y1, x2, y2, x, y. */
export const CUBIC = 2;
/** Coordinates: x1, y1, x, y. */
export const QUADRATIC = 3;
/** Coordinates: rx, ry, rotation in degrees, large-arc 0 or 1, sweep 0 or 1, x, y. */
export const ARC = 4;
/** No coordinates. */
export const CLOSE = 5;

export interface PathData {
  readonly ops: Uint8Array;
  readonly opCount: number;
  readonly coords: Float64Array;
  readonly coordCount: number;
  /** Byte offset within the value where the error is, or -1. */
  readonly errorAt: number;
}

export interface PathReader {
  read(bytes: Uint8Array, start: number, end: number): PathData;
  readPoints(bytes: Uint8Array, start: number, end: number, closed: boolean): PathData;
}

export function createPathReader(): PathReader {
  const empty: PathData = { ops: new Uint8Array(0), opCount: 0, coords: new Float64Array(0), coordCount: 0, errorAt: -1 };
  return { read: () => empty, readPoints: () => empty };
}
