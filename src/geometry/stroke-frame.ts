// What a stroke reaches, seen along the axes of the target space.
import type { Matrix } from './matrix.js';

/** A stroke being measured: half its width, the matrix, and the bounds found so far (x0, y0, x1, y1 in target space). */
export interface StrokeFrame {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  /** Half the stroke width, in user units of the path. */
  readonly radius: number;
  /** How far a disc of that radius reaches along target x and y. */
  readonly reachX: number;
  readonly reachY: number;
  readonly bounds: Float64Array;
}

/**
 * A frame that has seen nothing yet.
 *
 * @throws Never.
 */
export function openFrame(matrix: Matrix, radius: number): StrokeFrame {
  const [a, b, c, d, e, f] = matrix;
  return {
    a,
    b,
    c,
    d,
    e,
    f,
    radius,
    reachX: radius * Math.sqrt(a * a + c * c),
    reachY: radius * Math.sqrt(b * b + d * d),
    bounds: Float64Array.of(Infinity, Infinity, -Infinity, -Infinity),
  };
}

/** Whether a disc of `factor` times the radius about a point adds nothing. */
export function isCovered(frame: StrokeFrame, x: number, y: number, factor: number): boolean {
  const { bounds } = frame;
  const targetX = frame.a * x + frame.c * y + frame.e;
  const targetY = frame.b * x + frame.d * y + frame.f;
  const reachX = frame.reachX * factor;
  const reachY = frame.reachY * factor;
  return (
    targetX - reachX >= bounds[0]! &&
    targetY - reachY >= bounds[1]! &&
    targetX + reachX <= bounds[2]! &&
    targetY + reachY <= bounds[3]!
  );
}

/** Takes in a point of the stroke. */
export function includePoint(frame: StrokeFrame, x: number, y: number): void {
  widen(frame, frame.a * x + frame.c * y + frame.e, frame.b * x + frame.d * y + frame.f, 0, 0);
}

/** Takes in the line across the stroke at a point of the path that moves along (dx, dy), of any length above zero. */
export function includeAcross(frame: StrokeFrame, x: number, y: number, dx: number, dy: number): void {
  const scale = frame.radius / Math.sqrt(dx * dx + dy * dy);
  const targetX = frame.a * x + frame.c * y + frame.e;
  const targetY = frame.b * x + frame.d * y + frame.f;
  widen(
    frame,
    targetX,
    targetY,
    scale * Math.abs(frame.c * dx - frame.a * dy),
    scale * Math.abs(frame.d * dx - frame.b * dy),
  );
}

/** Takes in the part of a disc about (x, y) that `faces` lets through, asked once for each direction of an extreme point. */
export function includeDisc(
  frame: StrokeFrame,
  x: number,
  y: number,
  faces: (dx: number, dy: number) => boolean,
): void {
  const { a, b, c, d, bounds } = frame;
  const targetX = a * x + c * y + frame.e;
  const targetY = b * x + d * y + frame.f;
  if (faces(-a, -c)) bounds[0] = Math.min(bounds[0]!, targetX - frame.reachX);
  if (faces(-b, -d)) bounds[1] = Math.min(bounds[1]!, targetY - frame.reachY);
  if (faces(a, c)) bounds[2] = Math.max(bounds[2]!, targetX + frame.reachX);
  if (faces(b, d)) bounds[3] = Math.max(bounds[3]!, targetY + frame.reachY);
}

function widen(frame: StrokeFrame, x: number, y: number, marginX: number, marginY: number): void {
  const { bounds } = frame;
  if (x - marginX < bounds[0]!) bounds[0] = x - marginX;
  if (y - marginY < bounds[1]!) bounds[1] = y - marginY;
  if (x + marginX > bounds[2]!) bounds[2] = x + marginX;
  if (y + marginY > bounds[3]!) bounds[3] = y + marginY;
}
