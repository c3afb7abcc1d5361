// Outlines that cross themselves, between their points and at them.
import { describe, expect, it } from 'vitest';
import { checkSelfCrossing } from '../../../src/check/check-self-crossing.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function count(layers: DieLayers): Promise<unknown> {
  const found = briefly(checkSelfCrossing(await dieFacts(layers)));
  expect(found.length).toBeLessThan(2);
  return found[0]?.[1] ?? 0;
}

const cut = async (d: string): Promise<unknown> => count({ cut: [d] });

describe('checkSelfCrossing', () => {
  it('finds where a bow tie crosses, wherever its points are', async () => {
    expect(await cut('M50 50L100 100V50L50 100Z')).toBe(1);
    // A point at the crossing on one stretch, on both, and just beside it.
    expect(await cut('M50 50L75 75L100 100V50L50 100Z')).toBe(1);
    expect(await cut('M50 50L75 75L100 100V50L75 75L50 100Z')).toBe(1);
    expect(await cut('M50 50L75 75.004L100 100V50L50 100Z')).toBe(1);
    expect(await cut('M50 50L75 74.996L100 100V50L75 75.003L50 100Z')).toBe(1);
    expect(await cut('M75 75L100 100V50L50 100V50Z')).toBe(1);
  });

  it('finds it in a line that ends where it starts, closed or not', async () => {
    expect(await cut('M50 50L100 100V50L50 100V50')).toBe(1);
    expect(await cut('M50 50L100 100V50L50 100')).toBe(0);
  });

  it('finds it in an outline of several lines', async () => {
    expect(await count({ cut: ['M50 50L100 100V50', 'M50 50V100L100 50'] })).toBe(1);
    expect(await count({ cut: ['M50 50L75 75', 'M75 75L100 100V50L75 75', 'M75 75L50 100V50'] })).toBe(0);
    expect(await count({ cut: ['M50 50L74 74', 'M74 74L100 100V50', 'M100 50L50 100V50'] })).toBe(1);
  });

  it('counts each place once', async () => {
    // A star of five points crosses itself five times.
    const star = [0, 2, 4, 1, 3].map((tip) => {
      const angle = (2 * Math.PI * tip) / 5;
      return `${100 + 40 * Math.sin(angle)} ${100 - 40 * Math.cos(angle)}`;
    });
    expect(await cut(`M${star.join('L')}Z`)).toBe(5);
    expect(await cut('M50 50C150 110 150 110 150 80S150 50 50 110Z')).toBe(1);
  });

  it('lets an outline touch itself without a change of sides', async () => {
    // A notch whose tip reaches the other side, at its middle and at a point.
    expect(await cut('M50 50H150V110H110L100 50L90 110H50Z')).toBe(0);
    expect(await cut('M50 50H100H150V110H110L100 50L90 110H50Z')).toBe(0);
    // Two squares that meet in a corner, drawn as one line that turns back there.
    expect(await cut('M50 50H75V75H100V100H75V75H50Z')).toBe(0);
    expect(await cut('M50 50H75V100H100V75H50Z')).toBe(1);
  });

  it('lets outlines be that are well drawn, and what is no cut outline', async () => {
    expect(await cut(BLANK)).toBe(0);
    expect(await cut('M100 50A30 30 0 0 1 100 110A30 30 0 0 1 100 50Z')).toBe(0);
    expect(await cut('M50 50H60M55 45V55')).toBe(0);
    expect(await count({ cut: ['M40 80H160', 'M100 40V120'] })).toBe(0);
    expect(await count({ cut: [BLANK], crease: ['M60 60L100 100V60L60 100Z'] })).toBe(0);
  });
});
