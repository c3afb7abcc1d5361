// The run of a shape's line as points.
import { PX_PER_MM } from './units.js';

/** How far a flattened curve may leave the drawn one: 0.005 mm. @unit px */
export const FLATTEN_PX: number = 0.005 * PX_PER_MM;

/** One continuous run of a shape's line on the artboard (px), its curves flattened to `FLATTEN_PX`. */
export interface Outline {
  /** Closed by Z, or the outline of a rect, circle, ellipse or polygon. */
  readonly closed: boolean;
  /** x, y pairs; a closed one does not repeat its first point. */
  readonly points: Float64Array;
  /** Per written segment: index (in pairs) of its first point. The line that closes it is one of them where it has a length. */
  readonly starts: Uint32Array;
  /** Per written segment: 1 for a curve or an arc. */
  readonly curved: Uint8Array;
}

/** How many straight pieces an outline has. */
export function countPieces(outline: Outline): number {
  const pairs = outline.points.length / 2;
  return outline.closed && pairs > 1 ? pairs : Math.max(0, pairs - 1);
}

/**
 * The area within a closed outline, or within an open one closed by a straight line; positive where it runs clockwise as seen (y down).
 *
 * @unit px2
 */
export function signedArea(points: Float64Array): number {
  const count = points.length;
  if (count < 6) return 0;
  // Measured from the first point, so that a far origin costs no digits.
  const x0 = points[0]!;
  const y0 = points[1]!;
  let twice = 0;
  for (let at = 2; at + 3 < count; at += 2) {
    const ax = points[at]! - x0;
    const ay = points[at + 1]! - y0;
    twice += ax * (points[at + 3]! - y0) - (points[at + 2]! - x0) * ay;
  }
  return twice / 2;
}

/** The upright box around points: x0, y0, x1, y1; from infinity to minus infinity where there are none. */
export function boundPoints(points: Float64Array): readonly [number, number, number, number] {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let at = 0; at < points.length; at += 2) {
    x0 = Math.min(x0, points[at]!);
    y0 = Math.min(y0, points[at + 1]!);
    x1 = Math.max(x1, points[at]!);
    y1 = Math.max(y1, points[at + 1]!);
  }
  return [x0, y0, x1, y1];
}

/** The length of an outline, the line that closes it included. @unit px */
export function outlineLength(outline: Outline): number {
  const { points } = outline;
  const pieces = countPieces(outline);
  let length = 0;
  for (let piece = 0; piece < pieces; piece += 1) {
    const at = 2 * piece;
    const next = at + 2 < points.length ? at + 2 : 0;
    length += Math.hypot(points[next]! - points[at]!, points[next + 1]! - points[at + 1]!);
  }
  return length;
}
