// Straight pieces: distances to them, crossings of them.

/** The place on a piece nearest to a point: 0 at its start, 1 at its end. */
export function nearestParameter(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  if (!(square > 0)) return 0;
  const t = ((x - ax) * dx + (y - ay) * dy) / square;
  return Math.min(1, Math.max(0, t));
}

/** The distance of a point from a piece. */
export function distanceToPiece(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  const t = nearestParameter(ax, ay, bx, by, x, y);
  return Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y);
}

/** Where the lines through two pieces (x0, y0, x1, y1) meet, as a share of the first; null where they are parallel. */
export function crossingParameter(p: ArrayLike<number>, q: ArrayLike<number>): number | null {
  const dx = p[2]! - p[0]!;
  const dy = p[3]! - p[1]!;
  const ex = q[2]! - q[0]!;
  const ey = q[3]! - q[1]!;
  const across = dx * ey - dy * ex;
  if (across === 0) return null;
  return ((q[0]! - p[0]!) * ey - (q[1]! - p[1]!) * ex) / across;
}
