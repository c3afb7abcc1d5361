// Greatest and least factors of matrices against closed forms.
import { describe, expect, it } from 'vitest';
import type { Matrix } from '../../../src/geometry/matrix.js';
import { scalesOf } from '../../../src/geometry/scales.js';
import { seedChance } from './seed-chance.js';

function expectScales(matrix: Matrix, most: number, least: number): void {
  const [found, foundLeast] = scalesOf(matrix);
  expect(found).toBeCloseTo(most, 12);
  expect(foundLeast).toBeCloseTo(least, 12);
}

describe('scalesOf', () => {
  it('is one for what only moves, turns and mirrors', () => {
    expectScales([1, 0, 0, 1, 40, -70], 1, 1);
    expectScales([0.6, 0.8, -0.8, 0.6, 3, 4], 1, 1);
    expectScales([0.6, -0.8, 0.8, 0.6, 3, 4], 1, 1);
    expectScales([0.6, 0.8, 0.8, -0.6, 3, 4], 1, 1);
  });

  it('has the greater factor first, without a sign', () => {
    expectScales([3, 0, 0, 7, 0, 0], 7, 3);
    expectScales([-7, 0, 0, 3, 0, 0], 7, 3);
    expectScales([0, 5, -2, 0, 0, 0], 5, 2);
    expectScales([0, 2, 5, 0, 0, 0], 5, 2);
  });

  // A shear by 1 stretches by the golden ratio and shrinks by its inverse; by k: (sqrt(k^2 + 4) +- k) / 2.
  it('of a shear are those of its ellipse', () => {
    expectScales([1, 0, 1, 1, 0, 0], (Math.sqrt(5) + 1) / 2, (Math.sqrt(5) - 1) / 2);
    expectScales([1, 1, 0, 1, 0, 0], (Math.sqrt(5) + 1) / 2, (Math.sqrt(5) - 1) / 2);
    expectScales([1, 0, -1.5, 1, 0, 0], 2, 0.5);
    expectScales([1, -1.5, 0, 1, 0, 0], 2, 0.5);
  });

  it('has zero for what is pressed flat, and for nothing', () => {
    // A column of length 5 and its double: 5 sqrt(1 + 4).
    expectScales([3, 4, 6, 8, 0, 0], 5 * Math.sqrt(5), 0);
    expectScales([3, 4, -6, -8, 0, 0], 5 * Math.sqrt(5), 0);
    expectScales([0, 0, 0, 0, 9, 9], 0, 0);
  });

  // The squares are the roots of t^2 - (a^2 + b^2 + c^2 + d^2) t + (ad - bc)^2: all exact for small whole numbers but the roots.
  it('is right within a few units in the last place of the greatest', () => {
    const chance = seedChance(5);
    const whole = (): number => Math.floor(chance() * 2001) - 1000;
    for (let run = 0; run < 500; run += 1) {
      const [a, b, c, d] = [whole(), whole(), whole(), whole()];
      const squares = a * a + b * b + c * c + d * d;
      const determinant = Math.abs(a * d - b * c);
      const most = Math.sqrt((squares + Math.sqrt((squares - 2 * determinant) * (squares + 2 * determinant))) / 2);
      const [found, least] = scalesOf([a, b, c, d, 0, 0]);
      const unit = most * Number.EPSILON;
      expect(Math.abs(found - most)).toBeLessThanOrEqual(4 * unit);
      expect(Math.abs(least - determinant / most)).toBeLessThanOrEqual(4 * unit);
    }
  });
});
