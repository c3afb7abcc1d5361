// How far a shape lies from where a matrix puts it, and whether it is still painted alike.
import { isEmptyBox } from '../geometry/box.js';
import { invert, type Matrix, multiply } from '../geometry/matrix.js';
import type { Shape } from '../model/artwork.js';

/** How far the corners of a box come apart under two matrices. */
export function cornerDistance(
  one: Matrix,
  other: Matrix,
  box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number },
): number {
  const [a, b, c, d, e, f] = one.map((value, i) => value - other[i]!) as unknown as Matrix;
  const corners = [box.x0, box.x1].flatMap((x) => [box.y0, box.y1].map((y) => [x, y] as const));
  return Math.max(...corners.map(([x, y]) => Math.hypot(a * x + c * y + e, b * x + d * y + f)));
}

/**
 * How far a shape came out from where a matrix puts it; the corners of its box tell it for the whole.
 *
 * @unit px
 */
export function shapeDeviation(shape: Shape, moved: Shape, matrix: Matrix): number {
  const wanted = multiply(matrix, shape.matrix);
  const back = invert(shape.matrix);
  if (back === null || isEmptyBox(shape.fillBox))
    return Math.max(...wanted.map((value, i) => Math.abs(value - moved.matrix[i]!)));
  return cornerDistance(multiply(wanted, back), multiply(moved.matrix, back), shape.fillBox);
}

/** Whether two shapes are painted alike. */
export function hasEqualPaint(one: Shape, other: Shape): boolean {
  return one.paint === other.paint || JSON.stringify(one.paint) === JSON.stringify(other.paint);
}
