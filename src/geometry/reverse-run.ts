// Runs the other way round.
import type { MeasuredRun, MeasuredSegment } from './path-stretch.js';

function reverseSegment(segment: MeasuredSegment): MeasuredSegment {
  const { points, arc } = segment;
  const reversed = new Float64Array(points.length);
  for (let at = 0; at < points.length; at += 2) {
    reversed[at] = points[points.length - 2 - at]!;
    reversed[at + 1] = points[points.length - 1 - at]!;
  }
  const turned = arc === null ? null : { ...arc, start: arc.start + arc.sweep, sweep: 0 - arc.sweep };
  return { ...segment, points: reversed, arc: turned };
}

/** The same line from its end to its start. */
export function reverseRun(run: MeasuredRun): MeasuredRun {
  return { ...run, segments: run.segments.map(reverseSegment).reverse() };
}
