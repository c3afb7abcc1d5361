// Bleed looked at cell by cell finds the same parts as bleed looked at all at once.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findMissingBleed } from '../../../src/check/bleed-band.js';
import type { Ply } from '../../../src/check/printed-region.js';
import {
  fillRings,
  type GridLine,
  growRegion,
  type Region,
  regionArea,
  subtractRegion,
} from '../../../src/geometry/region.js';
import { seedChance } from '../geometry/seed-chance.js';

const LENGTHS = { bleed: 30_000, touch: 5_000 };
/** 0.1 mm2 on the grid: a line of a few grid units, whose ends are rounded, may turn the end of its band by as much. */
const SMALL = 1e7;

const WHOLE = { atOnce: Infinity, inAll: Infinity };

interface Sheet {
  readonly blank: readonly GridLine[];
  readonly plies: readonly Ply[];
}

/** Labels of a few corners each in rows, turned as a whole, each with print that ends inside, at, or beyond its edge. */
function drawLabels(seed: number, rows: number, turn: number): Sheet {
  const next = seedChance(seed);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const place = (x: number, y: number): { x: number; y: number } => ({
    x: Math.round(x * cos - y * sin) + 0,
    y: Math.round(x * sin + y * cos) + 0,
  });
  const blank: GridLine[] = [];
  const plies: Ply[] = [];
  const pitch = 100_000 + Math.floor(next() * 120_000);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < rows; column += 1) {
      const corners = 3 + Math.floor(next() * 5);
      const reach = pitch * (0.3 + 0.15 * next());
      const ring = Array.from({ length: corners }, (_, at) => {
        const angle = (2 * Math.PI * (at + 0.6 * next())) / corners;
        return place(column * pitch + reach * Math.cos(angle), row * pitch + reach * Math.sin(angle));
      });
      const label: Region = fillRings([ring], 'nonzero');
      blank.push(...label);
      if (next() < 0.85) plies.push({ ink: 'ink', region: growRegion(label, Math.round((next() - 0.4) * 60_000)) });
      if (next() < 0.2) plies.push({ ink: 'white', region: growRegion(label, Math.round(-20_000 * next())) });
    }
  }
  return { blank, plies: plies.filter(({ region }) => region.length > 0) };
}

/** The same sheet as holes of one blank. */
function turnOut({ blank, plies }: Sheet): Sheet {
  const far = 4_000_000;
  const outer: GridLine = [
    { x: -far, y: -far },
    { x: far, y: -far },
    { x: far, y: far },
    { x: -far, y: far },
  ];
  const all: Ply = { ink: 'ink', region: [outer] };
  return { blank: [outer, ...blank.map((ring) => ring.toReversed())], plies: [all, ...plies] };
}

function regionOf({ blank, plies }: Sheet, mostPoints: number): Region {
  return findMissingBleed(blank, plies, LENGTHS, { atOnce: mostPoints, inAll: Infinity })!.flatMap(
    ({ region }) => region,
  );
}

const wishes = fc.record({
  seed: fc.integer({ min: 1, max: 1e9 }),
  rows: fc.integer({ min: 3, max: 6 }),
  turn: fc.constantFrom(0, Math.PI / 2, 0.1, 1, 2.5),
  holes: fc.boolean(),
  mostPoints: fc.constantFrom(10, 60, 200),
});

describe('findMissingBleed', () => {
  it('finds in cells what it finds at once', () => {
    let found = 0;
    fc.assert(
      fc.property(wishes, ({ seed, rows, turn, holes, mostPoints }) => {
        const labels = drawLabels(seed, rows, turn);
        const drawn = holes ? turnOut(labels) : labels;
        const [whole, celled] = [regionOf(drawn, Infinity), regionOf(drawn, mostPoints)];
        found += regionArea(whole);
        expect(regionArea(subtractRegion(whole, celled))).toBeLessThan(SMALL);
        expect(regionArea(subtractRegion(celled, whole))).toBeLessThan(SMALL);
      }),
      { numRuns: 12 },
    );
    expect(found).toBeGreaterThan(1e10);
  });

  it('tells as many parts apart in cells as at once', () => {
    let parts = 0;
    for (const seed of [1, 2, 3]) {
      const drawn = drawLabels(seed, 5, 0);
      const [whole, celled] = [Infinity, 40].map(
        (most) => findMissingBleed(drawn.blank, drawn.plies, LENGTHS, { atOnce: most, inAll: Infinity })!,
      );
      const listAreas = (list: typeof whole): readonly number[] =>
        list!.map(({ area }) => area / 1e8).sort((a, b) => a - b);
      parts += whole!.length;
      expect(celled!.length).toBe(whole!.length);
      for (const [at, area] of listAreas(whole).entries()) expect(listAreas(celled)[at]).toBeCloseTo(area, 1);
    }
    expect(parts).toBeGreaterThan(8);
  });

  it('joins a fault that runs through many cells into one', () => {
    const side = 3_000_000;
    const ring: GridLine = [
      { x: 0, y: 0 },
      { x: side, y: 0 },
      { x: side, y: side },
      { x: 0, y: side },
    ];
    const flush = { blank: [ring], plies: [{ ink: 'ink', region: [ring] } as const] };
    const whole = findMissingBleed(flush.blank, flush.plies, LENGTHS, WHOLE)!;
    const celled = findMissingBleed(flush.blank, flush.plies, LENGTHS, { atOnce: 4, inAll: Infinity })!;
    expect(whole.length).toBe(1);
    expect(celled.length).toBe(1);
    expect(celled[0]!.pieces.length).toBeGreaterThan(20);
    expect(celled[0]!.area).toBeCloseTo(whole[0]!.area, 0);
    // Borders leave no corners behind: the outer ring has its four sides and the rounding of its four corners.
    expect(celled[0]!.region.map((one) => one.length)).toEqual(whole[0]!.region.map((one) => one.length));
  });

  it('leaves out what has its bleed, and nothing beside it', () => {
    const at = (x: number, side: number): GridLine => [
      { x, y: 0 },
      { x: x + side, y: 0 },
      { x: x + side, y: side },
      { x, y: side },
    ];
    const [bled, flush] = [at(0, 200_000), at(250_000, 200_000)];
    const print: readonly Ply[] = [
      {
        ink: 'ink',
        region: [
          at(0, 200_000).map(({ x, y }) => ({ x: x === 0 ? -40_000 : 240_000, y: y === 0 ? -40_000 : 240_000 })),
        ],
      },
      { ink: 'ink', region: [flush] },
    ];
    const white: Ply = { ink: 'white', region: [at(-20_000, 15_000)] };
    const [whole, celled] = [WHOLE, { atOnce: 4, inAll: Infinity }].map((most) =>
      [print, [...print, white], [white, ...print]].map((plies) =>
        findMissingBleed([bled, flush], plies, LENGTHS, most)!
          .map(({ area }) => area / 1e8)
          .sort((a, b) => a - b),
      ),
    );
    expect(whole!.map((areas) => areas.length)).toEqual([1, 2, 1]);
    for (const [place, areas] of whole!.entries()) {
      for (const [part, area] of areas.entries()) expect(celled![place]![part]).toBeCloseTo(area, 2);
    }
  });

  it('gives up where the cells hold more points than allowed', () => {
    const { blank, plies } = drawLabels(7, 4, 0);
    expect(findMissingBleed(blank, plies, LENGTHS, { atOnce: 20, inAll: 60 })).toBe(null);
    expect(findMissingBleed(blank, plies, LENGTHS, { atOnce: 20, inAll: 1e6 })).not.toBe(null);
  });
});
