// Stretches of runs as path data.
import type { Matrix } from './matrix.js';
import { type MeasuredRun, parameterAt, partSegment, type Segment } from './path-stretch.js';
import { printNumber } from './print-number.js';

/** From and to, as lengths along a run; where the run is closed, `to` may go beyond its end, and on from its start. */
export type Stretch = readonly [number, number];

/** An arc is written in parts of no more than this: near half a turn its centre would hang on the last digits of its ends. */
const MOST_SWEEP = Math.PI / 2 + 1e-6;
/** What is left of a segment below this share of a run is rounding. */
const NOTHING = 1e-12;

/** Decimals of user units with which nothing moves by more than a millionth of a px. */
export function decimalsFor([a, b, c, d]: Matrix): number {
  const scale = Math.max(Math.hypot(a, b), Math.hypot(c, d));
  return Math.min(15, Math.max(3, 6 + Math.ceil(Math.log10(scale > 0 ? scale : 1))));
}

/** The segments of a stretch, in order. */
export function partRun(run: MeasuredRun, matrix: Matrix, [from, to]: Stretch): readonly Segment[] {
  const parts: Segment[] = [];
  const least = NOTHING * run.length;
  // A closed run is gone through twice, so that a stretch may go over its start.
  let at = 0;
  for (let turn = 0; turn < (run.closed ? 2 : 1); turn += 1) {
    for (const segment of run.segments) {
      const start = Math.max(from, at);
      const end = Math.min(to, at + segment.length);
      if (end - start > least) {
        const t0 = start - at <= least ? 0 : parameterAt(segment, matrix, start - at);
        const t1 = at + segment.length - end <= least ? 1 : parameterAt(segment, matrix, end - at);
        parts.push(partSegment(segment, t0, t1));
      }
      at += segment.length;
    }
  }
  return parts;
}

function writeSegment(segment: Segment, decimals: number): string {
  const print = (values: ArrayLike<number>): string =>
    Array.from(values, (value) => printNumber(value, decimals)).join(' ');
  const { kind, points, arc } = segment;
  if (kind === 'line') return `L${print(points.subarray(2))}`;
  if (kind === 'quadratic') return `Q${print(points.subarray(2))}`;
  if (kind === 'cubic') return `C${print(points.subarray(2))}`;
  const count = Math.max(1, Math.ceil(Math.abs(arc!.sweep) / MOST_SWEEP));
  const parts: string[] = [];
  for (let part = 0; part < count; part += 1) {
    const end = partSegment(segment, part / count, (part + 1) / count).points.subarray(2);
    const flags = `0 ${arc!.sweep > 0 ? 1 : 0}`;
    // Radii keep three decimals more: what a short arc is off from its ellipse, they are off.
    const radii = [arc!.rx, arc!.ry].map((radius) => printNumber(radius, decimals + 3)).join(' ');
    parts.push(`A${radii} ${printNumber(arc!.rotation, decimals + 3)} ${flags} ${print(end)}`);
  }
  return parts.join('');
}

/** Stretches of a run as path data, each a subpath of its own. A stretch of the whole of a closed run is closed. */
export function writeStretches(
  run: MeasuredRun,
  matrix: Matrix,
  stretches: readonly Stretch[],
  decimals: number = decimalsFor(matrix),
): string {
  return stretches
    .map((stretch) => {
      const parts = partRun(run, matrix, stretch);
      const first = parts[0];
      if (first === undefined) return '';
      const start = [first.points[0]!, first.points[1]!].map((value) => printNumber(value, decimals)).join(' ');
      const whole = run.closed && stretch[1] - stretch[0] >= run.length * (1 - NOTHING);
      return `M${start}${parts.map((part) => writeSegment(part, decimals)).join('')}${whole ? 'Z' : ''}`;
    })
    .join('');
}
