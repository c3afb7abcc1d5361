// A point of a run by its length from the start.
import type { Matrix } from './matrix.js';
import { lookAt, type MeasuredRun, parameterAt } from './path-stretch.js';

/** The point of a run after a length; beyond the end of a closed one it goes on from the start. @unit px */
export function pointOnRun(
  run: MeasuredRun,
  matrix: Matrix,
  length: number,
): { readonly x: number; readonly y: number } {
  let at = run.closed ? length % run.length : length;
  for (const segment of run.segments) {
    if (at <= segment.length) return lookAt(segment, matrix, parameterAt(segment, matrix, at));
    at -= segment.length;
  }
  return lookAt(run.segments.at(-1)!, matrix, 1);
}
