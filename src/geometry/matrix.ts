// Affine matrices of the plane.

/** `[a, b, c, d, e, f]`: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [number, number, number, number, number, number];

/** The matrix that moves nothing. */
export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/**
 * The matrix that applies `inner` first and `outer` second.
 *
 * @source SVG 2, section 8.5 (nested transforms multiply from the outside in)
 */
export function multiply(outer: Matrix, inner: Matrix): Matrix {
  if (outer === IDENTITY) return inner;
  if (inner === IDENTITY) return outer;
  const [a, b, c, d, e, f] = outer;
  return [
    a * inner[0] + c * inner[1],
    b * inner[0] + d * inner[1],
    a * inner[2] + c * inner[3],
    b * inner[2] + d * inner[3],
    a * inner[4] + c * inner[5] + e,
    b * inner[4] + d * inner[5] + f,
  ];
}

/** The matrix that undoes `matrix`, or null where there is none (zero determinant or a number that is not finite). */
export function invert(matrix: Matrix): Matrix | null {
  const [a, b, c, d, e, f] = matrix;
  const determinant = a * d - b * c;
  if (determinant === 0 || !Number.isFinite(determinant)) return null;
  return [
    d / determinant,
    -b / determinant,
    -c / determinant,
    a / determinant,
    (c * f - d * e) / determinant,
    (b * e - a * f) / determinant,
  ];
}
