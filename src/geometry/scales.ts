// How much a matrix lengthens at most and at least.
import type { Matrix } from './matrix.js';

/**
 * The greatest and the least factor by which lengths change: the singular values of the linear part.
 *
 * @accuracy A few units in the last place of the greatest.
 */
export function scalesOf(matrix: Matrix): readonly [number, number] {
  const [a, b, c, d] = matrix;
  const even = Math.hypot(a + d, b - c) / 2;
  const odd = Math.hypot(a - d, b + c) / 2;
  return [even + odd, Math.abs(even - odd)];
}
