// Gram-forces in newtons.

/** Newtons of one gram-force: standard gravity, 9.80665 m/s2, exact by the 3rd general conference on weights and measures, 1901 (from memory). */
const NEWTON_PER_GF = 0.00980665;

/** A force in newtons, to the nine digits that the constant has: 300 gf are 2.941995 N. */
export function toNewton(gramForce: number): number {
  return Math.round(gramForce * NEWTON_PER_GF * 1e9) / 1e9;
}
