// Parts cut up into cells and joined again.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipRings } from '../../../src/geometry/clip-rings.js';
import { joinParts } from '../../../src/geometry/join-parts.js';
import {
  fillRings,
  type GridLine,
  growRegion,
  type Region,
  regionArea,
  splitRegion,
  subtractRegion,
} from '../../../src/geometry/region.js';
import { seedChance } from './seed-chance.js';

const SIDE = 100_000;

function square(x: number, y: number, side: number): GridLine {
  return [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ];
}

/** Cells of a region in rows and columns. */
function cutUp(region: Region, rows: number): Parameters<typeof joinParts>[0] {
  const cells = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < rows; column += 1) {
      const edge = (at: number): number => Math.round(((at * SIDE) / rows) * 1.6 - 0.1 * SIDE);
      const box = { x0: edge(column), y0: edge(row), x1: edge(column + 1), y1: edge(row + 1) };
      cells.push({ box, parts: splitRegion(clipRings(region, box)) });
    }
  }
  return cells;
}

/** Squares, upright, with holes and islands in some. */
function drawSquares(seed: number, slanting: boolean): Region {
  const next = seedChance(seed);
  const rings: GridLine[] = [];
  for (let count = 3 + Math.floor(next() * 12); count > 0; count -= 1) {
    const [x, y, side] = [next() * SIDE * 0.8, next() * SIDE * 0.8, next() * SIDE * 0.4].map(Math.round) as [
      number,
      number,
      number,
    ];
    const ring = square(x, y, side + 10);
    rings.push(slanting ? ring.map((point) => ({ x: point.x + Math.round(point.y / 7), y: point.y })) : ring);
  }
  return fillRings(rings, 'evenodd');
}

describe('joinParts', () => {
  it('gives back what was cut up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 7 }), (seed, rows) => {
        const region = drawSquares(seed, false);
        const joined = joinParts(cutUp(region, rows));
        const whole = splitRegion(region);
        const sort = (areas: readonly number[]): readonly number[] => areas.toSorted((a, b) => a - b);
        // Parts that touch in a corner only may hang together there or not.
        expect(joined.reduce((sum, { area }) => sum + area, 0)).toBe(regionArea(region));
        // What lies within 2 units of a border may be put on it.
        for (const { region: part, area } of joined) expect(Math.abs(regionArea(part) - area)).toBeLessThan(20 * SIDE);
        const together = joined.flatMap(({ region: part }) => part);
        expect(regionArea(subtractRegion(region, growRegion(together, 3)))).toBe(0);
        const [one, other] = [sort(joined.map(({ area }) => area)), sort(whole.map(regionArea))];
        expect(one.at(-1)!).toBeLessThanOrEqual(other.at(-1)!);
      }),
      { numRuns: 60 },
    );
  });

  it('joins slanting parts with corners that rounding has moved', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const region = drawSquares(seed, true);
      const joined = joinParts(cutUp(region, 5)).flatMap(({ region: part }) => part);
      expect(regionArea(subtractRegion(region, growRegion(joined, 2)))).toBe(0);
      expect(regionArea(subtractRegion(joined, growRegion(region, 2)))).toBe(0);
    }
  });

  it('makes one ring of a frame, and one of its window, without the corners at the borders', () => {
    const frame: Region = [square(0, 0, SIDE), square(20_000, 20_000, 60_000).toReversed()];
    const joined = joinParts(cutUp(frame, 6));
    expect(joined.length).toBe(1);
    expect(joined[0]!.region.map((ring) => ring.length)).toEqual([4, 4]);
    expect(joined[0]!.area).toBe(SIDE * SIDE - 60_000 * 60_000);
    expect(joined[0]!.pieces.length).toBeGreaterThan(8);
  });

  it('keeps parts apart that meet a border beside each other', () => {
    const [left, right] = [square(0, 0, 49_000), square(51_000, 30_000, 20_000)];
    const box = { x0: 0, y0: 0, x1: 50_000, y1: SIDE };
    const beside = { x0: 50_000, y0: 0, x1: SIDE, y1: SIDE };
    const joined = joinParts([
      { box, parts: [[left]] },
      { box: beside, parts: [[right]] },
    ]);
    expect(joined.map(({ pieces }) => pieces.length)).toEqual([1, 1]);
  });
});
