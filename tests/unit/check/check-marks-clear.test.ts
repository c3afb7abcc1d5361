// Marks under copies and within blanks.
import { describe, expect, it } from 'vitest';
import { checkMarksClear } from '../../../src/check/check-marks-clear.js';
import { factsOf } from './carton-facts.js';
import { briefly } from './die-facts.js';

/** Findings for a mark, with art drawn before and after it, and a blank from 50 to 150 mm with a window in it. */
async function find(mark: string, after: string = '', before: string = ''): Promise<readonly unknown[]> {
  const cut = '<path d="M90 90H110V110H90ZM50 50H150V150H50Z" fill="none" stroke="#d6336c"/>';
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">' +
    `<g id="Print">${before}</g><g id="Marks">${mark}</g><g id="Print 2">${after}</g><g id="Cut">${cut}</g></svg>`;
  return briefly(checkMarksClear(await factsOf(svg, { markLayers: ['marks'] })));
}

const disc = (x: number, y: number): string => `<circle cx="${x}" cy="${y}" r="3" fill="#111"/>`;
const square = (x: number, y: number, size: number, more: string = 'fill="#345"'): string =>
  `<rect x="${x}" y="${y}" width="${size}" height="${size}" ${more}/>`;

describe('marks', () => {
  it('are covered by what is drawn later, and not by what is drawn before', async () => {
    expect(await find(disc(20, 20))).toEqual([]);
    expect(await find(disc(20, 20), square(10, 10, 20))).toEqual([['marks-covered', 1]]);
    expect(await find(disc(20, 20), '', square(10, 10, 20))).toEqual([]);
  });

  it('are covered where the art is, not where its box is', async () => {
    // The corner of a square that misses the disc around (20, 20) by 0.1 mm, and one that meets it.
    const corner = (gap: number): string => square(20 + (3 + gap) / Math.SQRT2, 20 + (3 + gap) / Math.SQRT2, 9);
    expect(await find(disc(20, 20), corner(0.1))).toEqual([]);
    expect(await find(disc(20, 20), corner(-0.1))).toEqual([['marks-covered', 1]]);
    expect(await find(disc(20, 20), square(10, 10, 20, 'fill="none" stroke="#111"'))).toEqual([]);
  });

  it('in a blank are told, in its window and beside it not', async () => {
    expect(await find(disc(60, 60))).toEqual([['marks-in-blank', 1]]);
    expect(await find(disc(60, 60) + disc(140, 60) + disc(100, 100) + disc(20, 60))).toEqual([['marks-in-blank', 2]]);
  });

  it('on its edge are told by their middle', async () => {
    expect(await find(disc(50.1, 60))).toEqual([['marks-in-blank', 1]]);
    expect(await find(disc(49.9, 60))).toEqual([]);
  });
});
