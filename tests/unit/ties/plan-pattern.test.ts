// A whole number of cuts from end to end, and no tie in a zone.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stretch } from '../../../src/geometry/write-stretch.js';
import { type Pattern, planPattern } from '../../../src/ties/plan-pattern.js';

const pattern = (startsWith: 'cut' | 'tie' = 'cut', endsWith: 'cut' | 'tie' = 'cut'): Pattern => ({
  cut: 10,
  tie: 1,
  startsWith,
  endsWith,
});

function lengths(ties: readonly Stretch[]): readonly number[] {
  return ties.map(([from, to]) => Number((to - from).toFixed(9)));
}

describe('a pattern along a line', () => {
  it('fits as it is where the line is made for it', () => {
    // Ten cuts of 10 and nine ties of 1.
    const { ties, factor } = planPattern(109, false, [], pattern());
    expect(factor).toBe(1);
    expect(ties).toHaveLength(9);
    expect(ties[0]).toEqual([10, 11]);
    expect(ties.at(-1)).toEqual([98, 99]);
  });

  it('starts and ends as asked', () => {
    expect(planPattern(22, false, [], pattern('cut', 'tie')).ties).toEqual([
      [10, 11],
      [21, 22],
    ]);
    expect(planPattern(22, false, [], pattern('tie', 'cut')).ties).toEqual([
      [0, 1],
      [11, 12],
    ]);
    expect(planPattern(23, false, [], pattern('tie', 'tie')).ties).toEqual([
      [0, 1],
      [11, 12],
      [22, 23],
    ]);
  });

  it('is stretched as a whole, up or down, whichever is less', () => {
    const wide = planPattern(111, false, [], pattern());
    expect(wide.factor).toBeCloseTo(111 / 109, 12);
    expect(lengths(wide.ties)[0]).toBeCloseTo(111 / 109, 9);
    // Ten cuts would be pressed by 5.5 %, nine stretched by 5.1 %.
    expect(planPattern(103, false, [], pattern()).factor).toBeCloseTo(103 / 98, 12);
    expect(planPattern(104, false, [], pattern()).factor).toBeCloseTo(104 / 109, 12);
  });

  it('goes round a closed line with a cut over its start', () => {
    const { ties, factor } = planPattern(110, true, [], pattern());
    expect(factor).toBe(1);
    expect(ties).toHaveLength(10);
    expect(ties[0]).toEqual([5, 6]);
    expect(ties.at(-1)).toEqual([104, 105]);
  });

  it('begins and ends with a tie beside a zone, which is cut', () => {
    const { ties } = planPattern(44 + 11, false, [[22, 33]], pattern());
    expect(ties).toEqual([
      [10, 11],
      [21, 22],
      [33, 34],
      [44, 45],
    ]);
  });

  it('joins what is left before and behind the start of a closed line', () => {
    const { ties, factor } = planPattern(100, true, [[30, 88]], pattern());
    // 42 mm from 88 over the start to 30: four ties and three cuts would be 34, five and four 45.
    expect(factor).toBeCloseTo(42 / 45, 12);
    expect(ties).toHaveLength(5);
    expect(ties[0]![0]).toBe(88);
    expect(ties.at(-1)![1]).toBeCloseTo(130, 9);
  });

  it('puts one tie in the middle where there is room for no more, and none where there is room for none', () => {
    expect(
      planPattern(
        24,
        false,
        [
          [0, 10],
          [14, 24],
        ],
        pattern(),
      ).ties,
    ).toEqual([[11.5, 12.5]]);
    expect(
      planPattern(
        20.5,
        false,
        [
          [0, 10],
          [10.5, 20.5],
        ],
        pattern(),
      ).ties,
    ).toEqual([]);
    expect(planPattern(5, false, [], pattern())).toEqual({ ties: [], factor: 1 });
  });

  it('keeps out of zones, in order, and is stretched by no more than half a cut and tie in any case', () => {
    const zones = fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 40 })), {
      maxLength: 4,
    });
    fc.assert(
      fc.property(zones, fc.integer({ min: 30, max: 220 }), fc.boolean(), (drawn, length, closed) => {
        const sorted = [...drawn].sort((a, b) => a[0] - b[0]);
        const cut: Stretch[] = [];
        for (const [from, size] of sorted) {
          const start = Math.max(from, (cut.at(-1)?.[1] ?? -1) + 1);
          if (start < length) cut.push([start, Math.min(length, start + size)]);
        }
        const { ties } = planPattern(length, closed, cut, pattern());
        let at = -Infinity;
        for (const [from, to] of ties) {
          expect(from).toBeGreaterThanOrEqual(at - 1e-9);
          expect(to - from).toBeGreaterThan(0.5);
          for (const [a, b] of cut) {
            for (const turn of [0, length]) {
              expect(Math.min(to, b + turn) - Math.max(from, a + turn)).toBeLessThan(1e-9);
            }
          }
          at = to;
        }
        if (closed && ties.length > 0) expect(ties.at(-1)![1] - length).toBeLessThanOrEqual(ties[0]![0] + 1e-9);
      }),
      { seed: 21, numRuns: 300 },
    );
  });
});
