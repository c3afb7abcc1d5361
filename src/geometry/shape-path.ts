// Basic shapes as paths.
import { ARC, CLOSE, LINE, MOVE, type PathData, type PathOp } from './path-data.js';

/**
 * A rectangle, with rounded corners where both radii are above zero. Radii are cut to half the sides; `auto` radii are the
 * caller's to resolve.
 *
 * @returns The path, starting right of the top left corner; empty where width or height is not above zero.
 * @throws Never.
 * @source SVG 2, section 10.2
 */
export function rectPath(x: number, y: number, width: number, height: number, rx: number, ry: number): PathData {
  if (!(width > 0 && height > 0)) return pathOf([], []);
  const right = x + width;
  const bottom = y + height;
  if (!(rx > 0 && ry > 0)) {
    return pathOf([MOVE, LINE, LINE, LINE, CLOSE], [x, y, right, y, right, bottom, x, bottom]);
  }
  const rw = Math.min(rx, width / 2);
  const rh = Math.min(ry, height / 2);
  return pathOf(
    [MOVE, LINE, ARC, LINE, ARC, LINE, ARC, LINE, ARC, CLOSE],
    [
      ...[x + rw, y, right - rw, y, rw, rh, 0, 0, 1, right, y + rh],
      ...[right, bottom - rh, rw, rh, 0, 0, 1, right - rw, bottom],
      ...[x + rw, bottom, rw, rh, 0, 0, 1, x, bottom - rh],
      ...[x, y + rh, rw, rh, 0, 0, 1, x + rw, y],
    ],
  );
}

/**
 * An ellipse, or a circle where the radii are equal, as four quarter arcs from three o'clock.
 *
 * @returns The path; empty where a radius is not above zero.
 * @throws Never.
 * @source SVG 2, sections 10.3 and 10.4
 */
export function ellipsePath(cx: number, cy: number, rx: number, ry: number): PathData {
  if (!(rx > 0 && ry > 0)) return pathOf([], []);
  return pathOf(
    [MOVE, ARC, ARC, ARC, ARC, CLOSE],
    [
      ...[cx + rx, cy, rx, ry, 0, 0, 1, cx, cy + ry],
      ...[rx, ry, 0, 0, 1, cx - rx, cy],
      ...[rx, ry, 0, 0, 1, cx, cy - ry],
      ...[rx, ry, 0, 0, 1, cx + rx, cy],
    ],
  );
}

/**
 * A straight line.
 *
 * @throws Never.
 * @source SVG 2, section 10.5
 */
export function linePath(x1: number, y1: number, x2: number, y2: number): PathData {
  return pathOf([MOVE, LINE], [x1, y1, x2, y2]);
}

function pathOf(ops: readonly PathOp[], coords: readonly number[]): PathData {
  return {
    ops: Uint8Array.from(ops),
    opCount: ops.length,
    coords: Float64Array.from(coords),
    coordCount: coords.length,
    errorAt: -1,
  };
}
