// Arc lengths against published values and closed forms.
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { pathLength } from '../../../src/geometry/path-length.js';
import published from '../../oracles/geometry/published.json' with { type: 'json' };
import { readPath } from './read-path.js';

const QUARTER = 'M100 0A100 50 0 0 1 0 50';

function expectLength(d: string, length: number, relative: number, matrix: Matrix = IDENTITY): void {
  expect(Math.abs(pathLength(readPath(d), matrix) - length) / length).toBeLessThan(relative);
}

describe('published arc lengths', () => {
  for (const entry of published.arclen) {
    it(`${entry.src}: ${entry.d}`, () => {
      expectLength(entry.d.startsWith('M') ? entry.d : QUARTER, entry.len, 1e-11);
    });
  }
});

describe('a path length', () => {
  it('adds lines and closing lines, not moves', () => {
    expect(pathLength(readPath('M0 0L3 4M10 10h5v5h-5z'), IDENTITY)).toBe(25);
    expect(pathLength(readPath('M0 0L3 4'), [2, 0, 0, 2, 9, 9])).toBe(10);
    expect(pathLength(readPath(''), IDENTITY)).toBe(0);
    expect(pathLength(readPath('M1 1C1 1 1 1 1 1Q1 1 1 1A5 5 0 0 1 1 1Z'), IDENTITY)).toBe(0);
  });

  it('measures whole circles and ellipses', () => {
    expectLength('M10 0A10 10 0 0 1-10 0A10 10 0 0 1 10 0', 20 * Math.PI, 1e-14);
    expectLength('M100 0A100 50 0 1 1 0-50', 0.75 * 484.4224110273842, 1e-13);
    expectLength('M1 0A1 1 0 0 1-1 0A1 1 0 0 1 1 0', 484.4224110273842, 1e-13, [100, 0, 0, 50, 3, 4]);
  });

  it('measures what a matrix makes flat, there and back', () => {
    expectLength('M10 0A10 10 0 0 1-10 0A10 10 0 0 1 10 0', 40, 1e-13, [1, 0, 0, 0, 0, 0]);
    expectLength('M0 0C0 10 10 10 10 0', 15, 1e-13, [0, 0, 0, 1, 0, 0]);
  });

  // Closed form: x = t^2, y = t^3 from -1 to 1 is the semicubical parabola, of length 2 (13 sqrt(13) - 8) / 27.
  it('measures lines that turn back anywhere, to the last digits', () => {
    for (const turn of [0.05, 0.13, 0.31, 0.5, 0.77, 0.96]) {
      // x' = t - turn: length (turn^2 + (1 - turn)^2) / 2, here 500 times as long and along (3, 4).
      const steps = [-turn, 0.5 - turn, 1 - turn].map((step) => (100 * step) / 3);
      const points = [0, steps[0]!, steps[0]! + steps[1]!, steps[0]! + steps[1]! + steps[2]!];
      const [start, ...rest] = points.map((x) => `${3 * x} ${4 * x}`);
      expectLength(`M${start}C${rest.join(' ')}`, 250 * (turn * turn + (1 - turn) * (1 - turn)), 1e-12);
      expectLength(`M${rest[2]}C${rest[1]} ${rest[0]} ${start}`, 250 * (turn * turn + (1 - turn) * (1 - turn)), 1e-12);
    }
  });

  it('measures ellipses as flat as needles, turned any way', () => {
    for (let degrees = 0; degrees < 180; degrees += 13) {
      const [x, y] = [100 * Math.cos((degrees * Math.PI) / 180), 100 * Math.sin((degrees * Math.PI) / 180)];
      const half = `A100 1e-5 ${degrees} 0 1`;
      expectLength(`M${x} ${y}${half} ${-x} ${-y}${half} ${x} ${y}`, 400, 1e-12);
    }
  });

  it('measures a true cusp', () => {
    expectLength('M1-1C-0.3333333333333333 1-0.3333333333333333-1 1 1', (2 * (13 * Math.sqrt(13) - 8)) / 27, 1e-12);
  });
});

