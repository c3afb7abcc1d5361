// Whether two areas share more than a hair.
import { describe, expect, it } from 'vitest';
import { type Area, areaOf } from '../../../src/geometry/area.js';
import { areaMeetsBox, areasMeet as areasMeetWithin } from '../../../src/geometry/areas-meet.js';
import { type Box, EMPTY_BOX } from '../../../src/geometry/box.js';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import type { GridPoint } from '../../../src/geometry/region.js';
import { areaBySweep } from './area-by-sweep.js';
import { readPath } from './read-path.js';
import { seedChance } from './seed-chance.js';

const ENDLESS = { left: Number.POSITIVE_INFINITY };

function areasMeet(a: Area, b: Area, within: Box): boolean {
  return areasMeetWithin(a, b, within, ENDLESS);
}

const PLAIN = { miterlimit: 0, isSquare: false };
const ALL = { x0: -100, y0: -100, x1: 200, y1: 200 };

function fill(d: string, fillRule: 'nonzero' | 'evenodd' = 'nonzero'): Area {
  return areaOf(flattenPath(readPath(d), IDENTITY, 0.01), { ...PLAIN, fillRule, reach: 0 });
}

function line(d: string, reach = 1): Area {
  return areaOf(flattenPath(readPath(d), IDENTITY, 0.01), { ...PLAIN, fillRule: null, reach });
}

const SQUARE = 'M0 0H40V40H0Z';
const RING = 'M0 0H40V40H0ZM10 10H30V30H10Z';

describe('areas that meet', () => {
  it.each([
    ['fills that cross', fill(SQUARE), fill('M20 -10H30V90H20Z')],
    ['a fill within a fill', fill(SQUARE), fill('M10 10H20V20H10Z')],
    ['equal fills', fill(SQUARE), fill(SQUARE)],
    ['fills with one side in common', fill(SQUARE), fill('M0 0H20V40H0Z')],
    ['a line across a fill', fill(SQUARE), line('M-9 20H90')],
    ['a line within a fill', fill(SQUARE), line('M10 20H20')],
    ['a line along a side', fill(SQUARE), line('M0 0H40')],
    ['a line just outside, by half its width', fill(SQUARE), line('M10 -0.9H20')],
    ['a fill on the frame of another', fill('M30 10H50V20H30Z'), line(SQUARE)],
    ['lines that cross', line('M0 0L40 40'), line('M0 40L40 0')],
    ['lines side by side, closer than their width', line('M0 0H40'), line('M0 1.9H40')],
    ['a line and the end of another', line('M0 0H40'), line('M20 1.5V20')],
    ['a fill with an opening, and what stands in the ring', fill(RING, 'evenodd'), fill('M2 2H8V8H2Z')],
    ['an opening that is none, by the other rule', fill(RING), fill('M15 15H20V20H15Z')],
    [
      'a circle and what pokes at its flank',
      fill('M0 20A20 20 0 0 1 40 20A20 20 0 0 1 0 20'),
      fill('M39 19H60V21H39Z'),
    ],
    ['an open path that is filled', fill('M0 0H40V40'), fill('M19 17H22V19H19Z')],
  ])('%s', (_, a, b) => {
    expect(areasMeet(a, b, ALL)).toBe(true);
    expect(areasMeet(b, a, ALL)).toBe(true);
  });
});

describe('areas that keep apart', () => {
  it.each([
    ['fills far off', fill(SQUARE), fill('M50 0H60V9H50Z')],
    ['fills side by side', fill(SQUARE), fill('M40 0H60V40H40Z')],
    ['fills corner to corner', fill(SQUARE), fill('M40 40H60V60H40Z')],
    ['a triangle along a slope', fill('M0 0L40 40H0Z'), fill('M0 0L40 40V0Z')],
    ['a fill within a frame', line(SQUARE), fill('M10 10H30V30H10Z')],
    ['a fill up to the band of a frame', line(SQUARE), fill('M1 1H39V39H1Z')],
    ['a line that ends before a fill', fill(SQUARE), line('M50 20H90')],
    ['a line beside a fill by half its width', fill(SQUARE), line('M0 -1H40')],
    ['what stands in an opening', fill(RING, 'evenodd'), fill('M12 12H28V28H12Z')],
    ['what fills an opening', fill(RING, 'evenodd'), fill('M10 10H30V30H10Z')],
    ['a line in an opening', fill(RING, 'evenodd'), line('M12 20H28')],
    [
      'the corner of a box that a circle leaves free',
      fill('M0 20A20 20 0 0 1 40 20A20 20 0 0 1 0 20'),
      fill('M0 0H5V5H0Z'),
    ],
    ['what is open beyond an open path', fill('M0 0H40V40'), fill('M1 20H9V30H1Z')],
  ])('%s', (_, a, b) => {
    expect(areasMeet(a, b, ALL)).toBe(false);
    expect(areasMeet(b, a, ALL)).toBe(false);
  });
});

