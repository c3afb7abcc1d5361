// Stretches of runs: which parts of which segments, and how they are written, against closed forms.
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { measureRuns } from '../../../src/geometry/path-stretch.js';
import { decimalsFor, partRun, type Stretch, writeStretches } from '../../../src/geometry/write-stretch.js';
import { readPath } from './read-path.js';

function runOf(d: string, matrix: Matrix = IDENTITY) {
  return measureRuns(readPath(d), matrix)[0]!;
}

/** Points of the parts, without what rounding leaves. */
function partsOf(d: string, stretch: Stretch, matrix: Matrix = IDENTITY): readonly (readonly number[])[] {
  return partRun(runOf(d, matrix), matrix, stretch).map(({ points }) =>
    Array.from(points, (value) => Number(value.toFixed(9)) + 0),
  );
}

function write(d: string, stretches: readonly Stretch[], decimals?: number): string {
  return writeStretches(runOf(d), IDENTITY, stretches, decimals);
}

/** A million million long, so that a share of 1e-12 of it, below which a rest is rounding, is 1. */
const LONG = 'M0 0H600000000000V400000000000';
const LONG_CLOSED = 'M0 0H300000000000V200000000000H0Z';

describe('decimals', () => {
  it('are six of a px, by the longer of the two axes', () => {
    const table: readonly (readonly [Matrix, number])[] = [
      [[1, 0, 0, 1, 0, 0], 6],
      [[0.6, 0.8, 0, 0, 0, 0], 6],
      [[0.8, 0.7, 0, 0, 0, 0], 7],
      [[0, 0, 0.8, -0.7, 0, 0], 7],
      [[0.1, 0, 0, 10, 999, 999], 7],
      [[0.1, 0, 0, 10.1, 0, 0], 8],
      [[-10.1, 0, 0, 0.1, 0, 0], 8],
      [[0.1, 0, 0, 0.1, 0, 0], 5],
    ];
    for (const [matrix, decimals] of table) expect(decimalsFor(matrix), String(matrix)).toBe(decimals);
  });

  it('are never fewer than three nor more than fifteen, and six where nothing has a size', () => {
    const scale = (size: number): number => decimalsFor([size, 0, 0, size, 0, 0]);
    expect([0.01, 0.001, 1e-4, 1e-9].map(scale)).toEqual([4, 3, 3, 3]);
    expect([1e8, 1e9, 1e10, 1e12].map(scale)).toEqual([14, 15, 15, 15]);
    expect(scale(0)).toBe(6);
  });

  it('move nothing by more than a millionth of a px', () => {
    for (let step = 0; step < 500; step++) {
      const size = 10 ** (step / 100 - 2);
      const [cos, sin] = [Math.cos(step), Math.sin(step)];
      const [a, b, c, d] = [size * cos, size * sin, size * Math.sin(3 * step), size * Math.cos(7 * step)];
      // A corner of the square in which a rounded point stays.
      const half = 0.5 * 10 ** -decimalsFor([a, b, c, d, 0, 0]);
      const moved = Math.max(Math.hypot(a + c, b + d), Math.hypot(a - c, b - d)) * half;
      expect(moved).toBeLessThanOrEqual(1e-6 * (1 + 1e-12));
    }
  });
});

