// Segments of a path measured and cut at exact lengths: lines, curves parted by de Casteljau, arcs that stay arcs.
import { type Arc, mapArc, readArc } from './arc.js';
import type { Matrix } from './matrix.js';
import { ARC, CLOSE, CUBIC, LINE, MOVE, type PathData, QUADRATIC } from './path-data.js';
import { curveLength, elevate, sweepLength } from './path-length.js';

/** An arc as it is written. */
export interface WrittenArc {
  readonly rx: number;
  readonly ry: number;
  /** Degrees. */
  readonly rotation: number;
}

/** One segment in user units. */
export interface Segment {
  readonly kind: 'line' | 'quadratic' | 'cubic' | 'arc';
  /** Start, controls, end: x, y pairs. Of an arc only start and end. */
  readonly points: Float64Array;
  readonly arc: (Arc & WrittenArc) | null;
}

/** A segment with its length in the target frame of a matrix. */
export interface MeasuredSegment extends Segment {
  readonly length: number;
}

/** One continuous run of a path. */
export interface MeasuredRun {
  /** Closed by Z. */
  readonly closed: boolean;
  /** Segments of some length; the line that closes the run is one of them. */
  readonly segments: readonly MeasuredSegment[];
  readonly length: number;
}

/** A place on a segment: the point, the direction and how it bends, in the target frame. */
export interface SegmentPlace {
  readonly x: number;
  readonly y: number;
  /** Derivative by the parameter. */
  readonly dx: number;
  readonly dy: number;
  /** Radius of the curve there; Infinity on straight lines. */
  readonly radius: number;
}

function sweepOf(arc: Arc, t0: number, t1: number): Arc {
  return { ...arc, start: arc.start + arc.sweep * t0, sweep: arc.sweep * (t1 - t0) };
}

/** The stretch of a Bezier curve of any degree between two parameters, by de Casteljau. */
function partCurve(points: Float64Array, t0: number, t1: number): Float64Array {
  const count = points.length / 2;
  // Blossoming: corner `k` of the part takes t1 in k of the steps and t0 in the others.
  const part = new Float64Array(points.length);
  for (let corner = 0; corner < count; corner += 1) {
    const work = points.slice();
    for (let level = 1; level < count; level += 1) {
      const t = level <= corner ? t1 : t0;
      for (let i = 0; i < 2 * (count - level); i += 1) work[i] = (1 - t) * work[i]! + t * work[i + 2]!;
    }
    part[2 * corner] = work[0]!;
    part[2 * corner + 1] = work[1]!;
  }
  return part;
}

/** The point of a segment at a parameter, in user units; the ends are those written, to the bit. */
function pointOf({ points, arc }: Segment, t: number): readonly [number, number] {
  if (t === 0) return [points[0]!, points[1]!];
  if (t === 1) return [points.at(-2)!, points.at(-1)!];
  if (arc === null) {
    const [x = 0, y = 0] = partCurve(points, t, t);
    return [x, y];
  }
  const angle = arc.start + arc.sweep * t;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [arc.cx + cos * arc.ux + sin * arc.vx, arc.cy + cos * arc.uy + sin * arc.vy];
}

/** The stretch of a segment between two parameters from 0 to 1. */
export function partSegment(segment: Segment, t0: number, t1: number): Segment {
  if (t0 === 0 && t1 === 1) return segment;
  const [x0, y0] = pointOf(segment, t0);
  const [x1, y1] = pointOf(segment, t1);
  if (segment.kind === 'line') return { ...segment, points: Float64Array.of(x0, y0, x1, y1) };
  if (segment.arc !== null) {
    return {
      ...segment,
      points: Float64Array.of(x0, y0, x1, y1),
      arc: { ...segment.arc, ...sweepOf(segment.arc, t0, t1) },
    };
  }
  const points = partCurve(segment.points, t0, t1);
  points.set([x0, y0]);
  points.set([x1, y1], points.length - 2);
  return { ...segment, points };
}

/** The length of a segment in the target frame of a matrix. @accuracy That of `pathLength`. */
export function segmentLength({ points, arc }: Segment, matrix: Matrix): number {
  if (arc !== null) return sweepLength(mapArc(arc, matrix));
  const [a, b, c, d] = matrix;
  if (points.length === 4) {
    const [dx, dy] = [points[2]! - points[0]!, points[3]! - points[1]!];
    return Math.hypot(a * dx + c * dy, b * dx + d * dy);
  }
  return curveLength(matrix, points.length === 6 ? elevate(points) : points);
}

/** First and second derivative of a Bezier curve. */
function derive(points: Float64Array, t: number): readonly [number, number, number, number] {
  const degree = points.length / 2 - 1;
  const hodograph = (from: Float64Array, factor: number): Float64Array => {
    const steps = new Float64Array(Math.max(2, from.length - 2));
    for (let i = 0; i + 2 < from.length; i += 1) steps[i] = factor * (from[i + 2]! - from[i]!);
    return steps;
  };
  const first = hodograph(points, degree);
  const second = degree > 1 ? hodograph(first, degree - 1) : new Float64Array(2);
  const [dx = 0, dy = 0] = partCurve(first, t, t);
  const [ddx = 0, ddy = 0] = partCurve(second, t, t);
  return [dx, dy, ddx, ddy];
}