describe('the box in which both are seen', () => {
  it('cuts both', () => {
    const [a, b] = [fill('M0 0H40V40H0ZM50 0H90V40H50Z'), fill('M60 10H70V20H60Z')];
    expect(areasMeet(a, b, { x0: 0, y0: 0, x1: 45, y1: 40 })).toBe(false);
    expect(areasMeet(a, b, EMPTY_BOX)).toBe(false);
  });

  it('meets an area where a line or the fill of it lies', () => {
    expect(areaMeetsBox(fill(SQUARE), { x0: 10, y0: 10, x1: 20, y1: 20 }, ENDLESS)).toBe(true);
    expect(areaMeetsBox(line(SQUARE), { x0: 10, y0: 10, x1: 20, y1: 20 }, ENDLESS)).toBe(false);
    expect(areaMeetsBox(line(SQUARE), { x0: 40.5, y0: 10, x1: 50, y1: 20 }, ENDLESS)).toBe(true);
    expect(areaMeetsBox(fill(SQUARE), EMPTY_BOX, ENDLESS)).toBe(false);
  });
});

describe('effort', () => {
  it.each([
    ['fills', fill(SQUARE), fill('M50 0H60V9H50Z')],
    ['lines in an opening', fill(RING, 'evenodd'), line('M12 20H28M12 22H28M12 24H28')],
  ])('is spent on %s, and counts as meeting where none is left', (_, a, b) => {
    const effort = { left: 1000 };
    expect(areasMeetWithin(a, b, ALL, effort)).toBe(false);
    const spent = 1000 - effort.left;
    expect(spent).toBeGreaterThan(10);
    for (let left = 1; left <= spent; left += 1) expect(areasMeetWithin(a, b, ALL, { left })).toBe(true);
    expect(areasMeetWithin(a, b, ALL, { left: spent + 1 })).toBe(false);
  });

  it('is spent on a box', () => {
    const effort = { left: 9 };
    const far = { x0: 90, y0: 90, x1: 99, y1: 99 };
    expect([areaMeetsBox(fill(SQUARE), far, effort), effort.left]).toEqual([false, 1]);
    expect(areaMeetsBox(fill(SQUARE), far, effort)).toBe(true);
  });
});

/** What two areas share that is thinner than this is only touching, px: as the function says of itself. */
const HAIR = 0.025;

/** Whether two areas meet, whichever is asked first. */
function expectMeet(a: Area, b: Area, meet: boolean, words?: string): void {
  expect([areasMeet(a, b, ALL), areasMeet(b, a, ALL)], words).toEqual([meet, meet]);
}

/** A point with whole coordinates. */
function pointFrom(chance: () => number): GridPoint {
  return { x: Math.floor(chance() * 41) - 20, y: Math.floor(chance() * 41) - 20 };
}

/** On which side of a line a point lies: exact, since all coordinates are small whole numbers. */
function turn(a: GridPoint, b: GridPoint, p: GridPoint): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

function distanceToPoint(a: GridPoint, b: GridPoint, p: GridPoint): number {
  const along = (b.x - a.x) * (p.x - a.x) + (b.y - a.y) * (p.y - a.y);
  const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  if (along <= 0) return Math.sqrt((p.x - a.x) ** 2 + (p.y - a.y) ** 2);
  if (along >= square) return Math.sqrt((p.x - b.x) ** 2 + (p.y - b.y) ** 2);
  return Math.abs(turn(a, b, p)) / Math.sqrt(square);
}

/** The distance of two straight lines: between ends and lines, or nought where they cross. */
function distanceOf([a, b]: readonly GridPoint[], [c, d]: readonly GridPoint[]): number {
  const parts = (p: GridPoint, q: GridPoint, r: GridPoint, s: GridPoint): boolean =>
    Math.sign(turn(p, q, r)) * Math.sign(turn(p, q, s)) < 0;
  if (parts(a!, b!, c!, d!) && parts(c!, d!, a!, b!)) return 0;
  return Math.min(
    distanceToPoint(a!, b!, c!),
    distanceToPoint(a!, b!, d!),
    distanceToPoint(c!, d!, a!),
    distanceToPoint(c!, d!, b!),
  );
}

function pathOf(points: readonly GridPoint[]): string {
  return `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}`;
}

/** Lists of random points. */
function* drawPoints(seed: number, rounds: number, counts: readonly number[]): Generator<readonly GridPoint[][]> {
  const chance = seedChance(seed);
  for (let round = 0; round < rounds; round += 1) {
    yield counts.map((count) => Array.from({ length: count }, () => pointFrom(chance)));
  }
}

