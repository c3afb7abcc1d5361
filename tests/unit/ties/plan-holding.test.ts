// Ties that hold: as many as asked, balanced, out of the zones.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stretch } from '../../../src/geometry/write-stretch.js';
import { longestFree, planHolding } from '../../../src/ties/plan-holding.js';

const middles = (ties: readonly Stretch[]): readonly number[] => ties.map(([from, to]) => (from + to) / 2);

describe('ties that hold a piece', () => {
  it('stand evenly on an outline without corners', () => {
    const ties = planHolding({ length: 120, closed: true, zones: [], tie: 0.5, count: 4 });
    const [first, ...others] = middles(ties);
    expect(others.map((middle) => middle - first!)).toEqual([30, 60, 90]);
    for (const [from, to] of ties) expect(to - from).toBeCloseTo(0.5, 12);
    expect(longestFree(120, true, ties)).toBeCloseTo(29.5, 9);
  });

  it('stand in the middles of the sides of a square', () => {
    const zones: Stretch[] = [
      [0, 5],
      [25, 35],
      [55, 65],
      [85, 95],
      [115, 120],
    ];
    expect(middles(planHolding({ length: 120, closed: true, zones, tie: 1, count: 4 }))).toHaveLength(4);
    const ties = planHolding({ length: 120, closed: true, zones, tie: 1, count: 4 });
    expect(longestFree(120, true, ties)).toBeCloseTo(29, 9);
  });

  it('stand in the middles of the sides also where the outline starts in one', () => {
    // A triangle of three sides of 40 that starts in the middle of one.
    const zones: Stretch[] = [
      [15, 25],
      [55, 65],
      [95, 105],
    ];
    const ties = planHolding({ length: 120, closed: true, zones, tie: 1, count: 3 });
    expect(ties.map((tie) => tie.map((at) => Number(at.toFixed(9))))).toEqual([
      [-0.5, 0.5],
      [39.5, 40.5],
      [79.5, 80.5],
    ]);
  });

  it('stand in from the ends of an open outline', () => {
    expect(middles(planHolding({ length: 100, closed: false, zones: [], tie: 1, count: 2 }))).toEqual([25, 75]);
  });

  it('are as many as there is room for', () => {
    const zones: Stretch[] = [
      [0, 49],
      [51, 100],
    ];
    expect(planHolding({ length: 100, closed: false, zones, tie: 1, count: 3 })).toHaveLength(1);
    expect(planHolding({ length: 100, closed: false, zones: [[0, 100]], tie: 1, count: 3 })).toEqual([]);
    expect(planHolding({ length: 100, closed: false, zones: [], tie: 1, count: 0 })).toEqual([]);
  });

  it('keep out of zones and apart from each other', () => {
    const zone = fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 1, max: 20 }));
    fc.assert(
      fc.property(
        fc.array(zone, { maxLength: 6 }),
        fc.integer({ min: 1, max: 9 }),
        fc.boolean(),
        (drawn, count, closed) => {
          const zones: Stretch[] = drawn.map(([from, size]) => [from, Math.min(100, from + size)]);
          const sorted = [...zones].sort((a, b) => a[0] - b[0]);
          const ties = planHolding({ length: 100, closed, zones: sorted, tie: 1, count });
          expect(ties.length).toBeLessThanOrEqual(count);
          for (const [from, to] of ties) {
            for (const [a, b] of zones) {
              for (const turn of [-100, 0, 100])
                expect(Math.min(to, b + turn) - Math.max(from, a + turn)).toBeLessThan(1e-9);
            }
          }
          const found = middles(ties);
          found.forEach((one, i) => {
            for (const other of found.slice(i + 1)) expect(Math.abs(one - other)).toBeGreaterThanOrEqual(3 - 1e-9);
          });
        },
      ),
      { seed: 22, numRuns: 200 },
    );
  });
});

describe('the longest free stretch', () => {
  it('is between two ties, or from the end of an open line', () => {
    const ties: Stretch[] = [
      [10, 11],
      [50, 51],
    ];
    expect(longestFree(100, false, ties)).toBe(49);
    expect(longestFree(100, true, ties)).toBe(59);
    expect(longestFree(100, true, [])).toBe(100);
  });
});
