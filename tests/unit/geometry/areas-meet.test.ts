// Whether two areas share more than a hair.
import { describe, expect, it } from 'vitest';
import { type Area, areaOf } from '../../../src/geometry/area.js';
import { areaMeetsBox, areasMeet as areasMeetWithin } from '../../../src/geometry/areas-meet.js';
import { type Box, EMPTY_BOX } from '../../../src/geometry/box.js';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { readPath } from './read-path.js';

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
