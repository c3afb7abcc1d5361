// Angles written in degrees.

/**
 * Cosine and sine of an angle in degrees, exact at multiples of 30 and 45 where a double can be.
 *
 * @returns `[cos, sin]`.
 * @throws Never. NaN for an angle that is not finite.
 * @unit degrees
 * @accuracy One unit in the last place, after an exact reduction to [0, 45].
 */
export function turnOf(degrees: number): readonly [number, number] {
  // By the mirror image: a whole turn added to a tiny negative angle would swallow it, and leave a quarter turn too many.
  if (degrees < 0) {
    const [cos, sin] = turnOf(-degrees);
    return [cos, 0 - sin];
  }
  const rest = degrees % 360;
  const quarter = Math.floor(rest / 90);
  const within = rest - quarter * 90;
  const mirrored = within > 45;
  const [near, far] = octant(mirrored ? 90 - within : within);
  const cos = mirrored ? far : near;
  const sin = mirrored ? near : far;
  if (quarter === 0) return [cos, sin];
  if (quarter === 1) return [0 - sin, cos];
  if (quarter === 2) return [0 - cos, 0 - sin];
  return [sin, 0 - cos];
}

/** Cosine and sine of an angle from 0 to 45 degrees. */
function octant(degrees: number): readonly [number, number] {
  if (degrees === 0) return [1, 0];
  if (degrees === 45) return [Math.SQRT1_2, Math.SQRT1_2];
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), degrees === 30 ? 0.5 : Math.sin(radians)];
}
