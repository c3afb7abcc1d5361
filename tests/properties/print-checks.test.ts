// Print checks find the same however the drawing lies: turned, mirrored, far away, in inches.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkBleed } from '../../src/check/check-bleed.js';
import { checkDieKnockout } from '../../src/check/check-die-knockout.js';
import { checkHairline } from '../../src/check/check-hairline.js';
import { checkPictureResolution } from '../../src/check/check-picture-resolution.js';
import { checkSafeMargin } from '../../src/check/check-safe-margin.js';
import { checkWhite } from '../../src/check/check-white.js';
import { factsOf } from '../unit/check/carton-facts.js';

const GIF = 'data:image/gif;base64,R0lGODlhMgAyAAAAAA==';

/** Layers of a drawing in which every check finds something. */
const LAYERS = [
  '<g id="White"><path d="M70 62H95V78H70Z" fill="#eee"/><path d="M160 60H170V72H160Z" fill="#eee"/></g>',
  '<g id="Print"><path d="M50 47H153V113H50Z" fill="#c9a227"/><path d="M70 60H95V78H70Z" fill="#345"/>' +
    '<path d="M60 104C64 104 66 106 66 109H60Z" fill="#123"/><path d="M100 65V75" stroke="#123" stroke-width=".05"/>' +
    `<image x="110" y="60" width="20" height="20" href="${GIF}"/>` +
    '<path d="M75 90H95" fill="none" stroke="#fff" stroke-width="1"/></g>',
  '<g id="Cut" fill="none" stroke="#d6336c" stroke-width=".3"><path d="M50 50H150V110H50Z"/><path d="M70 90H100"/></g>',
];

const CHECKS = [checkBleed, checkSafeMargin, checkHairline, checkPictureResolution, checkDieKnockout, checkWhite];

/** Code, count and measured values. */
async function findIn(transform: string, unit: 'mm' | 'in' = 'mm'): Promise<readonly unknown[]> {
  const scale = unit === 'mm' ? 1 : 25.4;
  const size = unit === 'mm' ? 'width="200mm" height="200mm"' : 'width="10in" height="10in"';
  const side = unit === 'mm' ? 200 : 10;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${side} ${side}">` +
    `${LAYERS.map((layer) => layer.replace('<g ', `<g transform="scale(${1 / scale}) ${transform}" `)).join('')}</svg>`;
  const facts = await factsOf(svg, { whiteChokeMm: 0 });
  return CHECKS.flatMap((check) => check(facts)).map(({ code, data }) => [
    code,
    data.count,
    (['measuredMm', 'areaMm2', 'measuredMm2', 'measuredPpi', 'lengthMm'] as const).map((key) =>
      data[key] === undefined ? null : Number(data[key]),
    ),
  ]);
}

/** The same, with values as near to each other as the flattening of curves and the grid allow. */
async function expectAsUpright(found: readonly unknown[]): Promise<void> {
  const upright = (await findIn('')) as readonly (readonly [string, number, readonly (number | null)[]])[];
  expect(found).toEqual(
    upright.map(([code, count, values]) => [
      code,
      count,
      values.map((value) => (value === null ? null : expect.closeTo(value, 1))),
    ]),
  );
}

describe('print checks', () => {
  it('find something each, where the drawing lies as it was drawn', async () => {
    const found = (await findIn('')) as readonly (readonly [string, ...unknown[]])[];
    expect(found.map(([code]) => code)).toEqual([
      'check/bleed-short',
      'check/near-edge',
      'check/hairline',
      'check/picture-too-coarse',
      'check/die-knockout',
      'check/white-bare',
    ]);
  });

  it.each(['rotate(90 100 100)', 'rotate(180 100 100)', 'matrix(-1 0 0 1 200 0)', 'matrix(0 1 1 0 0 0)'])(
    'find the same under %s',
    async (transform) => {
      await expectAsUpright(await findIn(transform));
    },
  );

  it('find the same 10 m away', async () => {
    await expectAsUpright(await findIn('translate(10000 10000)'));
  });

  it('find the same in inches', async () => {
    await expectAsUpright(await findIn('', 'in'));
  });

  it('find the same under any turn', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: 360e6 }), fc.boolean(), async (part, mirrored) => {
        const mirror = mirrored ? ' matrix(-1 0 0 1 200 0)' : '';
        await expectAsUpright(await findIn(`rotate(${part / 1e6} 100 100)${mirror}`));
      }),
      { numRuns: 25, seed: 5 },
    );
  });
});
