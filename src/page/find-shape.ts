// Which shape lies under a point.
import { FACES, type Outlines } from '../road/list-outlines.js';
import type { SortedShapes } from './sorted-shapes.js';

function distanceToPiece(px: number, py: number, ends: readonly [number, number, number, number]): number {
  const [ax, ay, bx, by] = ends;
  const dx = bx - ax;
  const dy = by - ay;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / square));
  return Math.hypot(px - ax - along * dx, py - ay - along * dy);
}

/** How near a point is to a shape's line, and how often a ray from it crosses the line. */
function measureShape(outlines: Outlines, shape: number, x: number, y: number): { near: number; crossings: number } {
  const { points, runStarts, runClosed, shapeRuns } = outlines;
  let near = Number.POSITIVE_INFINITY;
  let crossings = 0;
  for (let run = shapeRuns[shape]!; run < shapeRuns[shape + 1]!; run += 1) {
    const first = runStarts[run]!;
    const last = runStarts[run + 1]! - 1;
    for (let at = first; at <= last; at += 1) {
      const next = at < last ? at + 1 : first;
      const [ax, ay, bx, by] = [points[2 * at]!, points[2 * at + 1]!, points[2 * next]!, points[2 * next + 1]!];
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) crossings += 1;
      if (at < last || runClosed[run] === 1) near = Math.min(near, distanceToPiece(x, y, [ax, ay, bx, by]));
    }
  }
  return { near, crossings };
}

/**
 * The shape under a point: the line nearest to it within reach, else the uppermost area around it; -1 for none.
 *
 * @param sorted - Null until the first job is done.
 * @unit mm
 */
export function findShape(
  outlines: Outlines,
  sorted: SortedShapes | null,
  point: { readonly xMm: number; readonly yMm: number; readonly withinMm: number },
): number {
  const { xMm, yMm, withinMm } = point;
  const { boxes, faces } = outlines;
  let line = -1;
  let nearest = withinMm;
  let area = -1;
  for (let shape = faces.length - 1; shape >= 0; shape -= 1) {
    if (faces[shape] === FACES.nothing || sorted?.passes[shape] === -2) continue;
    const out =
      xMm < boxes[4 * shape]! - withinMm ||
      yMm < boxes[4 * shape + 1]! - withinMm ||
      xMm > boxes[4 * shape + 2]! + withinMm ||
      yMm > boxes[4 * shape + 3]! + withinMm;
    if (out) continue;
    const { near, crossings } = measureShape(outlines, shape, xMm, yMm);
    if (near < nearest && faces[shape] !== FACES.area) {
      nearest = near;
      line = shape;
    }
    if (area < 0 && faces[shape] !== FACES.line && crossings % 2 === 1) area = shape;
  }
  return line >= 0 ? line : area;
}
