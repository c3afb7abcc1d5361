// Corners of runs.
import type { Matrix } from './matrix.js';
import { lookAt, type MeasuredRun, type MeasuredSegment } from './path-stretch.js';

/** From this turn on two segments make a corner, radians: 10 degrees. */
const CORNER = Math.PI / 18;

/** The turn between two segments, radians. */
function turnBetween(one: MeasuredSegment, other: MeasuredSegment, matrix: Matrix): number {
  // Just inside the ends: a control point that lies on its end gives no direction there.
  const a = lookAt(one, matrix, 1 - 1e-6);
  const b = lookAt(other, matrix, 1e-6);
  return Math.abs(Math.atan2(a.dx * b.dy - a.dy * b.dx, a.dx * b.dx + a.dy * b.dy));
}

/** Lengths along a run at which it has corners; the ends of an open one count. */
export function listCorners(run: MeasuredRun, matrix: Matrix): readonly number[] {
  const corners: number[] = [];
  let at = 0;
  run.segments.forEach((segment, i) => {
    const before = i > 0 ? run.segments[i - 1]! : run.closed ? run.segments.at(-1)! : null;
    if (before === null || turnBetween(before, segment, matrix) >= CORNER) corners.push(at);
    at += segment.length;
  });
  if (!run.closed) corners.push(at);
  return corners;
}
