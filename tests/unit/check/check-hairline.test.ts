// Widths of lines under matrices that scale unevenly, in closed form.
import { describe, expect, it } from 'vitest';
import { checkHairline, thinnestPlace } from '../../../src/check/check-hairline.js';
import { carton, factsOf } from './carton-facts.js';

const CUT = '<path d="M50 50H150V110H50Z"/>';

/** Width at the thinnest place, mm. */
async function thinnest(line: string): Promise<number> {
  const facts = await factsOf(carton(line, CUT));
  const shape = facts.artwork.shapes[0]!;
  return thinnestPlace(shape, facts.outlineOf(shape)).widthPx * facts.artwork.artboard.mmPerPx;
}

const line = (d: string, more: string): string => `<path d="${d}" fill="none" stroke="#123" stroke-width="1" ${more}/>`;

describe('thinnestPlace', () => {
  it('is the width across: a scale along a line leaves it', async () => {
    expect(await thinnest(line('M60 60H90', 'transform="scale(0.1 1)"'))).toBeCloseTo(1, 9);
    expect(await thinnest(line('M60 60H90', 'transform="scale(1 0.1)"'))).toBeCloseTo(0.1, 9);
  });

  it('is that of the thinnest side', async () => {
    expect(await thinnest(line('M60 60H90V80', 'transform="scale(0.1 0.5)"'))).toBeCloseTo(0.1, 9);
  });

  it('on a slant lies between the two', async () => {
    // Along (1, 1) under scale(2, 1): 2 / |(2, 1)| * |(1, 1)| of the width.
    expect(await thinnest(line('M60 60L70 70', 'transform="scale(2 1)"'))).toBeCloseTo(
      (2 * Math.SQRT2) / Math.sqrt(5),
      9,
    );
  });

  it('turns and mirrors with the drawing', async () => {
    expect(await thinnest(line('M60 60H90', 'transform="rotate(37) scale(-1 0.3)"'))).toBeCloseTo(0.3, 9);
    expect(await thinnest(line('M60 60H90', 'transform="rotate(37)"'))).toBeCloseTo(1, 9);
  });

  it('is the written width, in px, of a line that does not scale', async () => {
    const width = await thinnest(line('M60 60H90', 'transform="scale(0.1)" vector-effect="non-scaling-stroke"'));
    expect(width).toBeCloseTo(25.4 / 96, 9);
  });
});

describe('checkHairline', () => {
  const find = async (print: string) => checkHairline(await factsOf(carton(print, CUT)));

  it('takes a quarter of a point for enough', async () => {
    const width = (pt: number): string =>
      `<path d="M60 60H90" fill="none" stroke="#123" style="stroke-width:${(pt * 25.4) / 72}"/>`;
    expect(await find(width(0.25))).toEqual([]);
    expect((await find(width(0.24)))[0]?.data).toMatchObject({ measuredMm: 0.0847, allowedMm: 0.088, count: 1 });
  });

  it('looks at no line that is not printed', async () => {
    expect(await find('<path d="M60 60H90V80Z" fill="#123" stroke="none" stroke-width="0.01"/>')).toEqual([]);
    expect(await find('<path d="M60 60H90V80Z" fill="#123" stroke="#123" stroke-width="0"/>')).toEqual([]);
    const thinCut = '<path d="M50 50H150V110H50Z" stroke-width="0.01"/>';
    expect(checkHairline(await factsOf(carton('<path d="M60 60H90V80Z"/>', thinCut)))).toEqual([]);
  });
});