/** What a segment is like at a parameter. */
export function lookAt(segment: Segment, matrix: Matrix, t: number): SegmentPlace {
  const [a, b, c, d, e, f] = matrix;
  const [px, py] = pointOf(segment, t);
  let [dx, dy, ddx, ddy] = [0, 0, 0, 0];
  if (segment.arc === null) [dx, dy, ddx, ddy] = derive(segment.points, t);
  else {
    const { arc } = segment;
    const angle = arc.start + arc.sweep * t;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    [dx, dy] = [arc.sweep * (cos * arc.vx - sin * arc.ux), arc.sweep * (cos * arc.vy - sin * arc.uy)];
    const square = arc.sweep * arc.sweep;
    [ddx, ddy] = [-square * (cos * arc.ux + sin * arc.vx), -square * (cos * arc.uy + sin * arc.vy)];
  }
  const [ux, uy] = [a * dx + c * dy, b * dx + d * dy];
  const [vx, vy] = [a * ddx + c * ddy, b * ddx + d * ddy];
  const across = Math.abs(ux * vy - uy * vx);
  const speed = Math.hypot(ux, uy);
  const radius =
    segment.kind === 'line' ? Infinity : across > 0 ? (speed * speed * speed) / across : speed > 0 ? Infinity : 0;
  return { x: a * px + c * py + e, y: b * px + d * py + f, dx: ux, dy: uy, radius };
}

/** Error of a length at which the search for its parameter ends, against the length of the segment. */
const LENGTH_SLACK = 1e-13;
const MOST_STEPS = 100;

/**
 * The parameter at which a segment has run a length.
 *
 * @throws Never. Lengths beyond the segment give its ends.
 * @accuracy 1e-10 of the segment's length on the closed forms under test.
 */
export function parameterAt(segment: MeasuredSegment, matrix: Matrix, length: number): number {
  if (!(length > 0)) return 0;
  if (length >= segment.length) return 1;
  let t = length / segment.length;
  if (segment.kind === 'line') return t;
  let [low, high] = [0, 1];
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const error = segmentLength(partSegment(segment, 0, t), matrix) - length;
    if (Math.abs(error) <= LENGTH_SLACK * segment.length) return t;
    if (error > 0) high = t;
    else low = t;
    const { dx, dy } = lookAt(segment, matrix, t);
    const next = t - error / Math.hypot(dx, dy);
    t = next > low && next < high ? next : (low + high) / 2;
    if (high - low < 1e-15) return t;
  }
  return t;
}

/** The runs of a path, measured in the target frame of a matrix. What has no length is left out. */
export function measureRuns(path: PathData, matrix: Matrix): readonly MeasuredRun[] {
  const runs: MeasuredRun[] = [];
  let segments: MeasuredSegment[] = [];
  const finish = (closed: boolean): void => {
    if (segments.length > 0)
      runs.push({ closed, segments, length: segments.reduce((sum, { length }) => sum + length, 0) });
    segments = [];
  };
  const add = (segment: Segment): void => {
    const length = segmentLength(segment, matrix);
    if (length > 0) segments.push({ ...segment, length });
  };
  const { ops, opCount, coords } = path;
  let at = 0;
  let [startX, startY] = [0, 0];
  for (let index = 0; index < opCount; index += 1) {
    const op = ops[index]!;
    const [x, y] = [coords[at - 2]!, coords[at - 1]!];
    const size = op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : op === CLOSE ? 0 : 2;
    const points = Float64Array.of(x, y, ...coords.subarray(at, at + size));
    if (op === MOVE) {
      finish(false);
      [startX, startY] = [coords[at]!, coords[at + 1]!];
    } else if (op === LINE) add({ kind: 'line', points, arc: null });
    else if (op === CUBIC) add({ kind: 'cubic', points, arc: null });
    else if (op === QUADRATIC) add({ kind: 'quadratic', points, arc: null });
    else if (op === CLOSE) {
      add({ kind: 'line', points: Float64Array.of(x, y, startX, startY), arc: null });
      finish(true);
    } else add(readArcSegment(coords, at));
    at += size;
  }
  finish(false);
  return runs;
}

function readArcSegment(coords: Float64Array, at: number): Segment {
  const points = Float64Array.of(coords[at - 2]!, coords[at - 1]!, coords[at + 5]!, coords[at + 6]!);
  const arc = readArc(coords, at, coords[at - 2]!, coords[at - 1]!);
  if (arc === null) return { kind: 'line', points, arc: null };
  // Radii that cannot reach were scaled up: these are the ones that are drawn.
  const written = { rx: Math.hypot(arc.ux, arc.uy), ry: Math.hypot(arc.vx, arc.vy), rotation: coords[at + 2]! };
  return { kind: 'arc', points, arc: { ...arc, ...written } };
}
