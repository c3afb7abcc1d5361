// The index of boxes against a look at each of them.
import { describe, expect, it } from 'vitest';
import { EMPTY_BOX } from '../../../src/geometry/box.js';
import { type BoxIndex, indexBoxes, indexBoxList } from '../../../src/geometry/box-index.js';
import { seedChance } from './seed-chance.js';

type Corners = readonly [number, number, number, number];

/** Boxes on a coarse grid, so that many touch; some are points or lines. */
function scatterBoxes(count: number): readonly Corners[] {
  const chance = seedChance(3);
  const whole = (below: number): number => Math.floor(chance() * below);
  return Array.from({ length: count }, () => {
    const [x0, y0] = [whole(60) - 40, whole(30) - 5];
    return [x0, y0, x0 + whole(5), y0 + whole(9)];
  });
}

/** The places of the boxes that share a point with a box, by looking at each. */
function lookAtAll(boxes: readonly Corners[], [x0, y0, x1, y1]: Corners): readonly number[] {
  return boxes.flatMap(([a0, b0, a1, b1], at) => (a0 <= x1 && x0 <= a1 && b0 <= y1 && y0 <= b1 ? [at] : []));
}

function search(index: BoxIndex, box: Corners): readonly number[] {
  return [...index.search(...box)].sort((a, b) => a - b);
}

/** The places that a look without a list comes by, where none of them suits. */
function lookWithout(index: BoxIndex, box: Corners): readonly number[] {
  const seen: number[] = [];
  const isMet = index.meets(...box, (place) => {
    seen.push(place);
    return false;
  });
  expect(isMet).toBe(false);
  return seen.sort((a, b) => a - b);
}

const EVERYWHERE: Corners = [-1000, -1000, 1000, 1000];

describe('an index of boxes', () => {
  it.each([1, 2, 16, 17, 300])('finds what a look at each of %i finds', (count) => {
    const boxes = scatterBoxes(count);
    const index = indexBoxes(Float64Array.from(boxes.flat()));
    const list = indexBoxList(boxes.map(([x0, y0, x1, y1]) => ({ x0, y0, x1, y1 })));
    for (const asked of [...scatterBoxes(40), EVERYWHERE, [200, 0, 300, 9] as const]) {
      const expected = lookAtAll(boxes, asked);
      expect(search(index, asked)).toEqual(expected);
      expect(search(list, asked)).toEqual(expected);
      expect(lookWithout(index, asked)).toEqual(expected);
      expect(index.meets(...asked)).toBe(expected.length > 0);
      expect(list.meets(...asked)).toBe(expected.length > 0);
    }
  });

  it('meets what suits alone', () => {
    const boxes = scatterBoxes(60);
    const index = indexBoxes(Float64Array.from(boxes.flat()));
    for (const place of [0, 31, 59]) {
      for (const asked of scatterBoxes(40)) {
        const isMet = index.meets(...asked, (found) => found === place);
        expect(isMet).toBe(lookAtAll(boxes, asked).includes(place));
      }
    }
  });

  it('counts a touch on each side, and nothing past it', () => {
    const index = indexBoxes(Float64Array.of(-3, 2, 4, 9));
    const touching: readonly Corners[] = [
      [4, 9, 6, 12],
      [-7, 0, -3, 2],
      [4, 0, 6, 2],
      [-7, 9, -3, 9],
    ];
    for (const asked of touching) {
      expect(index.search(...asked)).toEqual([0]);
      expect(index.meets(...asked)).toBe(true);
    }
    const past: readonly Corners[] = [
      [4.001, 2, 6, 9],
      [-7, 2, -3.001, 9],
      [-3, 9.001, 4, 12],
      [-3, 0, 4, 1.999],
    ];
    for (const asked of past) {
      expect(index.search(...asked)).toEqual([]);
      expect(index.meets(...asked)).toBe(false);
    }
  });

  it('of none finds nothing', () => {
    for (const index of [indexBoxes(Float64Array.of()), indexBoxList([])]) {
      expect(index.search(...EVERYWHERE)).toEqual([]);
      expect(index.meets(...EVERYWHERE)).toBe(false);
    }
  });
});

describe('a box with a number that is not finite', () => {
  const broken = [NaN, Infinity, -Infinity].flatMap((bad) =>
    [0, 1, 2, 3].map((place) => [-3, 2, 4, 9].with(place, bad) as unknown as Corners),
  );
  const wide: readonly Corners[] = [EVERYWHERE, [-Infinity, -Infinity, Infinity, Infinity], [-3, 2, 4, 9]];

  it.each(broken)('is found by nothing, alone: %d %d %d %d', (...box) => {
    const index = indexBoxes(Float64Array.from(box));
    for (const asked of wide) {
      expect(index.search(...asked)).toEqual([]);
      expect(index.meets(...asked)).toBe(false);
    }
  });

  it('is found by nothing among others, which keep their places', () => {
    const finite = scatterBoxes(40);
    const boxes = finite.flatMap((box, at) => [box, broken[at % broken.length]!]);
    const index = indexBoxes(Float64Array.from(boxes.flat()));
    for (const asked of [...wide, ...scatterBoxes(20)]) {
      const expected = lookAtAll(finite, asked).map((at) => 2 * at);
      expect(search(index, asked)).toEqual(expected);
      expect(lookWithout(index, asked)).toEqual(expected);
      expect(index.meets(...asked)).toBe(expected.length > 0);
    }
  });

  it('is the box of nothing, beside one that is searched all around', () => {
    const index = indexBoxList([EMPTY_BOX, { x0: 0, y0: 0, x1: 1, y1: 1 }, EMPTY_BOX]);
    expect(index.search(-1, -1, 2, 2)).toEqual([1]);
  });

  it('is not one of huge numbers, whose sum is not finite', () => {
    expect(indexBoxes(Float64Array.of(1e308, 1e308, 1.5e308, 1.5e308)).search(1e308, 1e308, 1e308, 1e308)).toEqual([0]);
  });
});
