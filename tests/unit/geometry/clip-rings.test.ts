// Rings cut at a box, held against the polygon library.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipRings } from '../../../src/geometry/clip-rings.js';
import { fillRings, type GridLine, intersectRegions, regionArea, regionBox } from '../../../src/geometry/region.js';
import { drawRing, fromLeft } from './draw-ring.js';
import { seedChance } from './seed-chance.js';

const BOX = { x0: 20_000, y0: 30_000, x1: 70_000, y1: 60_000 };
const FRAME: GridLine = [
  { x: 20_000, y: 30_000 },
  { x: 70_000, y: 30_000 },
  { x: 70_000, y: 60_000 },
  { x: 20_000, y: 60_000 },
];

const ring = fc.array(fc.record({ x: fc.integer({ min: 0, max: 100_000 }), y: fc.integer({ min: 0, max: 100_000 }) }), {
  minLength: 3,
  maxLength: 9,
});

describe('clipRings', () => {
  it('keeps what the box holds, however often it is wound around', () => {
    fc.assert(
      fc.property(fc.array(ring, { minLength: 1, maxLength: 3 }), (rings) => {
        for (const rule of ['nonzero', 'evenodd'] as const) {
          const clipped = fillRings(clipRings(rings, BOX), rule);
          const exact = intersectRegions(fillRings(rings, rule), [FRAME]);
          // Each corner moves by half a unit at most, along lines not longer than the box is round.
          expect(Math.abs(regionArea(clipped) - regionArea(exact))).toBeLessThan(160_000 * 27);
          const box = regionBox(clipped);
          expect(box.x0 >= BOX.x0 && box.y0 >= BOX.y0 && box.x1 <= BOX.x1 && box.y1 <= BOX.y1).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('leaves rings within the box as they are, and out what only touches it', () => {
    const within: GridLine = [
      { x: 20_000, y: 30_000 },
      { x: 50_000, y: 30_000 },
      { x: 30_000, y: 50_000 },
    ];
    const beside = within.map(({ x, y }) => ({ x: x - 30_000, y }));
    expect(clipRings([within, beside], BOX)).toEqual([within]);
    expect(clipRings([within], BOX)[0]).toBe(within);
  });

  const SMALL = { x0: 0, y0: 0, x1: 60, y1: 40 };

  it.each([
    ['left', drawRing([-20, 10], [20, 0], [20, 20]), drawRing([0, 5], [20, 0], [20, 20], [0, 15])],
    ['right', drawRing([40, 10], [70, 10], [70, 40]), drawRing([40, 10], [60, 10], [60, 30])],
    ['top', drawRing([10, 10], [20, -10], [40, 10]), drawRing([10, 10], [15, 0], [30, 0], [40, 10])],
    ['bottom', drawRing([10, 30], [40, 30], [10, 60]), drawRing([10, 30], [40, 30], [30, 40], [10, 40])],
  ])('cuts a slanting line at the %s where it meets the side', (_, whole, part) => {
    expect(clipRings([whole], SMALL).map(fromLeft)).toEqual([fromLeft(part)]);
    const back = clipRings([whole.toReversed()], SMALL).map(fromLeft);
    expect(back).toEqual([fromLeft(part.toReversed())]);
  });

  it('rounds the place on a side to the grid, without a minus before nought, and the same from either end', () => {
    const [tip] = clipRings([drawRing([-10, -1], [20, 1], [20, 30])], SMALL);
    // At x = 0 the upper line lies at -1/3.
    expect(tip!.some(({ x, y }) => x === 0 && Object.is(y, 0))).toBe(true);
    expect(tip!.some(({ y }) => Object.is(y, -0))).toBe(false);
    const chance = seedChance(5);
    const whole = (): number => Math.floor(chance() * 4000) - 2000;
    for (let round = 0; round < 3000; round += 1) {
      const line = drawRing([whole(), whole()], [whole(), whole()], [whole(), whole()]);
      const box = { x0: -700, y0: -500, x1: 300, y1: 900 };
      const back = clipRings([line.toReversed()], box).map((one) => fromLeft(one.toReversed()));
      expect(back, JSON.stringify(line)).toEqual(clipRings([line], box).map(fromLeft));
    }
  });

  it.each([
    ['beyond a corner', drawRing([-20, -20], [10, -20], [-20, 10])],
    ['that touches a corner', drawRing([-20, -20], [20, -20], [-20, 20])],
    ['with a side on the left of the box', drawRing([-20, -20], [20, -20], [0, 0], [0, 10], [0, 40], [-20, 40])],
    ['with a side on the top of the box', drawRing([-20, -20], [60, -20], [60, 0], [10, 0], [0, 0], [-20, 20])],
    ['on the right', drawRing([60, 0], [80, 0], [80, 40], [60, 40])],
    ['below', drawRing([0, 40], [60, 40], [60, 60])],
    ['above', drawRing([0, 0], [60, 0], [60, -60])],
  ])('leaves out what lies %s', (_, outside) => {
    expect(clipRings([outside], SMALL)).toEqual([]);
    expect(clipRings([outside.toReversed()], SMALL)).toEqual([]);
  });

  it('repeats no point where a corner lies on a side', () => {
    const [kept] = clipRings([drawRing([0, 10], [20, 0], [40, 0], [60, 10], [60, 50], [0, 50])], SMALL);
    expect(fromLeft(kept!)).toEqual(drawRing([0, 10], [20, 0], [40, 0], [60, 10], [60, 40], [0, 40]));
    const [turned] = clipRings([drawRing([-20, 20], [0, 0], [20, 20], [0, 40])], SMALL);
    expect(fromLeft(turned!)).toEqual(drawRing([0, 0], [20, 20], [0, 40]));
  });
});
