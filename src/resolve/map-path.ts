// A path carried over into another frame.
import type { Matrix } from '../geometry/matrix.js';
import { ARC, type PathData } from '../geometry/path-data.js';

const DEGREES = 180 / Math.PI;

/** Radii and rotation of an ellipse under the linear part of a matrix, by the singular values of their product. */
function mapEllipse(matrix: Matrix, rx: number, ry: number, rotation: number): readonly [number, number, number] {
  const [a, b, c, d] = matrix;
  const cos = Math.cos(rotation / DEGREES);
  const sin = Math.sin(rotation / DEGREES);
  const p = (a * cos + c * sin) * rx;
  const q = (c * cos - a * sin) * ry;
  const r = (b * cos + d * sin) * rx;
  const s = (d * cos - b * sin) * ry;
  const e = (p + s) / 2;
  const f = (p - s) / 2;
  const g = (r + q) / 2;
  const h = (r - q) / 2;
  const even = Math.sqrt(e * e + h * h);
  const odd = Math.sqrt(f * f + g * g);
  return [even + odd, Math.abs(even - odd), ((Math.atan2(h, e) + Math.atan2(g, f)) / 2) * DEGREES];
}

/**
 * The same path with its coordinates in the target frame of a matrix; arcs stay arcs.
 *
 * @throws Never.
 * @accuracy A few units in the last place; an arc flattened to nothing by the matrix becomes a line.
 */
export function mapPath(path: PathData, matrix: Matrix): PathData {
  const [a, b, c, d, e, f] = matrix;
  const ops = path.ops.slice(0, path.opCount);
  const coords = path.coords.slice(0, path.coordCount);
  let at = 0;
  const mapPoint = (): void => {
    const x = coords[at]!;
    const y = coords[at + 1]!;
    coords[at] = a * x + c * y + e;
    coords[at + 1] = b * x + d * y + f;
    at += 2;
  };
  for (const op of ops) {
    if (op === ARC) {
      const [rx, ry, rotation] = mapEllipse(matrix, coords[at]!, coords[at + 1]!, coords[at + 2]!);
      coords[at] = rx;
      coords[at + 1] = ry;
      coords[at + 2] = rotation;
      if (a * d - b * c < 0) coords[at + 4] = 1 - coords[at + 4]!;
      at += 5;
    }
    const points = op === 2 ? 3 : op === 3 ? 2 : op === 5 ? 0 : 1;
    for (let i = 0; i < points; i += 1) mapPoint();
  }
  return { ops, opCount: path.opCount, coords, coordCount: path.coordCount, errorAt: path.errorAt };
}
