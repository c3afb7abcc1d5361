// The lowest point of a cubic between its ends.

/**
 * The value of a cubic with these Bernstein coefficients at its local minimum, or Infinity where that is not inside (0, 1).
 * The negated value for negated coefficients is the local maximum.
 *
 * @throws Never.
 * @accuracy A few units in the last place of the largest coefficient.
 */
export function cubicLow(p0: number, p1: number, p2: number, p3: number): number {
  const d0 = p1 - p0;
  const d1 = p2 - p1;
  const d2 = p3 - p2;
  const half = d1 - d0;
  const discriminant = d1 * d1 - d0 * d2;
  if (!(discriminant > 0)) return Infinity;
  // Of the derivative's two roots the one where it rises, in the form that does not cancel.
  const root = Math.sqrt(discriminant);
  const t = half > 0 ? -d0 / (half + root) : (root - half) / (d2 - d1 - half);
  if (!(t > 0 && t < 1)) return Infinity;
  const s = 1 - t;
  return s * s * (s * p0 + 3 * t * p1) + t * t * (3 * s * p2 + t * p3);
}
