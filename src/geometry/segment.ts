// Straight pieces: distances to them, crossings of them.

/** Ends of a straight piece. A plain list: a view of a column costs more than all that is done with it. */
export type PieceEnds = readonly [x0: number, y0: number, x1: number, y1: number];

/** Ends of a piece out of a column of them: x0, y0, x1, y1 each. */
export function endsOf({ ends }: { readonly ends: Float64Array }, piece: number): PieceEnds {
  const at = 4 * piece;
  return [ends[at]!, ends[at + 1]!, ends[at + 2]!, ends[at + 3]!];
}

/** The length of a vector. `Math.hypot` guards against numbers that no sheet has, and makes objects to do so. */
export function lengthOf(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

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
  return lengthOf(ax + t * (bx - ax) - x, ay + t * (by - ay) - y);
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

/** Another piece seen from a piece: where its ends stand along the piece's line and off it, and the stretch that it passes. */
interface Seen {
  readonly s0: number;
  readonly s1: number;
  readonly h0: number;
  readonly h1: number;
  readonly from: number;
  readonly to: number;
}

/** How one piece sees another; null where the other does not pass it. */
function seeFrom(p: ArrayLike<number>, q: ArrayLike<number>): Seen | null {
  const dx = p[2]! - p[0]!;
  const dy = p[3]! - p[1]!;
  const length = lengthOf(dx, dy);
  if (!(length > 0)) return null;
  const along = (x: number, y: number): number => ((x - p[0]!) * dx + (y - p[1]!) * dy) / length;
  const beside = (x: number, y: number): number => ((y - p[1]!) * dx - (x - p[0]!) * dy) / length;
  const s0 = along(q[0]!, q[1]!);
  const s1 = along(q[2]!, q[3]!);
  const from = Math.max(0, Math.min(s0, s1));
  const to = Math.min(length, Math.max(s0, s1));
  if (!(to > from)) return null;
  return { s0, s1, h0: beside(q[0]!, q[1]!), h1: beside(q[2]!, q[3]!), from, to };
}

/** How far the other piece stands off at a place along the first. */
function heightAt({ s0, s1, h0, h1 }: Seen, s: number): number {
  return h0 + ((h1 - h0) / (s1 - s0)) * (s - s0);
}

/**
 * The stretch of a piece along which another one lies on it, as lengths from its start; null where it does not.
 *
 * @param tolerance - Greatest distance that still counts as on it, at both ends of the stretch.
 */
export function overlapOf(
  p: ArrayLike<number>,
  q: ArrayLike<number>,
  tolerance: number,
): readonly [number, number] | null {
  const seen = seeFrom(p, q);
  if (seen === null) return null;
  const isOn = (s: number): boolean => Math.abs(heightAt(seen, s)) <= tolerance;
  return isOn(seen.from) && isOn(seen.to) ? [seen.from, seen.to] : null;
}

/** Two pieces side by side: the stretch of the first, and the least distance of the other from it. */
export interface Beside {
  readonly from: number;
  readonly to: number;
  readonly distance: number;
}

/**
 * Where another piece runs beside a piece; null where their directions differ by more than a slope, or neither passes the other.
 *
 * @param slope - Tangent of the greatest angle between them.
 */
export function parallelDistance(p: ArrayLike<number>, q: ArrayLike<number>, slope: number): Beside | null {
  const seen = seeFrom(p, q);
  if (seen === null) return null;
  const { s0, s1, h0, h1, from, to } = seen;
  if (!(Math.abs(h1 - h0) <= slope * Math.abs(s1 - s0))) return null;
  if (heightAt(seen, from) * heightAt(seen, to) <= 0) return { from, to, distance: 0 };
  const length = Math.hypot(p[2]! - p[0]!, p[3]! - p[1]!);
  const distanceAt = (s: number): number => {
    const [x, y] = [p[0]! + (s / length) * (p[2]! - p[0]!), p[1]! + (s / length) * (p[3]! - p[1]!)];
    return distanceToPiece(q[0]!, q[1]!, q[2]!, q[3]!, x, y);
  };
  return { from, to, distance: Math.min(distanceAt(from), distanceAt(to)) };
}

/** Lines that differ by less in direction run along each other: 5 degrees, as a slope. */
const ALONG_SLOPE = 0.0875;

/** Where a ray meets a piece. */
export interface Ahead {
  /** How far from the start of the ray. */
  readonly along: number;
  readonly x: number;
  readonly y: number;
  /** Whether the piece lies in line with the ray and goes on from there. */
  readonly inLine: boolean;
}

/**
 * Where a ray meets a piece; null where it does not.
 *
 * A piece in line with the ray is met at its near end: where lines that run along each other cross is chance.
 *
 * @param ray - Its start, and the unit vector in which it runs.
 * @param beside - How far from the line of the ray the near end of a piece may lie that is in line with it.
 * @param weld - A piece that runs along the ray and ends no farther ahead than this lies behind it.
 */
export function meetAhead(
  ray: { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number },
  [x0, y0, x1, y1]: PieceEnds,
  { beside, weld }: { readonly beside: number; readonly weld: number },
): Ahead | null {
  const { x, y, dx, dy } = ray;
  const [s0, s1] = [(x0 - x) * dx + (y0 - y) * dy, (x1 - x) * dx + (y1 - y) * dy];
  const [h0, h1] = [(y0 - y) * dx - (x0 - x) * dy, (y1 - y) * dx - (x1 - x) * dy];
  if (Math.abs(h1 - h0) <= ALONG_SLOPE * Math.abs(s1 - s0)) {
    if (Math.max(s0, s1) <= weld) return null;
    const [along, aside, nearX, nearY] = s0 < s1 ? [s0, h0, x0, y0] : [s1, h1, x1, y1];
    if (along > 0 && Math.abs(aside) <= beside) return { along, x: nearX, y: nearY, inLine: true };
  }
  if ((h0 > 0 && h1 > 0) || (h0 < 0 && h1 < 0) || h0 === h1) return null;
  const along = s0 + (h0 / (h0 - h1)) * (s1 - s0);
  return along > 0 ? { along, x: x + along * dx, y: y + along * dy, inLine: false } : null;
}
