// Short ways: all items once, rules kept, never longer than given, and as short as the best of all orders where these can be tried.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { repairOrder, shortenTour, type Tour, tourLength } from '../../../src/sequence/shorten-tour.js';

const spot = fc.record({ x: fc.integer({ min: 0, max: 100 }), y: fc.integer({ min: 0, max: 100 }) });

/** Rules only point from smaller numbers of a shuffled list to larger ones, so that they never go round. */
function tours(most: number): fc.Arbitrary<Tour> {
  return fc.integer({ min: 1, max: most }).chain((count) =>
    fc
      .record({
        entries: fc.array(spot, { minLength: count, maxLength: count }),
        exits: fc.array(spot, { minLength: count, maxLength: count }),
        rank: fc.shuffledSubarray([...Array(count).keys()], { minLength: count }),
        pairs: fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: count }),
      })
      .map(({ entries, exits, rank, pairs }) => {
        const before: number[][] = entries.map(() => []);
        for (const [a, b] of pairs) if (rank[a]! < rank[b]! && !before[b]!.includes(a)) before[b]!.push(a);
        return { entries, exits, from: { x: 0, y: 0 }, before };
      }),
  );
}

function keepsRules(tour: Tour, order: readonly number[]): boolean {
  return tour.before.every((firsts, item) => firsts.every((first) => order.indexOf(first) < order.indexOf(item)));
}

function permute(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length < 2) return [items];
  return items.flatMap((item) => permute(items.filter((other) => other !== item)).map((rest) => [item, ...rest]));
}

describe('a short way', () => {
  it('runs every item once and keeps the rules', () => {
    fc.assert(
      fc.property(tours(30), (tour) => {
        const order = shortenTour(tour);
        expect([...order].sort((a, b) => a - b)).toEqual([...tour.entries.keys()]);
        expect(keepsRules(tour, order)).toBe(true);
        expect(keepsRules(tour, repairOrder(tour))).toBe(true);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('is never longer than the order as given', () => {
    fc.assert(
      fc.property(tours(30), (tour) => {
        const given = repairOrder(tour);
        expect(tourLength(tour, shortenTour(tour))).toBeLessThanOrEqual(tourLength(tour, given) + 1e-9);
      }),
      { seed: 12, numRuns: 200 },
    );
  });

  it('is seldom longer than the best of all orders of six items, and never by half', () => {
    let best = 0;
    let tried = 0;
    fc.assert(
      fc.property(tours(6), (tour) => {
        const orders = permute([...tour.entries.keys()]).filter((order) => keepsRules(tour, order));
        const least = Math.min(...orders.map((order) => tourLength(tour, order)));
        const found = tourLength(tour, shortenTour(tour));
        tried += 1;
        if (found < least + 1e-9) best += 1;
        expect(found).toBeLessThanOrEqual(least * 1.5 + 1e-9);
      }),
      { seed: 13, numRuns: 150 },
    );
    expect(best / tried).toBeGreaterThan(0.8);
  });

  it('goes along a row of holes drawn in any order', () => {
    const xs = [50, 10, 40, 90, 20, 70, 30, 80, 60];
    const spots = xs.map((x) => ({ x, y: 0 }));
    const tour: Tour = { entries: spots, exits: spots, from: { x: 0, y: 0 }, before: xs.map(() => []) };
    expect(shortenTour(tour).map((item) => xs[item])).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90]);
  });

  it('leaves an order alone that has nothing to gain', () => {
    const spots = [1, 2, 3].map((x) => ({ x, y: 0 }));
    expect(shortenTour({ entries: spots, exits: spots, from: { x: 0, y: 0 }, before: [[], [], []] })).toEqual([
      0, 1, 2,
    ]);
  });
});

describe('an order put right', () => {
  it('changes no more than the rules ask for', () => {
    const spots = [1, 2, 3, 4].map((x) => ({ x, y: 0 }));
    const tour: Tour = { entries: spots, exits: spots, from: { x: 0, y: 0 }, before: [[2], [], [], []] };
    expect(repairOrder(tour)).toEqual([2, 0, 1, 3]);
  });
});
