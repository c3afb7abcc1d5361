// Sizes that the ticket states for passes, against the sheet of 200 x 150 mm.
import { describe, expect, it } from 'vitest';
import { checkPassSizes } from '../../../src/check/check-pass-sizes.js';
import { listPasses, readFacts } from './read-facts.js';

async function find(more: Readonly<Record<string, object>>, marginMm: number = 0): Promise<readonly unknown[]> {
  const facts = await readFacts({ passes: listPasses('print crease cut', more), marginMm, marks: { wanted: false } });
  return checkPassSizes(facts).map(({ data }) => [data.pass, data.measuredWidthMm, data.measuredHeightMm]);
}

describe('checkPassSizes', () => {
  it('takes sizes that are said, each by itself', async () => {
    expect(await find({})).toEqual([]);
    expect(await find({ cut: { widthMm: 200, heightMm: 150 } })).toEqual([]);
    expect(await find({ cut: { widthMm: 201 } })).toEqual([['cut', 201, 150]]);
    expect(await find({ cut: { heightMm: 149 }, print: { widthMm: 199 } })).toEqual([
      ['print', 199, 150],
      ['cut', 200, 149],
    ]);
  });

  it('lets 0.05 mm be', async () => {
    expect(await find({ cut: { widthMm: 200.049 } })).toEqual([]);
    expect(await find({ cut: { widthMm: 199.949 } })).toEqual([['cut', 199.949, 150]]);
  });

  it('counts the margin in', async () => {
    expect(await find({ cut: { widthMm: 210, heightMm: 160 } }, 5)).toEqual([]);
    expect(await find({ cut: { widthMm: 200, heightMm: 150 } }, 5)).toEqual([['cut', 200, 150]]);
  });
});
