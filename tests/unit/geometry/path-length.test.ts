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
