// Ties of dashed outlines, and ties drawn as openings: counts and places by hand.
import { describe, expect, it } from 'vitest';
import { checkTies } from '../../../src/check/check-ties.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { briefly, dieFacts } from './die-facts.js';

async function find(cut: string, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkTies(await dieFacts({ cut: [cut] }, checks)));
}

/** A square of 60 mm from its top left corner on, 240 mm around. */
const square = (dashes: string, offset: number = 0): string =>
  `<path d="M50 50H110V110H50Z" stroke-dasharray="${dashes}" stroke-dashoffset="${offset}"/>`;

describe('ties of a dashed outline', () => {
  it('are two at least', async () => {
    expect(await find(square('119 1', 30))).toEqual([]);
    expect(await find(square('239 1', 30))).toEqual([['ties-few', 1, 1]]);
    expect(await find(square('300 1'))).toEqual([['ties-few', 1, 0]]);
    expect(await find(square('119 1', 30), { leastTies: 3 })).toEqual([['ties-few', 1, 2]]);
  });

  it('are one around the point where the outline starts', async () => {
    // From 239.5 to 240 and from 0 to 0.5 mm, around the start in the middle of a side.
    const start = (offset: number): string =>
      `<path d="M80 50H110V110H50V50Z" stroke-dasharray="239 1" stroke-dashoffset="${offset}"/>`;
    expect(await find(start(-0.5))).toEqual([['ties-few', 1, 1]]);
    expect(await find(start(239.5))).toEqual([['ties-few', 1, 1]]);
    expect(await find(start(100))).toEqual([['ties-few', 1, 1]]);
  });

  it('lie on no corner, and reach none', async () => {
    // Ties from 58.9 to 59.9 mm, 0.1 mm before the corner, and 120 mm further on.
    expect(await find(square('119 1', 60.1))).toEqual([]);
    expect(await find(square('119 1', 60))).toEqual([['tie-at-corner', 2]]);
    expect(await find(square('119 1', 59.5))).toEqual([['tie-at-corner', 2]]);
    expect(await find(square('119 1', 59))).toEqual([['tie-at-corner', 2]]);
    expect(await find(square('119 1', 58.9))).toEqual([]);
    // One around the start.
    expect(await find(square('119 1', -0.5))).toEqual([['tie-at-corner', 2]]);
    expect(await find(square('59 1', -0.5))).toEqual([['tie-at-corner', 4]]);
  });

  it('may lie where the outline turns by no more than 30 degrees', async () => {
    const roof = (rise: number): string =>
      `<path d="M50 50L80 ${50 - rise}L110 50V110H50Z" stroke-dasharray="60 3" stroke-dashoffset="30"/>`;
    // A slope of 1 to 4 turns by 28 degrees, one of 3 to 10 by 33.
    expect(await find(roof(7.5))).toEqual([]);
    expect(await find(roof(9))).toEqual([['tie-at-corner', 1]]);
    expect(await find('<circle cx="100" cy="100" r="40" stroke-dasharray="60 1"/>')).toEqual([]);
  });

  it('are counted in a line that ends where it starts', async () => {
    expect(await find(`<path d="M50 50H110V110H50V50" stroke-dasharray="239 1" stroke-dashoffset="30"/>`)).toEqual([
      ['ties-few', 1, 1],
    ]);
    expect(await find(`<path d="M50 50H110V110H50" stroke-dasharray="239 1" stroke-dashoffset="30"/>`)).toEqual([]);
  });

  it('of a piece in the blank are counted where it has any', async () => {
    const blank = 'M40 40H80M80.5 40H160V160H80.5M80 160H40V40';
    const window = (top: string): string => `${blank}${top}`;
    const drawn = async (top: string) => find(window(top), { tieMm: 0.5 });
    expect(await drawn('')).toEqual([]);
    expect(await drawn('M60 60H80V80H60Z')).toEqual([]);
    expect(await drawn('M70.5 60H80V80H60V60H70')).toEqual([['ties-few', 1, 1]]);
    expect(await drawn('M70.5 60H80V80H70.5M70 80H60V60H70')).toEqual([]);
  });

  it('scale with the outline', async () => {
    const half = (dashes: string): string =>
      `<path transform="scale(.5)" d="M100 100H220V220H100Z" stroke-dasharray="${dashes}" stroke-dashoffset="60"/>`;
    expect(await find(half('238 2'))).toEqual([]);
    expect(await find(half('478 2'))).toEqual([['ties-few', 1, 1]]);
  });
});

describe('ties drawn as openings', () => {
  const tieMm = 0.5;
  /** Two openings in the long sides of a blank. */
  const tied = (gap: number): string => `M${80 + gap} 50H150V110H${100 + gap}M100 110H50V50H80`;

  it('are as wide as the ticket says, a quarter more or less', async () => {
    for (const gap of [0.376, 0.5, 0.624]) expect(await find(tied(gap), { tieMm })).toEqual([]);
    for (const gap of [0.374, 0.626]) expect(await find(tied(gap), { tieMm })).toEqual([['ties-few', 1, 0]]);
  });

  it('are two at least, and none at a corner', async () => {
    expect(await find('M80.5 50H150V110H50V50H80', { tieMm })).toEqual([['ties-few', 1, 1]]);
    expect(await find('M80.5 50H150V110H50V50.5M50 50H80', { tieMm })).toEqual([['tie-at-corner', 1]]);
  });

  it('are not looked for where the ticket says nothing of them', async () => {
    expect(await find('M80.5 50H150V110H50V50H80')).toEqual([]);
  });
});