/** Both answers must come often, or the comparison says nothing. */
function expectBoth(answers: readonly boolean[]): void {
  expect(answers.filter((answer) => answer).length).toBeGreaterThan(40);
  expect(answers.filter((answer) => !answer).length).toBeGreaterThan(40);
}

describe('held against exact distances and areas of whole coordinates', () => {
  it('finds bands that come nearer than both their halves', () => {
    const answers: boolean[] = [];
    for (const [first, second] of drawPoints(11, 600, [2, 2])) {
      const distance = distanceOf(first!, second!);
      for (const [one, other] of [
        [0.5, 1],
        [2, 3.5],
      ] as const) {
        const meet = distance < one + other - HAIR;
        const [a, b] = [line(pathOf(first!), one), line(pathOf(second!), other)];
        expectMeet(a, b, meet, `${pathOf(first!)} ${pathOf(second!)}`);
        answers.push(meet);
      }
    }
    expectBoth(answers);
  });

  it('finds fills that share an area, by either rule', () => {
    const answers: boolean[] = [];
    const holds = { nonzero: (winding: number) => winding !== 0, evenodd: (winding: number) => winding % 2 !== 0 };
    for (const [first, second] of drawPoints(12, 500, [5, 3])) {
      // A fill without an area draws nothing; it is not asked about.
      if (turn(second![0]!, second![1]!, second![2]!) === 0) continue;
      for (const rule of ['nonzero', 'evenodd'] as const) {
        const shared = areaBySweep([first!, second!], ([p, q]) => holds[rule](p!) && q !== 0);
        // Between nothing and this much lie slivers, which may be missed.
        if (shared > 1e-6 && shared < 4) continue;
        const [a, b] = [fill(`${pathOf(first!)}Z`, rule), fill(`${pathOf(second!)}Z`)];
        const meet = shared > 1;
        expectMeet(a, b, meet, `${rule} ${pathOf(first!)} ${pathOf(second!)}`);
        answers.push(meet);
      }
    }
    expectBoth(answers);
  });

  it('finds a band that comes near a fill, or lies in it', () => {
    const answers: boolean[] = [];
    for (const [corners, second] of drawPoints(13, 600, [3, 2])) {
      const [a, b, c] = [corners![0]!, corners![1]!, corners![2]!];
      if (turn(a, b, c) === 0) continue;
      const sides = [
        [a, b],
        [b, c],
        [c, a],
      ];
      const isInside = sides.every(([p, q]) => turn(p!, q!, second![0]!) * turn(a, b, c) > 0);
      const distance = isInside ? 0 : Math.min(...sides.map((side) => distanceOf(side, second!)));
      const meet = distance < 1.5 - HAIR;
      const [area, band] = [fill(`${pathOf(corners!)}Z`), line(pathOf(second!), 1.5)];
      expect(
        [areasMeet(area, band, ALL), areasMeet(band, area, ALL)],
        `${pathOf(corners!)} ${pathOf(second!)}`,
      ).toEqual([meet, meet]);
      answers.push(meet);
    }
    expectBoth(answers);
  });

  it('says that an area keeps away from a box only where it does', () => {
    const answers: boolean[] = [];
    for (const [ends, corners] of drawPoints(14, 600, [2, 2])) {
      const [p, q] = [corners![0]!, corners![1]!];
      const box = { x0: Math.min(p.x, q.x), y0: Math.min(p.y, q.y), x1: Math.max(p.x, q.x), y1: Math.max(p.y, q.y) };
      const at = [
        { x: box.x0, y: box.y0 },
        { x: box.x1, y: box.y0 },
        { x: box.x1, y: box.y1 },
        { x: box.x0, y: box.y1 },
      ];
      const isWithin = ends!.some(({ x, y }) => x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1);
      const distance = isWithin ? 0 : Math.min(...at.map((corner, i) => distanceOf([corner, at[(i + 1) % 4]!], ends!)));
      const meets = areaMeetsBox(line(pathOf(ends!), 1.5), box, ENDLESS);
      if (distance <= 1.5) expect(meets, `${pathOf(ends!)} ${JSON.stringify(box)}`).toBe(true);
      answers.push(meets);
    }
    expectBoth(answers);
  });
});

describe('thin bars', () => {
  it('that cross are found, also where no line across both comes by', () => {
    // They cross near 14.7, 14.7; fifteen lines from y 7 to 22.2 pass at 14.6 and 15.6.
    const rising = fill('M0 0L40 40V40.2L0 0.2Z');
    const falling = fill('M0 22L30 7V7.2L0 22.2Z');
    expectMeet(rising, falling, true);
    const short = fill('M0 22L14 15V15.2L0 22.2Z');
    expectMeet(rising, short, false);
  });
});

