// Live type: fonts and sizes.
import { describe, expect, it } from 'vitest';
import { checkLiveText } from '../../../src/check/check-live-text.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';
const GROUND = '<path d="M47 47H153V113H47Z" fill="#c9a227"/>';

async function find(print: string, cut = BLANK, more = '') {
  return checkLiveText(await factsOf(carton(print, cut, more)));
}

describe('checkLiveText', () => {
  it('names the fonts that are asked for first, and the smallest size on the board', async () => {
    const print =
      `${GROUND}<text x="80" y="80" font-family="'Example Serif', serif" font-size="5">Tea` +
      '<tspan font-family="Example Sans" font-size="3">green</tspan></text>' +
      '<g transform="scale(0.5)"><text x="160" y="160" font-size="8">4</text></g>';
    const [found] = await find(print);
    // 3 mm are 8.504 pt; 4 mm at half of 8 are more.
    expect(found!.data).toMatchObject({ count: 2, fonts: ['', 'Example Sans', 'Example Serif'], smallestPt: 8.5 });
    expect(found!.remedy).toContain('where no font is named');
  });

  it('passes over type without characters', async () => {
    expect(await find(`${GROUND}<text x="80" y="80"> </text>`)).toEqual([]);
  });
});
