// White lines along die lines, live type, paint that does not come out, shapes astray.
import { describe, expect, it } from 'vitest';
import { checkDieKnockout } from '../../../src/check/check-die-knockout.js';
import type { Check } from '../../../src/check/check-facts.js';
import { checkLiveText } from '../../../src/check/check-live-text.js';
import { checkOffArtboard } from '../../../src/check/check-off-artboard.js';
import { checkPaintUnresolved } from '../../../src/check/check-paint-unresolved.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';
const SLIT = `${BLANK}<path d="M70 80H130"/>`;
const GROUND = '<path d="M47 47H153V113H47Z" fill="#c9a227"/>';

async function find(check: Check, print: string, cut = BLANK, more = '') {
  return check(await factsOf(carton(print, cut, more), {}, { ticket: { marks: NO_MARKS } }));
}

const NO_MARKS = {
  wanted: false,
  discDiameterMm: 6,
  crossSizeMm: 6,
  lineWidthMm: 0.25,
  offsetMm: 3,
  cornerLengthMm: 5,
  passes: [],
  label: true,
};

describe('checkDieKnockout', () => {
  const white = (d: string, more = ''): string => `<path d="${d}" fill="none" stroke="#fff" stroke-width="1" ${more}/>`;
  const measured = async (print: string): Promise<readonly unknown[]> =>
    (await find(checkDieKnockout, print, SLIT)).map(({ data }) => [data.lengthMm, data.measuredMm]);

  it('measures how much of a die line a white line runs along, over art', async () => {
    expect(await measured(GROUND + white('M80 80H120'))).toEqual([[40, 1]]);
    expect(await measured(GROUND + white('M80 80H120V100'))).toEqual([[40, 1]]);
    expect(await measured(GROUND + white('M60 80H140'))).toEqual([[60, 1]]);
  });

  it('leaves white lines that run across, aside, or over bare board', async () => {
    expect(await measured(GROUND + white('M100 60V100'))).toEqual([]);
    expect(await measured(GROUND + white('M80 80.3H120'))).toEqual([]);
    expect(await measured(white('M80 80H120') + GROUND)).toEqual([]);
    expect(await measured('<path d="M47 90H153V113H47Z" fill="#c9a227"/>' + white('M80 80H120'))).toEqual([]);
  });

  it('asks for a printed side only: art may end at the line', async () => {
    const half = '<path d="M47 47H153V80H47Z" fill="#c9a227"/>';
    expect(await measured(half + white('M80 80H120'))).toEqual([[40, 1]]);
  });

  it('leaves lines of ink', async () => {
    expect(await measured(GROUND + white('M80 80H120').replace('#fff', '#eee'))).toEqual([]);
  });
});

describe('checkLiveText', () => {
  it('names the fonts that are asked for first, and the smallest size on the board', async () => {
    const print =
      `${GROUND}<text x="80" y="80" font-family="'Example Serif', serif" font-size="5">Tea` +
      '<tspan font-family="Example Sans" font-size="3">green</tspan></text>' +
      '<g transform="scale(0.5)"><text x="160" y="160" font-size="8">4</text></g>';
    const [found] = await find(checkLiveText, print);
    // 3 mm are 8.504 pt; 4 mm at half of 8 are more.
    expect(found!.data).toMatchObject({ count: 2, fonts: ['', 'Example Sans', 'Example Serif'], smallestPt: 8.5 });
    expect(found!.remedy).toContain('where no font is named');
  });

  it('passes over type without characters', async () => {
    expect(await find(checkLiveText, `${GROUND}<text x="80" y="80"> </text>`)).toEqual([]);
  });
});

describe('checkPaintUnresolved', () => {
  const why = async (server: string, paint = 'url(#dusk)'): Promise<readonly unknown[]> =>
    (await find(checkPaintUnresolved, `<path d="M47 47H153V113H47Z" fill="${paint}"/>`, BLANK, server)).map(
      ({ data }) => data.why,
    );
  const stop = '<stop stop-color="#123"/>';

  it('takes stops and content from the server that one refers to', async () => {
    const from = `<linearGradient id="night">${stop}</linearGradient>`;
    expect(await why(`${from}<radialGradient id="dusk" href="#night"/>`)).toEqual([]);
    expect(await why('<linearGradient id="night"/><linearGradient id="dusk" href="#night"/>')).toEqual(['no-stops']);
    expect(await why('<linearGradient id="dusk" href="#dusk"/>')).toEqual(['circle']);
  });

  it('asks a pattern for a size and for content', async () => {
    const pattern = (more: string, content: string): string => `<pattern id="dusk" ${more}>${content}</pattern>`;
    expect(await why(pattern('width="2" height="2"', '<path d="M0 0H1"/>'))).toEqual([]);
    expect(await why(pattern('width="2" height="2"', '<title>Dots</title>'))).toEqual(['no-content']);
    expect(await why(pattern('width="2" height="0"', '<path d="M0 0H1"/>'))).toEqual(['no-size']);
    expect(await why(pattern('width="2"', '<path d="M0 0H1"/>'))).toEqual(['no-size']);
  });

  it('tells what is not there, stroke and fill alike, whether or not anything else is drawn', async () => {
    expect(await why('')).toEqual(['not-there']);
    expect(await why('', 'url(#dusk) #123')).toEqual(['not-there']);
    const both = '<path d="M47 47H153V113H47Z" fill="url(#a)" stroke="url(#b)"/>';
    const [found] = await find(checkPaintUnresolved, both);
    expect(found!.data).toMatchObject({ count: 2, targets: ['a', 'b'] });
    expect(found!.message).toMatch(/^1 shape in layer "Print" is painted with "#a" \(and 1 more\)/);
  });
});

describe('checkOffArtboard', () => {
  it('measures the clear distance, corner to corner too', async () => {
    const far = async (d: string): Promise<readonly unknown[]> =>
      (await find(checkOffArtboard, `${GROUND}<path d="${d}" fill="#123"/>`)).map(({ data }) => data.measuredMm);
    expect(await far('M210 50H220V60H210Z')).toEqual([10]);
    expect(await far('M-13 -14H-3V-4H-13Z')).toEqual([5]);
    expect(await far('M190 50H220V60H190Z')).toEqual([]);
  });
});
