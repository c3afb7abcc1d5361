// What a shape covers, as lines, so that it can be asked whether two of them meet.
import type { Box } from './box.js';
import type { Outline } from './outline.js';

/** A filled outline, the band along a line, or both. */
export interface Area {
  /** Straight lines as x0, y0, x1, y1, four numbers each: the drawn ones, those that only a fill is closed with, and those to tips of the band. */
  readonly lines: Float64Array;
  /** How many of the lines are drawn. */
  readonly drawnCount: number;
  /** How many go round the fill: those that are drawn and those that close it. */
  readonly roundCount: number;
  /** Null where it is not filled. */
  readonly fillRule: 'nonzero' | 'evenodd' | null;
  /** Half the width of the band along the drawn lines; 0 where there is none. */
  readonly reach: number;
}

/** How an area is painted. */
export interface AreaPaint {
  readonly fillRule: Area['fillRule'];
  readonly reach: number;
  /** Greatest length of a mitre against the width of the band; 0 where corners are not mitred. */
  readonly miterlimit: number;
  /** Whether open ends reach on by half the width. */
  readonly isSquare: boolean;
}

/** A mitre this little longer than the band is wide is no tip: corners of flattened curves. */
const BLUNT = 1.02;

/** The point that is this many pairs on, round and round; pairs that repeat the one before are passed over. */
function stepTo(points: Float64Array, at: number, step: 2 | -2): number {
  const count = points.length;
  let next = at;
  for (let tries = 0; tries < count; tries += 2) {
    next = (next + step + count) % count;
    if (points[next] !== points[at] || points[next + 1] !== points[at + 1]) return next;
  }
  return at;
}

/** Adds a line from a corner towards the tip of its mitre, so that the band around it reaches that far. */
function addTip(tips: number[], points: Float64Array, at: number, paint: AreaPaint): void {
  const before = stepTo(points, at, -2);
  const after = stepTo(points, at, 2);
  const [x, y] = [points[at]!, points[at + 1]!];
  const [inX, inY] = [x - points[before]!, y - points[before + 1]!];
  const [outX, outY] = [points[after]! - x, points[after + 1]! - y];
  const [inLength, outLength] = [Math.hypot(inX, inY), Math.hypot(outX, outY)];
  const [ax, ay] = [inX / inLength, inY / inLength];
  const [bx, by] = [outX / outLength, outY / outLength];
  const ratio = 2 / Math.hypot(ax + bx, ay + by);
  if (!(ratio > BLUNT && ratio <= paint.miterlimit)) return;
  const scale = (paint.reach * (ratio - 1)) / Math.hypot(ax - bx, ay - by);
  tips.push(x, y, x + (ax - bx) * scale, y + (ay - by) * scale);
}

/** Adds a line on from an open end. */
function addCap(tips: number[], points: Float64Array, at: number, paint: AreaPaint): void {
  const inner = stepTo(points, at, at === 0 ? 2 : -2);
  const [x, y] = [points[at]!, points[at + 1]!];
  const [dx, dy] = [x - points[inner]!, y - points[inner + 1]!];
  const length = Math.hypot(dx, dy);
  if (length > 0) tips.push(x, y, x + (dx / length) * paint.reach, y + (dy / length) * paint.reach);
}

function addTips(tips: number[], { points, closed }: Outline, paint: AreaPaint): void {
  const last = points.length - 2;
  const ends = closed ? 0 : 2;
  if (paint.miterlimit > 1) for (let at = ends; at <= last - ends; at += 2) addTip(tips, points, at, paint);
  if (closed || !paint.isSquare) return;
  addCap(tips, points, 0, paint);
  addCap(tips, points, last, paint);
}

/**
 * What outlines cover when they are filled, drawn with a line, or both.
 *
 * @param paint - `reach` in units of the outlines.
 */
export function areaOf(outlines: readonly Outline[], paint: AreaPaint): Area {
  const drawn: number[] = [];
  const closing: number[] = [];
  const tips: number[] = [];
  for (const outline of outlines) {
    const { points, closed } = outline;
    if (paint.reach > 0) addTips(tips, outline, paint);
    const last = points.length - 2;
    for (let at = 0; at < last; at += 2) drawn.push(points[at]!, points[at + 1]!, points[at + 2]!, points[at + 3]!);
    if (closed || paint.fillRule !== null) {
      (closed ? drawn : closing).push(points[last]!, points[last + 1]!, points[0]!, points[1]!);
    }
  }
  const drawnCount = drawn.length / 4;
  return {
    lines: Float64Array.from([...drawn, ...closing, ...tips]),
    drawnCount,
    roundCount: drawnCount + closing.length / 4,
    fillRule: paint.fillRule,
    reach: paint.reach,
  };
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
