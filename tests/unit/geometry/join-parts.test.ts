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
import { drawRing, fromLeft } from './draw-ring.js';
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

describe('joinParts, ring by ring', () => {
  const LEFT = { x0: 0, y0: 0, x1: 100, y1: 100 };
  const RIGHT = { x0: 100, y0: 0, x1: 200, y1: 100 };

  function rectangle(x0: number, y0: number, x1: number, y1: number): GridLine {
    return drawRing([x0, y0], [x1, y0], [x1, y1], [x0, y1]);
  }

  /** x and y exchanged; the ring then runs the other way, and is turned round. */
  function tip(ring: GridLine): GridLine {
    return ring.map(({ x, y }) => ({ x: y, y: x })).toReversed();
  }

  function tipBox({ x0, y0, x1, y1 }: typeof LEFT): typeof LEFT {
    return { x0: y0, y0: x0, x1: y1, y1: x1 };
  }

  /** What comes of parts in the left and the right cell, side by side and one over the other; both must be alike. */
  function join(left: readonly Region[], right: readonly Region[]): readonly (readonly GridLine[])[] {
    const cells = [
      { box: LEFT, parts: left },
      { box: RIGHT, parts: right },
    ];
    const joined = joinParts(cells).map(({ region }) => region.map(fromLeft));
    const tipped = cells.map(({ box, parts }) => ({ box: tipBox(box), parts: parts.map((part) => part.map(tip)) }));
    expect(joinParts(tipped).map(({ region }) => region.map((ring) => fromLeft(tip(ring))))).toEqual(joined);
    return joined;
  }

  it('leaves the lines of a border that only one side has', () => {
    const cross = drawRing([0, 0], [100, 0], [100, 20], [150, 20], [150, 60], [100, 60], [100, 100], [0, 100]);
    expect(join([[rectangle(0, 0, 100, 100)]], [[rectangle(100, 20, 150, 60)]])).toEqual([[cross]]);
    const wider = drawRing([40, 30], [100, 30], [100, 0], [200, 0], [200, 100], [100, 100], [100, 70], [40, 70]);
    expect(join([[rectangle(40, 30, 100, 70)]], [[rectangle(100, 0, 200, 100)]])).toEqual([[wider]]);
    const stepped = drawRing([0, 0], [100, 0], [100, 30], [200, 30], [200, 90], [100, 90], [100, 60], [0, 60]);
    expect(join([[rectangle(0, 0, 100, 60)]], [[rectangle(100, 30, 200, 90)]])).toEqual([[stepped]]);
  });

  it('joins two parts of a cell by a third beside them', () => {
    const joined = joinParts([
      { box: LEFT, parts: [[rectangle(0, 0, 100, 30)], [rectangle(0, 70, 100, 100)]] },
      { box: RIGHT, parts: [[rectangle(100, 0, 150, 100)]] },
    ]);
    expect(joined).toHaveLength(1);
    const [{ region, area, pieces }] = joined as [(typeof joined)[0]];
    expect(region.map(fromLeft)).toEqual([
      drawRing([0, 0], [150, 0], [150, 100], [0, 100], [0, 70], [100, 70], [100, 30], [0, 30]),
    ]);
    expect(area).toBe(3000 + 3000 + 5000);
    expect(pieces).toEqual([
      { cell: 0, part: 0 },
      { cell: 0, part: 1 },
      { cell: 1, part: 0 },
    ]);
  });

  it('makes a window of two halves, and tells it after the frame', () => {
    const left = drawRing([0, 0], [100, 0], [100, 20], [40, 20], [40, 80], [100, 80], [100, 100], [0, 100]);
    const right = drawRing([100, 0], [200, 0], [200, 100], [100, 100], [100, 80], [160, 80], [160, 20], [100, 20]);
    const window = fromLeft(rectangle(40, 20, 160, 80).toReversed());
    expect(join([[left]], [[right]])).toEqual([[rectangle(0, 0, 200, 100), window]]);
  });

  it('tells the largest of loose rings first, and keeps the order of the others', () => {
    const [outer, hole, second] = [
      rectangle(10, 10, 90, 90),
      rectangle(20, 20, 40, 40).toReversed(),
      rectangle(50, 50, 60, 60).toReversed(),
    ];
    const joined = joinParts([{ box: LEFT, parts: [[hole, outer, second]] }]);
    expect(joined.map(({ region }) => region)).toEqual([[outer, hole, second]]);
    expect(joined[0]!.area).toBe(6400 - 400 - 100);
    expect(joinParts([{ box: LEFT, parts: [[outer, hole]] }])[0]!.region).toEqual([outer, hole]);
  });

  it('does not join what meets at a point of the border alone', () => {
    const joined = join([[rectangle(0, 0, 100, 50)]], [[rectangle(100, 50, 200, 100)]]);
    expect(joined).toEqual([[rectangle(0, 0, 100, 50)], [rectangle(100, 50, 200, 100)]]);
  });

  it.each([
    [2, 1],
    [3, 2],
  ])('puts what lies %d units off a border on it, or not', (off, parts) => {
    expect(join([[rectangle(0, 0, 100 - off, 50)]], [[rectangle(100, 0, 200, 50)]])).toHaveLength(parts);
    expect(join([[rectangle(0, 0, 100, 50)]], [[rectangle(100 + off, 0, 200, 50)]])).toHaveLength(parts);
  });

  it('drops points that fall together on a border, and what has no area there', () => {
    const nibbled = drawRing([0, 0], [99, 0], [100, 1], [100, 50], [0, 50]);
    expect(join([[nibbled]], [[rectangle(100, 0, 200, 50)]])).toEqual([[rectangle(0, 0, 200, 50)]]);
    expect(join([[drawRing([98, 10], [100, 10], [100, 90], [98, 90])]], [])).toEqual([[]]);
  });

  it.each([
    [11, 4],
    [12, 5],
  ])('takes the corner away that rounding made of a straight line at a border: at %d for 10', (y, corners) => {
    const left = drawRing([0, 0], [100, y], [100, 100], [0, 100]);
    const right = drawRing([100, y], [200, 20], [200, 100], [100, 100]);
    const [[ring]] = join([[left]], [[right]]) as [[GridLine]];
    expect(ring).toHaveLength(corners);
  });

  it('keeps corners away from the border however flat they are, unless they lie on the line', () => {
    const left = drawRing([0, 10], [50, 11], [100, 10], [100, 50], [50, 50], [0, 50]);
    const [[ring]] = join([[left]], [[rectangle(100, 10, 200, 50)]]) as [[GridLine]];
    expect(ring).toEqual(drawRing([0, 10], [50, 11], [200, 10], [200, 50], [0, 50]));
  });
});
