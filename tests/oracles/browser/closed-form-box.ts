// The box of a path by the closed forms of SVG 2, appendix B.2, and of Bezier curves; shares nothing with src.
import svgpath from 'svgpath';

type Bounds = [number, number, number, number];

function include(bounds: Bounds, x: number, y: number): void {
  bounds[0] = Math.min(bounds[0], x);
  bounds[1] = Math.min(bounds[1], y);
  bounds[2] = Math.max(bounds[2], x);
  bounds[3] = Math.max(bounds[3], y);
}

/** Where a Bezier curve of degree 2 or 3 turns on one axis. */
function turnsOf(points: readonly number[]): readonly number[] {
  const [p0, p1, p2, p3] = points as [number, number, number, number?];
  if (p3 === undefined) return [(p0 - p1) / (p0 - 2 * p1 + p2)];
  const a = 3 * (p3 - p0 + 3 * (p1 - p2));
  const b = 6 * (p0 - 2 * p1 + p2);
  const c = 3 * (p1 - p0);
  const root = Math.sqrt(b * b - 4 * a * c);
  // The second form of the roots holds where a is next to nothing.
  return [(-b + root) / (2 * a), (-b - root) / (2 * a), (2 * c) / (-b + root), (2 * c) / (-b - root)];
}

function valueAt(points: readonly number[], t: number): number {
  let row = [...points];
  while (row.length > 1) row = row.slice(1).map((value, at) => row[at]! * (1 - t) + value * t);
  return row[0]!;
}

function includeCurve(bounds: Bounds, xs: readonly number[], ys: readonly number[]): void {
  for (const t of [...turnsOf(xs), ...turnsOf(ys), 1]) {
    if (t > 0 && t <= 1) include(bounds, valueAt(xs, t), valueAt(ys, t));
  }
}

/** Center form of an arc. @source SVG 2, appendix B.2, equations 5.1 to 5.6 and 6.1 to 6.3 */
function includeArc(bounds: Bounds, from: readonly [number, number], segment: readonly number[]): number {
  const [rawX, rawY, degrees, large, sweep, x, y] = segment as [number, number, number, number, number, number, number];
  include(bounds, x, y);
  let [rx, ry] = [Math.abs(rawX), Math.abs(rawY)];
  if (rx === 0 || ry === 0 || (x === from[0] && y === from[1])) return 0;
  const phi = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [dx, dy] = [(from[0] - x) / 2, (from[1] - y) / 2];
  const [x1, y1] = [cos * dx + sin * dy, cos * dy - sin * dx];
  const lambda = (x1 / rx) ** 2 + (y1 / ry) ** 2;
  if (lambda > 1) [rx, ry] = [rx * Math.sqrt(lambda), ry * Math.sqrt(lambda)];
  const root = Math.sqrt(Math.max(0, 1 / Math.min(1, lambda) - 1)) * (large === sweep ? -1 : 1);
  const [cx1, cy1] = [(root * rx * y1) / ry, (-root * ry * x1) / rx];
  const cx = cos * cx1 - sin * cy1 + (from[0] + x) / 2;
  const cy = sin * cx1 + cos * cy1 + (from[1] + y) / 2;
  const start = Math.atan2((y1 - cy1) / ry, (x1 - cx1) / rx);
  let turn = Math.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx) - start;
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  const [across, down] = [Math.atan2(-ry * sin, rx * cos), Math.atan2(ry * cos, rx * sin)];
  for (const angle of [across, across + Math.PI, down, down + Math.PI]) {
    const way = (((angle - start) * Math.sign(turn)) % (2 * Math.PI)) + 2 * Math.PI;
    if (way % (2 * Math.PI) > Math.abs(turn)) continue;
    const [ex, ey] = [rx * Math.cos(angle), ry * Math.sin(angle)];
    include(bounds, cos * ex - sin * ey + cx, sin * ex + cos * ey + cy);
  }
  return Math.max(rx, ry);
}

/** Box as left, top, right, bottom, and the largest radius of its arcs after they were made to fit; null for data that svgpath refuses. */
export function closedFormBox(data: string): { readonly box: readonly number[]; readonly radius: number } | null {
  const path = svgpath(data).abs().unshort();
  if ((path as unknown as { readonly err: string }).err !== '') return null;
  const bounds: Bounds = [Infinity, Infinity, -Infinity, -Infinity];
  let radius = 0;
  let moved = false;
  path.iterate((segment, _index, x, y) => {
    const [letter, ...numbers] = segment as [string, ...number[]];
    // A moveto counts where a segment starts from it.
    if (moved && letter !== 'M') include(bounds, x, y);
    moved = letter === 'M';
    if (moved) return;
    if (letter === 'A') radius = Math.max(radius, includeArc(bounds, [x, y], numbers));
    else if (letter === 'H') include(bounds, numbers[0]!, y);
    else if (letter === 'V') include(bounds, x, numbers[0]!);
    else if (letter === 'C' || letter === 'Q') {
      const pairs = [x, y, ...numbers];
      includeCurve(
        bounds,
        pairs.filter((_, at) => at % 2 === 0),
        pairs.filter((_, at) => at % 2 === 1),
      );
    } else if (letter !== 'Z') include(bounds, numbers[0]!, numbers[1]!);
  });
  return { box: bounds, radius };
}
