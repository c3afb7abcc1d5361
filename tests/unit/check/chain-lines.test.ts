// Lines that meet end to end are one, from whichever end each is drawn.
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../src/check/chain-lines.js';
import { type DieLayers, dieFacts } from './die-facts.js';

const MM = 96 / 25.4;

/** Each chain: whether it is closed, its points in mm, and the shape and length of each written segment. */
async function chainsOf(layers: DieLayers): Promise<readonly unknown[]> {
  const { chains } = await dieFacts(layers);
  return chains.map(({ outline, shape, shapes }: Chain) => {
    const { closed, points, starts } = outline;
    const list = Array.from(points, (px) => Math.round((px / MM) * 1000) / 1000);
    return [
      closed ? 'closed' : 'open',
      list.join(' '),
      Array.from(starts, (_, i) => (shapes?.[i] ?? shape).index).join(''),
    ];
  });
}

describe('chainLines', () => {
  it('joins lines end to end', async () => {
    const joined = ['open', '10 10 20 10 20 30 50 30', '001'];
    expect(await chainsOf({ cut: ['M10 10H20V30', 'M20 30H50'] })).toEqual([joined]);
    expect(await chainsOf({ cut: ['M10 10H20V30', 'M50 30H20'] })).toEqual([joined]);
    expect(await chainsOf({ cut: ['M20 30V10H10', 'M20 30H50'] })).toEqual([
      ['open', '10 10 20 10 20 30 50 30', '001'],
    ]);
    expect(await chainsOf({ cut: ['M20 30H50', 'M10 10H20V30'] })).toEqual([
      ['open', '50 30 20 30 20 10 10 10', '011'],
    ]);
  });

  it('closes what comes round', async () => {
    expect(await chainsOf({ cut: ['M10 10H20V20', 'M10 10V20H20'] })).toEqual([
      ['closed', '10 10 20 10 20 20 10 20', '0011'],
    ]);
    expect(await chainsOf({ cut: ['M10 10H20V20H10V10'] })).toEqual([['closed', '10 10 20 10 20 20 10 20', '0000']]);
    expect(await chainsOf({ cut: ['M10 10H20V20H10Z'] })).toEqual([['closed', '10 10 20 10 20 20 10 20', '0000']]);
  });

  it('joins within a hundredth of a millimetre', async () => {
    expect(await chainsOf({ cut: ['M10 10H20', 'M20.009 10H50'] })).toHaveLength(1);
    expect(await chainsOf({ cut: ['M10 10H20', 'M20.011 10H50'] })).toHaveLength(2);
  });

  it('comes to an end far from everything, where one cell more is the same cell', async () => {
    expect(await chainsOf({ cut: ['M1e30 1e30L2e30 5', 'M10 10H20', 'M20 10H50'] })).toHaveLength(2);
  });

  it('joins none where three meet, and none of another pass', async () => {
    expect(await chainsOf({ cut: ['M10 10H20', 'M20 10H50', 'M20 10V50'] })).toHaveLength(3);
    expect(await chainsOf({ crease: ['M10 10H20'], cut: ['M20 10H50'] })).toHaveLength(2);
    expect(await chainsOf({ crease: ['M20 10V50'], cut: ['M10 10H20', 'M20 10H50'] })).toHaveLength(2);
  });

  it('keeps which segments are curved when it turns a line around', async () => {
    const { chains } = await dieFacts({ cut: ['M10 10H20', 'M60 10H40A10 10 0 0 0 20 10'] });
    expect(chains).toHaveLength(1);
    const { starts, curved, points } = chains[0]!.outline;
    expect([...curved]).toEqual([0, 1, 0]);
    expect(Array.from(starts, (start) => Math.round(points[2 * start]! / MM))).toEqual([10, 20, 40]);
  });
});
