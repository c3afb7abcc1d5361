// What a shape covers, as lines, so that it can be asked whether two of them meet.
import type { Box } from './box.js';
import type { Outline } from './outline.js';

/** A filled outline, the band along a line, or both. */
export interface Area {
  /** Straight lines as x0, y0, x1, y1, four numbers each; those that only a fill closes its outline with come last. */
  readonly lines: Float64Array;
  /** How many of the lines are drawn; the rest closes fills. */
  readonly drawnCount: number;
  /** Null where it is not filled. */
  readonly fillRule: 'nonzero' | 'evenodd' | null;
  /** Half the width of the band along the drawn lines; 0 where there is none. */
  readonly reach: number;
}

/** How an area is painted. */
export interface AreaPaint {
  readonly fillRule: Area['fillRule'];
  readonly reach: number;
}

/**
 * What outlines cover when they are filled, drawn with a line, or both.
 *
 * @param paint - `reach` in units of the outlines.
 */
export function areaOf(outlines: readonly Outline[], paint: AreaPaint): Area {
  const drawn: number[] = [];
  const closing: number[] = [];
  for (const { points, closed } of outlines) {
    const last = points.length - 2;
    for (let at = 0; at < last; at += 2) drawn.push(points[at]!, points[at + 1]!, points[at + 2]!, points[at + 3]!);
    if (closed || paint.fillRule !== null) {
      (closed ? drawn : closing).push(points[last]!, points[last + 1]!, points[0]!, points[1]!);
    }
  }
  return { lines: Float64Array.from([...drawn, ...closing]), drawnCount: drawn.length / 4, ...paint };
}

/** The box of all lines, without their bands. */
export function extentOfLines({ lines }: Area): Box {
  let x0 = Infinity;
  let y0 = Infinity;
  let x1 = -Infinity;
  let y1 = -Infinity;
  for (let i = 0; i < lines.length; i += 2) {
    x0 = Math.min(x0, lines[i]!);
    x1 = Math.max(x1, lines[i]!);
    y0 = Math.min(y0, lines[i + 1]!);
    y1 = Math.max(y1, lines[i + 1]!);
  }
  return { x0, y0, x1, y1 };
}
