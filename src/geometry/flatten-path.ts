// Paths flattened to points: the same points whichever way a curve runs.
import { mapArc, readArc } from './arc.js';
import type { Matrix } from './matrix.js';
import type { Outline } from './outline.js';
import { ARC, CLOSE, CUBIC, LINE, MOVE, type PathData, QUADRATIC } from './path-data.js';

/** Ends nearer than this are one point: rounding of relative coordinates. @unit px */
const SAME_PX = 1e-6;
/** No curve gets more pieces than this. */
const MOST_PIECES = 8192;

interface Run {
  points: number[];
  starts: number[];
  curved: number[];
}

function emptyRun(): Run {
  return { points: [], starts: [], curved: [] };
}

/** How many straight pieces keep within the tolerance of a curve whose second derivative has this bound. */
function countSteps(bend: number, tolerance: number): number {
  const steps = Math.ceil(Math.sqrt(bend / (8 * tolerance)));
  return steps >= 1 ? Math.min(steps, MOST_PIECES) : 1;
}

function addCubic(run: Run, p: readonly number[], tolerance: number): void {
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = p;
  const bend =
    6 * Math.max(Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3));
  const steps = countSteps(bend, tolerance);
  for (let step = 1; step < steps; step += 1) {
    const t = step / steps;
    const s = (steps - step) / steps;
    const a = s * s * s;
    const b = s * s * (3 * t);
    const c = t * t * (3 * s);
    const d = t * t * t;
    // Summed from both ends inwards, so that the reversed curve has the very same points.
    run.points.push(a * x0 + d * x3 + (b * x1 + c * x2), a * y0 + d * y3 + (b * y1 + c * y2));
  }
  run.points.push(x3, y3);
}

function addArc(run: Run, coords: Float64Array, at: number, matrix: Matrix, tolerance: number): void {
  const drawn = readArc(coords, at, coords[at - 2]!, coords[at - 1]!);
  if (drawn !== null) {
    const arc = mapArc(drawn, matrix);
    const reach = Math.hypot(arc.ux, arc.uy, arc.vx, arc.vy);
    const steps = countSteps(Math.min(reach, greatestRadius(arc)) * arc.sweep * arc.sweep, tolerance);
    for (let step = 1; step < steps; step += 1) {
      const angle = arc.start + (arc.sweep * step) / steps;
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      run.points.push(arc.cx + cos * arc.ux + sin * arc.vx, arc.cy + cos * arc.uy + sin * arc.vy);
    }
  }
  addPoint(run, matrix, coords[at + 5]!, coords[at + 6]!);
}

/** The longer half axis of an arc's ellipse: the greater singular value of its two half diameters. */
function greatestRadius(arc: {
  readonly ux: number;
  readonly uy: number;
  readonly vx: number;
  readonly vy: number;
}): number {
  const e = (arc.ux + arc.vy) / 2;
  const f = (arc.ux - arc.vy) / 2;
  const g = (arc.uy + arc.vx) / 2;
  const h = (arc.uy - arc.vx) / 2;
  return Math.hypot(e, h) + Math.hypot(f, g);
}

function addPoint(run: Run, m: Matrix, x: number, y: number): void {
  run.points.push(m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]);
}

function mapAll(matrix: Matrix, points: readonly number[]): readonly number[] {
  const run = emptyRun();
  for (let at = 0; at + 1 < points.length; at += 2) addPoint(run, matrix, points[at]!, points[at + 1]!);
  return run.points;
}

/** Shared by all single straight lines, which are most of a drawing of creases: small arrays of their own cost more than their points. */
const ONE_START = Uint32Array.of(0);
const ONE_STRAIGHT = Uint8Array.of(0);

/** A finished run; null where it has no segment or is not finite. */
function finishRun(run: Run, closed: boolean): Outline | null {
  const { points, starts, curved } = run;
  if (closed && points.length > 2) {
    const dx = points[0]! - points[points.length - 2]!;
    const dy = points[1]! - points[points.length - 1]!;
    if (Math.hypot(dx, dy) <= SAME_PX) {
      points.length -= 2;
    } else {
      starts.push(points.length / 2 - 1);
      curved.push(0);
    }
  }
  if (starts.length === 0 || !points.every(Number.isFinite)) return null;
  const isOneLine = points.length === 4 && starts.length === 1 && curved[0] === 0;
  return {
    closed,
    points: new Float64Array(points),
    starts: isOneLine ? ONE_START : new Uint32Array(starts),
    curved: isOneLine ? ONE_STRAIGHT : new Uint8Array(curved),
  };
}

/**
 * The runs of a path in the target frame of a matrix, curves flattened.
 *
 * Arcs are cut evenly by their own parameter, Béziers evenly by theirs.
 *
 * @param tolerance - Greatest distance between a curve and its chords, in the target frame.
 * @returns One outline per subpath that has a segment; a subpath with a number that is not finite is left out.
 * @throws Never.
 * @accuracy Points on curves within a few units in the last place; chords within `tolerance`, up to 8,192 a segment.
 */
export function flattenPath(path: PathData, matrix: Matrix, tolerance: number): readonly Outline[] {
  const { ops, opCount, coords } = path;
  const outlines: Outline[] = [];
  let run = emptyRun();
  let at = 0;
  const finish = (closed: boolean): void => {
    if (run.points.length === 0) return;
    const outline = finishRun(run, closed);
    if (outline !== null) outlines.push(outline);
    run = emptyRun();
  };
  for (let index = 0; index < opCount; index += 1) {
    const op = ops[index]!;
    if (op === MOVE) {
      finish(false);
      addPoint(run, matrix, coords[at]!, coords[at + 1]!);
      at += 2;
      continue;
    }
    if (op === CLOSE) {
      finish(true);
      continue;
    }
    run.starts.push(run.points.length / 2 - 1);
    run.curved.push(op === LINE ? 0 : 1);
    if (op === LINE) addPoint(run, matrix, coords[at]!, coords[at + 1]!);
    else if (op === ARC) addArc(run, coords, at, matrix, tolerance);
    else addCubic(run, mapAll(matrix, readCubic(coords, at, op === QUADRATIC)), tolerance);
    at += op === CUBIC ? 6 : op === QUADRATIC ? 4 : op === ARC ? 7 : 2;
  }
  finish(false);
  return outlines;
}

/** Start, controls and end of a Bézier as a cubic. */
function readCubic(coords: Float64Array, at: number, isQuadratic: boolean): readonly number[] {
  if (!isQuadratic) return [...coords.subarray(at - 2, at + 6)];
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0] = coords.subarray(at - 2, at + 4);
  const third = (end: number, control: number): number => end + (2 / 3) * (control - end);
  return [x0, y0, third(x0, x1), third(y0, y1), third(x2, x1), third(y2, y1), x2, y2];
}
