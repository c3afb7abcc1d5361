// Stretches that touch are one place, of one pass and layer.
import { describe, expect, it } from 'vitest';
import type { CheckFacts } from '../../../src/check/check-facts.js';
import { joinPlaces, type LineStretch } from '../../../src/check/join-places.js';
import { pointAlong } from '../../../src/check/point-along.js';
import { dieFacts } from './die-facts.js';

const MM = 96 / 25.4;

/** Places of stretches in mm: lengths and least distances, mm. */
function places(facts: CheckFacts, list: readonly (readonly [number, number, number, number?])[]): readonly unknown[] {
  const stretches = list.map(
    ([line, from, to, distance = 0]): LineStretch => ({
      line,
      from: from * MM,
      to: to * MM,
      distance: distance * MM,
    }),
  );
  return joinPlaces(facts, stretches, 0.02 * MM).map(({ length, distance, at }) =>
    [length, distance, ...at].map((px) => Math.round((px / MM) * 1e6) / 1e6),
  );
}

describe('joinPlaces', () => {
  it('joins along a line', async () => {
    const facts = await dieFacts({ cut: ['M10 10H110'] });
    expect(
      places(facts, [
        [0, 20, 30, 2],
        [0, 10, 20.01, 1],
        [0, 40, 50, 3],
      ]),
    ).toEqual([
      [20, 1, 30, 10],
      [10, 3, 55, 10],
    ]);
    expect(
      places(facts, [
        [0, 10, 50],
        [0, 20, 30],
      ]),
    ).toEqual([[40, 0, 40, 10]]);
  });

  it('joins ends by their distance, not by how far they lie apart across and down', async () => {
    const facts = await dieFacts({ cut: ['M10 10H50', 'M50.018 10.018H90', 'M10 30H50', 'M50.014 30.014H90'] });
    const stretches = [0, 1, 2, 3].map((line): readonly [number, number, number] => [line, 0, 100]);
    expect(places(facts, stretches)).toHaveLength(3);
  });

  it('joins lines end to end, around the start of a closed one too', async () => {
    const facts = await dieFacts({ cut: ['M10 10H110', 'M110 10H150', 'M10 50H30V70H10Z'] });
    expect(
      places(facts, [
        [0, 50, 100],
        [1, 0, 20],
      ]),
    ).toEqual([[70, 0, 85, 10]]);
    expect(
      places(facts, [
        [0, 50, 99.9],
        [1, 0, 20],
      ]),
    ).toHaveLength(2);
    expect(
      places(facts, [
        [2, 0, 10],
        [2, 75, 80],
      ]),
    ).toEqual([[15, 0, 15, 50]]);
  });

  it('keeps passes and layers apart', async () => {
    const facts = await dieFacts({ crease: ['M10 10H60'], cut: ['M60 10H110'] });
    expect(
      places(facts, [
        [0, 0, 50],
        [1, 0, 50],
      ]),
    ).toHaveLength(2);
  });
});

describe('pointAlong', () => {
  it('is where the length ends, within the line', async () => {
    const { toolPieces } = await dieFacts({ cut: ['M5 5H6', 'M10 10H30V40', 'M10 50H30V70H10Z'] });
    const at = (line: number, mm: number): readonly number[] =>
      pointAlong(toolPieces, line, mm * MM).map((px) => Math.round((px / MM) * 1e6) / 1e6);
    expect([at(1, 0), at(1, 20), at(1, 25), at(1, 50)]).toEqual([
      [10, 10],
      [30, 10],
      [30, 15],
      [30, 40],
    ]);
    expect([at(1, -1), at(1, 51), at(2, 75)]).toEqual([
      [10, 10],
      [30, 40],
      [10, 55],
    ]);
  });
});
