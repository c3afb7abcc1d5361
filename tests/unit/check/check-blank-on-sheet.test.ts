// Lines that reach over the edge of the sheet: by how much, by hand.
import { describe, expect, it } from 'vitest';
import { checkBlankOnSheet } from '../../../src/check/check-blank-on-sheet.js';
import { carton, factsOf } from './carton-facts.js';
import { briefly } from './die-facts.js';

async function find(cut: string, marginMm: number = 0, print: string = ''): Promise<readonly unknown[]> {
  return briefly(checkBlankOnSheet(await factsOf(carton(print, cut), {}, { ticket: { marginMm } })));
}

describe('checkBlankOnSheet', () => {
  it('lets lines run up to the edge, on all sides', async () => {
    expect(await find('<path d="M0 0H200V200H0Z"/>')).toEqual([]);
    for (const d of ['M-.1 0H9', 'M190 0H200.1', 'M9 -.1V9', 'M9 190V200.1']) {
      expect(await find(`<path d="${d}"/>`)).toEqual([['blank-off-sheet', 1, 0.1]]);
    }
    expect(await find('<path d="M9 190V200.009"/>')).toEqual([]);
    expect(await find('<path d="M9 190V200.011"/>')).toEqual([['blank-off-sheet', 1, 0.011]]);
  });

  it('measures the side that reaches furthest, of the line that does', async () => {
    expect(await find('<path d="M-3 50H204"/><path d="M50 -7V10"/>')).toEqual([['blank-off-sheet', 2, 7]]);
  });

  it('counts the margin in', async () => {
    expect(await find('<path d="M-3 50H203"/>', 3)).toEqual([]);
    expect(await find('<path d="M-4 50H203"/>', 3)).toEqual([['blank-off-sheet', 1, 1]]);
  });

  it('is about lines of tools, not about print or the width of a stroke', async () => {
    expect(await find('<path d="M0 0H200" stroke-width="9"/>', 0, '<path d="M-20 0H9V9H-20Z"/>')).toEqual([]);
  });
});
