// White under print, in closed form.
import { describe, expect, it } from 'vitest';
import { checkWhite } from '../../../src/check/check-white.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';

/** Codes with their areas, mm2. */
async function misfits(white: string, print: string, whiteChokeMm: number | null): Promise<readonly unknown[]> {
  const facts = await factsOf(carton(print, BLANK, `<g id="White">${white}</g>`), { whiteChokeMm });
  return checkWhite(facts).map(({ code, data }) => [code, Math.round(Number(data.measuredMm2) * 10) / 10, data.count]);
}

const box = (x: number, y: number, width: number, height: number, fill = '#a33b4f'): string =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"/>`;

describe('checkWhite', () => {
  it('finds nothing where white follows the rim as asked, within its tolerance', async () => {
    expect(await misfits(box(60.2, 60.2, 39.6, 29.6), box(60, 60, 40, 30), 0.2)).toEqual([]);
    expect(await misfits(box(60.24, 60.24, 39.52, 29.52), box(60, 60, 40, 30), 0.2)).toEqual([]);
    expect(await misfits(box(60.16, 60.16, 39.68, 29.68), box(60, 60, 40, 30), 0.2)).toEqual([]);
  });

  it('measures white that reaches too near to the rim', async () => {
    // 40 x 30 without what may be white: 0.15 mm inside.
    expect(await misfits(box(60, 60, 40, 30), box(60, 60, 40, 30), 0.2)).toEqual([
      ['check/white-wide', Math.round((1200 - 39.7 * 29.7) * 10) / 10, 1],
    ]);
  });

  it('measures white that sticks out, where no choke is asked for', async () => {
    expect(await misfits(box(59, 60, 40, 30), box(60, 60, 40, 30), null)).toEqual([['check/white-wide', 28.5, 1]]);
    expect(await misfits(box(60, 60, 40, 30), box(60, 60, 40, 30), null)).toEqual([]);
  });

  it('measures print along the rim that lacks its white', async () => {
    // From 0.25 to 0.8 mm inside the rim.
    const band = 39.5 * 29.5 - 38.4 * 28.4;
    expect(await misfits(box(60.8, 60.8, 38.4, 28.4), box(60, 60, 40, 30), 0.2)).toEqual([
      ['check/white-narrow', Math.round(band * 10) / 10, 1],
    ]);
  });

  it('asks nothing of white that does not follow the rim', async () => {
    expect(await misfits(box(70, 70, 10, 10), box(60, 60, 40, 30), 0.2)).toEqual([]);
  });

  it('tells white that carries nothing', async () => {
    expect(await misfits(box(120, 60, 10, 10), box(60, 60, 40, 30), 0.2)).toEqual([['check/white-bare', 100, 1]]);
  });

  it('lets white show where the print is painted white', async () => {
    const knockedOut = box(60, 60, 40, 30) + box(70, 70, 10, 10, '#fff');
    expect(await misfits(box(60.2, 60.2, 39.6, 29.6), knockedOut, 0.2)).toEqual([]);
  });

  it('takes white art of a white pass for what it prints', async () => {
    expect(await misfits(box(120, 60, 10, 10, '#ffffff'), box(60, 60, 40, 30), null)).toEqual([
      ['check/white-bare', 100, 1],
    ]);
  });

  it('is silent without a white pass', async () => {
    expect(checkWhite(await factsOf(carton(box(60, 60, 40, 30), BLANK)))).toEqual([]);
  });
});