describe('the segments of a stretch', () => {
  const OPEN = 'M-4 3H6V-5L9-9';
  /** Around are 10 + 6 + 10 + 6. */
  const CLOSED = 'M-4 3H6V9H-4Z';

  it('are those that it passes, cut at its ends', () => {
    expect(partsOf(OPEN, [2, 7])).toEqual([[-2, 3, 3, 3]]);
    expect(partsOf(OPEN, [5, 14])).toEqual([
      [1, 3, 6, 3],
      [6, 3, 6, -1],
    ]);
    expect(partsOf(OPEN, [10, 18])).toEqual([[6, 3, 6, -5]]);
    expect(partsOf(OPEN, [5, 20.5])).toEqual([
      [1, 3, 6, 3],
      [6, 3, 6, -5],
      [6, -5, 7.5, -7],
    ]);
  });

  it('end with an open run, and go on from the start of a closed one, once', () => {
    expect(partsOf(OPEN, [18, 99])).toEqual([[6, -5, 9, -9]]);
    expect(partsOf(OPEN, [-5, 10])).toEqual([[-4, 3, 6, 3]]);
    expect(partsOf(OPEN, [30, 40])).toEqual([]);
    expect(partsOf(CLOSED, [29, 37])).toEqual([
      [-4, 6, -4, 3],
      [-4, 3, 1, 3],
    ]);
    expect(partsOf(CLOSED, [34.5, 44])).toEqual([
      [-1.5, 3, 6, 3],
      [6, 3, 6, 5],
    ]);
    expect(partsOf(CLOSED, [58, 99])).toEqual([[-4, 9, -4, 3]]);
    expect(partsOf(CLOSED, [64, 99])).toEqual([]);
  });

  it('are none of a stretch without length, or back to front', () => {
    expect(partsOf(OPEN, [5, 5])).toEqual([]);
    expect(partsOf(OPEN, [7, 5])).toEqual([]);
    expect(partsOf(CLOSED, [32, 32])).toEqual([]);
  });

  it('are cut by lengths as the matrix has them', () => {
    // x' = 2 y, y' = -3 x: 30, then 12, 30, 12.
    const matrix: Matrix = [0, -3, 2, 0, 7, 8];
    expect(partsOf(CLOSED, [15, 36], matrix)).toEqual([
      [1, 3, 6, 3],
      [6, 3, 6, 6],
    ]);
    expect(partsOf(CLOSED, [78, 96], matrix)).toEqual([
      [-4, 6, -4, 3],
      [-4, 3, 0, 3],
    ]);
  });

  it('leave out what is rounding, up to a share of 1e-12, and no more', () => {
    const second = 6e11;
    expect(partsOf(LONG, [0, second + 1])).toHaveLength(1);
    expect(partsOf(LONG, [0, second + 2])).toHaveLength(2);
    expect(partsOf(LONG, [second - 1, second + 9])).toHaveLength(1);
    expect(partsOf(LONG, [second - 2, second + 9])).toHaveLength(2);
  });

  it('start and end with the segment where they are off it by rounding only', () => {
    const second = 6e11;
    expect(partsOf(LONG, [1, 3e11])[0]![0]).toBe(0);
    expect(partsOf(LONG, [2, 3e11])[0]![0]).toBeCloseTo(2, 3);
    expect(partsOf(LONG, [3e11, second - 1])[0]![2]).toBe(second);
    expect(partsOf(LONG, [3e11, second - 2])[0]![2]).toBeCloseTo(second - 2, 3);
    expect(partsOf(LONG, [second + 1, second + 9])[0]![1]).toBe(0);
    expect(partsOf(LONG, [second + 2, second + 9])[0]![1]).toBeCloseTo(2, 3);
  });
});

