// White lines of the print along die lines.
import { describe, expect, it } from 'vitest';
import { checkDieKnockout } from '../../../src/check/check-die-knockout.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';
const SLIT = `${BLANK}<path d="M70 80H130"/>`;
const GROUND = '<path d="M47 47H153V113H47Z" fill="#c9a227"/>';

async function find(print: string, cut = BLANK, more = '') {
  return checkDieKnockout(await factsOf(carton(print, cut, more)));
}

describe('checkDieKnockout', () => {
  const white = (d: string, more = ''): string => `<path d="${d}" fill="none" stroke="#fff" stroke-width="1" ${more}/>`;
  const measured = async (print: string): Promise<readonly unknown[]> =>
    (await find(print, SLIT)).map(({ data }) => [data.lengthMm, data.measuredMm]);

  it('measures how much of a die line a white line runs along, over art', async () => {
    expect(await measured(GROUND + white('M80 80H120'))).toEqual([[40, 1]]);
    expect(await measured(GROUND + white('M80 80H120V100'))).toEqual([[40, 1]]);
    expect(await measured(GROUND + white('M60 80H140'))).toEqual([[60, 1]]);
  });

  it('leaves white lines that run across, aside, or over bare board', async () => {
    expect(await measured(GROUND + white('M100 60V100'))).toEqual([]);
    expect(await measured(GROUND + white('M80 80.3H120'))).toEqual([]);
    expect(await measured(white('M80 80H120') + GROUND)).toEqual([]);
    expect(await measured(`<path d="M47 90H153V113H47Z" fill="#c9a227"/>${white('M80 80H120')}`)).toEqual([]);
  });

  it('asks for a printed side only: art may end at the line', async () => {
    const half = '<path d="M47 47H153V80H47Z" fill="#c9a227"/>';
    expect(await measured(half + white('M80 80H120'))).toEqual([[40, 1]]);
  });

  it('leaves lines of ink', async () => {
    expect(await measured(GROUND + white('M80 80H120').replace('#fff', '#eee'))).toEqual([]);
  });
});
