// Points of runs by length, against closed forms.
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { measureRuns } from '../../../src/geometry/path-stretch.js';
import { pointOnRun } from '../../../src/geometry/point-on-run.js';
import { readPath } from './read-path.js';

function pointAt(d: string, length: number, matrix: Matrix = IDENTITY): readonly [number, number] {
  const [run] = measureRuns(readPath(d), matrix);
  const { x, y } = pointOnRun(run!, matrix, length);
  return [x, y];
}

function expectPoint([x, y]: readonly [number, number], [wantedX, wantedY]: readonly [number, number]): void {
  expect(x).toBeCloseTo(wantedX, 12);
  expect(y).toBeCloseTo(wantedY, 12);
}

const OPEN = 'M-3 2H7V-4L3-1';
/** Around are 10 + 6 + 10 + 6. */
const CLOSED = 'M-3 2H7V8H-3Z';

describe('a point of a run', () => {
  it('lies on the segment that has run so far', () => {
    expectPoint(pointAt(OPEN, 4), [1, 2]);
    expectPoint(pointAt(OPEN, 10), [7, 2]);
    expectPoint(pointAt(OPEN, 12), [7, 0]);
    expectPoint(pointAt(OPEN, 16), [7, -4]);
    expectPoint(pointAt(OPEN, 18.5), [5, -2.5]);
  });

  it('is an end of an open run at its ends and beyond them', () => {
    expectPoint(pointAt(OPEN, -1), [-3, 2]);
    expectPoint(pointAt(OPEN, 0), [-3, 2]);
    expectPoint(pointAt(OPEN, 21), [3, -1]);
    expectPoint(pointAt(OPEN, 21.5), [3, -1]);
    expectPoint(pointAt(OPEN, 99), [3, -1]);
  });

  it('goes on from the start beyond the end of a closed run', () => {
    expectPoint(pointAt(CLOSED, 30), [-3, 4]);
    expectPoint(pointAt(CLOSED, 32), [-3, 2]);
    expectPoint(pointAt(CLOSED, 33), [-2, 2]);
    expectPoint(pointAt(CLOSED, 45), [7, 5]);
    expectPoint(pointAt(CLOSED, 64), [-3, 2]);
    expectPoint(pointAt(CLOSED, 2 * 32 + 12), [7, 4]);
  });

  it('goes by lengths as the matrix has them', () => {
    // x' = 2 y + 5, y' = -3 x + 1: the first side is 30 long, the second 12.
    const matrix: Matrix = [0, -3, 2, 0, 5, 1];
    expectPoint(pointAt(CLOSED, 15, matrix), [9, -5]);
    expectPoint(pointAt(CLOSED, 34, matrix), [13, -20]);
    expectPoint(pointAt(CLOSED, 84 + 36, matrix), [15, -20]);
  });

  it('parts a circle by angles', () => {
    const circle = 'M53-7A50 50 0 0 1-47-7A50 50 0 0 1 53-7Z';
    for (const turn of [0.1, 0.25, 0.6, 0.95, 1.2, 1.75]) {
      const [x, y] = pointAt(circle, turn * 100 * Math.PI);
      expect(x).toBeCloseTo(3 + 50 * Math.cos(2 * Math.PI * turn), 9);
      expect(y).toBeCloseTo(-7 + 50 * Math.sin(2 * Math.PI * turn), 9);
    }
  });

  it('lies on a parabola where its length says', () => {
    // y = x x; length to x: x sqrt(1 + 4 x x) / 2 + asinh(2 x) / 4.
    for (const x of [0.125, 0.5, 0.75]) {
      const length = (x * Math.sqrt(1 + 4 * x * x)) / 2 + Math.asinh(2 * x) / 4;
      const [px, py] = pointAt('M0 0Q.5 0 1 1', length);
      expect(px).toBeCloseTo(x, 10);
      expect(py).toBeCloseTo(x * x, 10);
    }
  });
});
