// The low of a cubic against a fine comb of its values.
import { describe, expect, it } from 'vitest';
import { cubicLow } from '../../../src/geometry/cubic-low.js';
import { seedChance } from './seed-chance.js';

const STEPS = 20_000;

function valueAt([p0, p1, p2, p3]: readonly [number, number, number, number], t: number): number {
  const s = 1 - t;
  return s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3;
}

/** The least value at a step that is lower than both neighbours, or Infinity. */
function combLow(points: readonly [number, number, number, number]): number {
  let low = Infinity;
  let [before, here] = [valueAt(points, 0), valueAt(points, 1 / STEPS)];
  for (let i = 2; i <= STEPS; i++) {
    const after = valueAt(points, i / STEPS);
    if (here < before && here < after) low = Math.min(low, here);
    [before, here] = [here, after];
  }
  return low;
}

describe('the low of a cubic', () => {
  it.each([
    [[0, -3, -3, 0], -2.25],
    [[0, 3, 3, 0], Infinity],
    [[4, 0, 0, 4], 1],
    [[1, 1, 1, 1], Infinity],
    [[0, 1, 2, 3], Infinity],
    [[3, 2, 1, 0], Infinity],
    [[0, 0, 0, 1], Infinity],
    [[1, 0, 0, 0], Infinity],
    [[0, 0, 1, 1], Infinity],
    [[0, -1, 1, 0], (-1 / 6) * Math.sqrt(3)],
    [[0, 1, -1, 0], (-1 / 6) * Math.sqrt(3)],
    [[0, 1, 0, 1], Infinity],
    [[Number.NaN, 1, -1, 0], Infinity],
  ] as const)('%j is %d', (points, low) => {
    const [p0, p1, p2, p3] = points;
    const found = cubicLow(p0, p1, p2, p3);
    if (low === Infinity) expect(found).toBe(Infinity);
    else expect(found).toBeCloseTo(low, 14);
  });

  it('is that of a comb', () => {
    const next = seedChance(5);
    let inside = 0;
    for (let round = 0; round < 40; round++) {
      const points = [next(), next() * 3 - 1, next() * 3 - 1, next()] as const;
      const [found, comb] = [cubicLow(...points), combLow(points)];
      if (comb === Infinity) expect(found).toBe(Infinity);
      else expect(Math.abs(found - comb)).toBeLessThan(1e-7);
      if (comb !== Infinity) inside += 1;
    }
    expect(inside).toBeGreaterThan(8);
    expect(inside).toBeLessThan(36);
  });
});
