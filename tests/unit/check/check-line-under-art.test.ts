// Tool lines under art: lengths by hand.
import { describe, expect, it } from 'vitest';
import { checkLineUnderArt } from '../../../src/check/check-line-under-art.js';
import { factsOf } from './carton-facts.js';
import { briefly } from './die-facts.js';

/** Findings for cuts with art painted before and after them. */
async function find(cut: readonly string[], after: string, before: string = ''): Promise<readonly unknown[]> {
  const lines = cut.map((d) => `<path d="${d}" fill="none" stroke="#d6336c"/>`).join('');
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">' +
    `<g id="Print">${before}</g><g id="Cut">${lines}</g><g id="Print 2">${after}</g></svg>`;
  return briefly(checkLineUnderArt(await factsOf(svg)));
}

const square = (x: number, size: number, more: string = ''): string =>
  `<rect x="${x}" y="40" width="${size}" height="${size}" fill="#345" ${more}/>`;

describe('checkLineUnderArt', () => {
  it('measures what lies under later art', async () => {
    expect(await find(['M10 50H190'], square(60, 33))).toEqual([['line-under-art', 1, 33]]);
    expect(await find(['M10 50H190'], square(60, 33) + square(80, 40))).toEqual([['line-under-art', 1, 60]]);
    expect(await find(['M10 50H190'], '', square(60, 33))).toEqual([]);
    expect(await find(['M10 50H190', 'M10 60H190'], square(60, 33))).toEqual([['line-under-art', 2, 66]]);
  });

  it('lets less than a millimetre be', async () => {
    expect(await find(['M10 50H190'], square(60, 0.99).replace('height="0.99"', 'height="20"'))).toEqual([]);
    expect(await find(['M10 50H190'], square(60, 1).replace('height="1"', 'height="20"'))).toEqual([
      ['line-under-art', 1, 1],
    ]);
  });

  it('sees holes, by either rule, and no strokes, type or empty paint', async () => {
    const ring = (rule: string): string =>
      `<path d="M60 30H100V70H60ZM70 40H90V60H70Z" fill-rule="${rule}" fill="#345"/>`;
    expect(await find(['M10 50H190'], ring('evenodd'))).toEqual([['line-under-art', 1, 20]]);
    expect(await find(['M10 50H190'], ring('nonzero'))).toEqual([['line-under-art', 1, 40]]);
    expect(await find(['M10 50H190'], square(60, 33, 'style="fill:none;stroke:#111;stroke-width:30"'))).toEqual([]);
    expect(await find(['M10 50H190'], '<text x="60" y="55" font-size="20">Art</text>')).toEqual([]);
  });

  it('measures the same in parts, and from either end; each shape is one line', async () => {
    expect(await find(['M10 50H77', 'M190 50H77'], square(60, 33))).toEqual([['line-under-art', 2, 33]]);
    expect(await find(['M10 50H61M61 50H61.4M190 50H61.4'], square(60, 33))).toEqual([['line-under-art', 1, 33]]);
  });
});
