// Clear distances of type and small art.
import { describe, expect, it } from 'vitest';
import { checkSafeMargin } from '../../../src/check/check-safe-margin.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { carton, factsOf } from './carton-facts.js';

const BLANK = '<path d="M50 50H150V110H50Z"/>';

/** Count, measured distance and kind of line of what is too near. */
async function near(print: string, checks: Partial<CheckSettings> = {}, cut = BLANK): Promise<readonly unknown[]> {
  const found = checkSafeMargin(await factsOf(carton(print, cut), checks));
  return found.map(({ data }) => [data.count, data.measuredMm, data.nearTo]);
}

const disc = (x: number, y: number, r: number): string => `<circle cx="${x}" cy="${y}" r="${r}" fill="#123"/>`;

describe('checkSafeMargin', () => {
  it('measures from the rim of small art to the line', async () => {
    expect(await near(disc(54, 80, 2))).toEqual([[1, 2, 'cut']]);
    expect(await near(disc(55, 80, 2))).toEqual([]);
    expect(await near(disc(54.99, 80, 2))).toEqual([[1, 2.99, 'cut']]);
  });

  it('measures to a corner as the crow flies', async () => {
    // A slit ends at (100, 80); the corner of the art stands off its end by 1.2 and 1.6, so by 2.
    expect(
      await near('<path d="M101.2 81.6H106V86H101.2Z" fill="#123"/>', {}, `${BLANK}<path d="M90 80H100"/>`),
    ).toEqual([[1, 2, 'cut']]);
  });

  it('takes half the width of a stroke off', async () => {
    const line = '<path d="M53 70V75" fill="none" stroke="#123" stroke-width="1"/>';
    expect(await near(line)).toEqual([[1, 2.5, 'cut']]);
  });

  it('leaves large art alone, and art beyond the blank', async () => {
    expect(await near('<path d="M51 60H80V61H51Z" fill="#123"/>')).toEqual([]);
    expect(await near('<path d="M51 60H80V61H51Z" fill="#123"/>', { smallArtMm: 30 })).toEqual([[1, 1, 'cut']]);
    expect(await near(disc(46, 80, 2))).toEqual([]);
  });

  it('knows art that runs across a line on purpose from art that was cut into', async () => {
    expect(await near(disc(50, 80, 4))).toEqual([]);
    expect(await near(disc(50, 80, 2))).toEqual([[1, 0, 'cut']]);
    expect(await near(disc(51, 80, 2))).toEqual([[1, 0, 'cut']]);
  });

  it('judges white where it lies on print, as type on a dark ground', async () => {
    const ground = '<path d="M47 47H153V113H47Z" fill="#123"/>';
    const letter = '<path d="M52 70H56V76H52Z" fill="#fff"/>';
    const type = '<text x="51" y="80" font-family="Example Serif" fill="white">Tea</text>';
    expect(await near(ground + letter)).toEqual([[1, 2, 'cut']]);
    expect(await near(ground + type)).toEqual([[1, 1, 'cut']]);
    expect(await near(letter + type)).toEqual([]);
    expect(await near(letter + type + ground)).toEqual([]);
    expect(await near(`${ground}<path d="M52 70V76" fill="none" stroke="#fff" stroke-width=".4"/>`)).toEqual([]);
  });

  it('measures live type from where it is anchored', async () => {
    expect(await near('<text x="51" y="80" font-family="Example Serif">Tea</text>')).toEqual([[1, 1, 'cut']]);
    expect(await near('<text x="53" y="80" font-family="Example Serif">Tea</text>')).toEqual([]);
  });

  it('asks nothing of white, of tool passes and of marks', async () => {
    expect(await near('<circle cx="54" cy="80" r="2" fill="#fff"/>')).toEqual([]);
    expect(await near(disc(80, 80, 2), {}, `${BLANK}<circle cx="54" cy="80" r="2"/>`)).toEqual([]);
    expect(await near(`<g id="Marks">${disc(54, 80, 2)}</g>`, { markLayers: ['Marks'] })).toEqual([]);
  });

  it('is silent without a margin', async () => {
    expect(await near(disc(54, 80, 2), { safeMarginMm: 0 })).toEqual([]);
  });
});