/** Closed form of the length of a quadratic whose velocity is (px, py) + t (qx, qy). */
function quadraticLength(px: number, py: number, qx: number, qy: number): number {
  const bend = Math.hypot(qx, qy);
  // Along the axis u runs the velocity, at a right angle to it is h.
  const height = Math.abs(px * qy - py * qx) / bend;
  const primitive = (u: number): number => (u * Math.hypot(u, height) + height * height * Math.asinh(u / height)) / 2;
  const start = (px * qx + py * qy) / bend;
  return (primitive(start + bend) - primitive(start)) / bend;
}

describe('every segment, by a closed form', () => {
  it('is measured from where the one before it ends', () => {
    // 3, 4, 5, 3, 1, and back by (7, 9).
    const d = 'M0 0h3A0 1 0 0 1 3 4C3 4 3 4 3 9Q3 9 6 9l1 0Z';
    expectLength(d, 16 + Math.hypot(7, 9), 1e-12);
    expectLength(d.replace('M0 0', 'M-50 20').replace(/A0 1 0 0 1 3 4.*/, 'Z'), 6, 1e-14);
    expectLength(`M5 5${'h1v1'.repeat(3)}a2 2 0 0 1 4 0h1`, 7 + 2 * Math.PI, 1e-13);
    expectLength('M0 0A2 2 0 0 1 4 0C4 0 4 0 4 3Q4 3 4 7h2', 2 * Math.PI + 9, 1e-12);
  });

  it('is closed to the start of its own subpath', () => {
    expect(pathLength(readPath('M0 0h3v4ZM10 20h6v8Z'), IDENTITY)).toBe(36);
    expect(pathLength(readPath('M1 1h3v4Zl0 5'), IDENTITY)).toBe(17);
  });

  it('is mapped by all of the matrix but where it puts things', () => {
    const matrix: Matrix = [1, 2, 3, 4, 500, -600];
    expectLength('M7 7l1 1', Math.sqrt(52), 1e-14, matrix);
    expectLength('M0 0h1v1Z', Math.hypot(1, 2) + 5 + Math.hypot(4, 6), 1e-14, matrix);
    expectLength('M2 3A0 9 0 0 1 4 4', Math.hypot(2 + 3, 4 + 4), 1e-14, matrix);
  });

  it.each([
    [1, 0, 0, 1, 0, 0],
    [2, 0.5, -0.25, 3, 9, 9],
    [0, 1, -1, 0, 0, 0],
    [1, 2, 3, 4, 5, 6],
  ])('quadratics under %d %d %d %d %d %d', (a, b, c, d, e, f) => {
    const matrix: Matrix = [a, b, c, d, e, f];
    for (const [x1, y1, x2, y2] of [
      [0.5, 0, 1, 1],
      [3, 8, 10, -2],
      [-4, 1, 6, 6],
    ] as const) {
      const map = (x: number, y: number): readonly [number, number] => [a * x + c * y, b * x + d * y];
      const [px, py] = map(2 * x1, 2 * y1);
      const [qx, qy] = map(2 * (x2 - 2 * x1), 2 * (y2 - 2 * y1));
      const length = quadraticLength(px, py, qx, qy);
      expectLength(`M0 0Q${x1} ${y1} ${x2} ${y2}`, length, 1e-12, matrix);
      const cubic = [(2 * x1) / 3, (2 * y1) / 3, (x2 + 2 * x1) / 3, (y2 + 2 * y1) / 3, x2, y2];
      expectLength(`M0 0C${cubic.join(' ')}`, length, 1e-12, matrix);
    }
    expectLength('M0 0Q.5 0 1 1', Math.sqrt(5) / 2 + Math.asinh(2) / 4, 1e-13);
  });
});