describe('a hair', () => {
  it.each([
    ['bands', line('M0 0H40'), (gap: number) => line(`M5 ${2 - gap}H30`)],
    ['a band and a fill', line('M0 0H40'), (gap: number) => fill(`M5 ${1 - gap}H30V9H5Z`)],
    [
      'fills that poke into each other',
      fill('M0 0H40V40H0Z'),
      (gap: number) => fill(`M${40 - gap} 10H60V20H${40 - gap}Z`),
    ],
    ['fills side by side', fill('M0 0H40V40H0Z'), (gap: number) => fill(`M${40 - gap} 0H60V40H${40 - gap}Z`)],
  ])('shared by %s is touching, more is not', (_, a, other) => {
    expectMeet(a, other(0.02), false);
    expectMeet(a, other(0.03), true);
  });
});

describe('the box in which both are seen, side by side', () => {
  const [one, other] = [line('M9 20H11', 0.5), line('M10 18V22', 0.5)];
  it.each([
    ['left', { x0: -9, y0: -9, x1: 8.4, y1: 90 }, { x0: -9, y0: -9, x1: 9.5, y1: 90 }],
    ['right', { x0: 11.6, y0: -9, x1: 90, y1: 90 }, { x0: 10.5, y0: -9, x1: 90, y1: 90 }],
    ['above', { x0: -9, y0: -9, x1: 90, y1: 19.4 }, { x0: -9, y0: -9, x1: 90, y1: 19.5 }],
    ['below', { x0: -9, y0: 20.6, x1: 90, y1: 90 }, { x0: -9, y0: 20.5, x1: 90, y1: 90 }],
  ])('%s of it nothing counts', (_, beyond, touching) => {
    expect([areasMeet(one, other, beyond), areasMeet(other, one, beyond)]).toEqual([false, false]);
    expect([areasMeet(one, other, touching), areasMeet(other, one, touching)]).toEqual([true, true]);
    expect([areaMeetsBox(one, beyond, ENDLESS), areaMeetsBox(one, touching, ENDLESS)]).toEqual([false, true]);
  });
});

describe('what lies in a fill without meeting its lines', () => {
  it('is found in any part of it', () => {
    const inSecond = line('M50 50H60M10 10H20', 0.5);
    expectMeet(fill(SQUARE), inSecond, true);
  });

  it('counts by the fill alone, not by tips of its band', () => {
    const pointed = areaOf(flattenPath(readPath('M0 0H40V40H0Z'), IDENTITY, 0.01), {
      fillRule: 'nonzero',
      reach: 2,
      miterlimit: 10,
      isSquare: false,
    });
    // The corner of the band: 2 beyond on either axis, reached by a mitre and by no round end.
    expect(areasMeet(pointed, line('M41.5 41.9V60', 0.1), ALL)).toBe(true);
    expect(areasMeet(pointed, line('M42.3 42.3V60', 0.1), ALL)).toBe(false);
    expect(areasMeet(pointed, line('M-1.5 -1.9V-60', 0.1), ALL)).toBe(true);
  });

  it('is asked for the start of each of its lines, once', () => {
    const effort = { left: 10_000 };
    expect(areasMeetWithin(fill(RING, 'evenodd'), line('M12 20H28V22H12'), ALL, effort)).toBe(false);
    // Eight lines and three: twice each to find those near the box, each against each, and the eight for the one start.
    expect(10_000 - effort.left).toBe(2 * (8 + 3) + 8 * 3 + 8);
    // Two parts, that end and begin apart, level with each other, and one over the other.
    for (const parts of ['M12 20H28M12 22H28', 'M12 20H18M20 20H28', 'M12 20H18M18 22H28']) {
      const twice = { left: 10_000 };
      expect(areasMeetWithin(line(parts, 0.5), fill(RING, 'evenodd'), ALL, twice)).toBe(false);
      expect(10_000 - twice.left, parts).toBe(2 * (8 + 2) + 8 * 2 + 2 * 8);
    }
  });

  it('is looked for on fifteen lines across two fills', () => {
    const effort = { left: 10_000 };
    expect(areasMeetWithin(fill(SQUARE), fill('M40 0H60V30H40Z'), ALL, effort)).toBe(false);
    expect(10_000 - effort.left).toBe(2 * 8 + 4 * 4 + 15 * 8);
    const apart = { left: 10_000 };
    expect(areasMeetWithin(fill(SQUARE), fill('M300 0H320V30H300Z'), ALL, apart)).toBe(false);
    expect(10_000 - apart.left, 'lines beyond the box are paired with none').toBe(2 * 8 + 15 * 8);
  });
});
