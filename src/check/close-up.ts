// Lines that end where they start are closed, with or without the command that closes them.
import type { Outline } from '../geometry/outline.js';

/** Ends nearer to each other are one point, as in the faces. @unit mm */
const WELD_MM = 0.01;

/** The outline as a closed one where its ends meet; else itself. */
export function closeUp(outline: Outline, mmPerPx: number): Outline {
  const { points, closed } = outline;
  const last = points.length - 2;
  if (closed || last < 6) return outline;
  const apart = Math.hypot(points[last]! - points[0]!, points[last + 1]! - points[1]!);
  return apart * mmPerPx > WELD_MM ? outline : { ...outline, points: points.subarray(0, last), closed: true };
}