describe('written segments', () => {
  // y = x x: a part of a parabola is one whose control lies midway in x, at the product of the ends in y.
  const lengthTo = (x: number): number => (x * Math.sqrt(1 + 4 * x * x)) / 2 + Math.asinh(2 * x) / 4;
  const part: Stretch = [lengthTo(0.25), lengthTo(0.75)];

  it('are lines', () => {
    expect(write('M-4 3H6V-5', [[8, 13]])).toBe('M4 3L6 3L6 0');
  });

  it('are quadratic curves', () => {
    expect(write('M0 0Q.5 0 1 1', [part])).toBe('M0.25 0.0625Q0.5 0.1875 0.75 0.5625');
  });

  it('are cubic curves', () => {
    // The same parabola raised: controls two thirds of the way from the ends to that of the quadratic.
    const third = 1 / 3;
    expect(write(`M0 0C${third} 0 ${2 * third} ${third} 1 1`, [part])).toBe(
      'M0.25 0.0625C0.416667 0.145833 0.583333 0.3125 0.75 0.5625',
    );
  });

  it('are arcs, to whichever side they turn', () => {
    // A quarter of a circle of radius 60 about (3, -7), from 30 to 60 degrees, and back.
    const [near, far] = [30, 51.961524];
    const stretch: Stretch = [10 * Math.PI, 20 * Math.PI];
    expect(write('M63-7A60 60 0 0 1 3 53', [stretch])).toBe(
      `M${far + 3} ${near - 7}A60 60 0 0 1 ${near + 3} ${far - 7}`,
    );
    expect(write('M3 53A60 60 0 0 0 63-7', [stretch])).toBe(
      `M${near + 3} ${far - 7}A60 60 0 0 0 ${far + 3} ${near - 7}`,
    );
  });

  it('are arcs of the ellipse that is drawn, turned as it is written', () => {
    // Half an ellipse of 9 by 4, seen whole in two parts: its top is (0, 4) turned by 90 degrees about the centre (5, 2).
    expect(write('M5 11A9 4 90 0 1 5-7', [[0, 99]])).toBe('M5 11A9 4 90 0 1 1 2A9 4 90 0 1 5 -7');
    // SVG 2, section 9.5.1: radii that cannot reach are scaled up until they do.
    expect(write('M0 0A1 2 0 0 1 10 0', [[0, 99]])).toBe('M0 0A5 10 0 0 1 5 -10A5 10 0 0 1 10 0');
  });

  it('are arcs of no more than a quarter turn each, but for rounding', () => {
    const arcs = (d: string, stretch: Stretch): number => write(d, [stretch]).split('A').length - 1;
    const circle = 'M100 0A100 100 0 1 1 0-100';
    const quarter = 50 * Math.PI;
    expect(arcs(circle, [0, quarter * 0.5])).toBe(1);
    expect(arcs(circle, [7, quarter + 7 + 100 * 0.9e-6])).toBe(1);
    expect(arcs(circle, [7, quarter + 7 + 100 * 1.1e-6])).toBe(2);
    expect(arcs(circle, [0, 2 * quarter])).toBe(2);
    expect(arcs(circle, [0, 3 * quarter])).toBe(3);
    expect(arcs('M0-100A100 100 0 1 0 100 0', [0, 3 * quarter])).toBe(3);
  });

  it('part an arc evenly', () => {
    // Three quarters of a circle of radius 100 about the origin, clockwise on the screen.
    expect(write('M100 0A100 100 0 1 1 0-100', [[0, 999]])).toBe(
      'M100 0A100 100 0 0 1 0 100A100 100 0 0 1 -100 0A100 100 0 0 1 0 -100',
    );
  });

  it('have points of the decimals asked for, and radii and turns of three more', () => {
    const d = `M0 0A${10 / 3} ${10 / 3} 12.3456789 0 1 ${10 / 3} ${10 / 3}`;
    expect(write(d, [[0, 99]], 2)).toBe('M0 0A3.33333 3.33333 12.34568 0 1 3.33 3.33');
    expect(write('M0.123456789 0H1V.987654321', [[0, 99]], 4)).toBe('M0.1235 0L1 0L1 0.9877');
  });

  it('have as many decimals as the matrix asks for, if nothing else does', () => {
    const matrix: Matrix = [100, 0, 0, 100, 0, 0];
    const d = 'M0.0123456789 0.0987654321H1';
    expect(writeStretches(runOf(d, matrix), matrix, [[0, 999]])).toBe('M0.01234568 0.09876543L1 0.09876543');
  });
});

describe('written stretches', () => {
  const CLOSED = 'M-4 3H6V9H-4Z';

  it('are a subpath each, in the order given', () => {
    expect(write(CLOSED, [])).toBe('');
    expect(
      write(CLOSED, [
        [17, 19],
        [1, 3],
        [8, 11],
      ]),
    ).toBe('M5 9L3 9M-3 3L-1 3M4 3L6 3L6 4');
    expect(
      write(CLOSED, [
        [1, 3],
        [4, 4],
        [5, 6],
      ]),
    ).toBe('M-3 3L-1 3M1 3L2 3');
  });

  it('are closed where they are the whole of a closed run, from wherever they start', () => {
    expect(write(CLOSED, [[0, 32]])).toBe('M-4 3L6 3L6 9L-4 9L-4 3Z');
    expect(write(CLOSED, [[4, 36]])).toBe('M0 3L6 3L6 9L-4 9L-4 3L0 3Z');
    expect(write(CLOSED, [[4, 35]])).toBe('M0 3L6 3L6 9L-4 9L-4 3L-1 3');
    expect(write('M-4 3H6V9H-4V3', [[0, 32]])).toBe('M-4 3L6 3L6 9L-4 9L-4 3');
  });

  it('are the whole but for rounding, up to a share of 1e-12', () => {
    const length = 1e12;
    expect(write(LONG_CLOSED, [[0, length - 1]])).toMatch(/Z$/);
    expect(write(LONG_CLOSED, [[0, length - 1.5]])).not.toMatch(/Z/);
    expect(write(LONG_CLOSED, [[5, length + 4]])).toMatch(/Z$/);
    expect(write(LONG_CLOSED, [[5, length + 3.5]])).not.toMatch(/Z/);
  });
});
