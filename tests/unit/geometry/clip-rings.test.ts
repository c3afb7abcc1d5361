// Rings cut at a box, held against the polygon library.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipRings } from '../../../src/geometry/clip-rings.js';
import { fillRings, type GridLine, intersectRegions, regionArea, regionBox } from '../../../src/geometry/region.js';

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
});
