// Creases beside cuts and beside each other: distances by hand, at the bound and one past it.
import { describe, expect, it } from 'vitest';
import { checkCreaseDistance } from '../../../src/check/check-crease-distance.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function find(layers: DieLayers, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkCreaseDistance(await dieFacts({ cut: [BLANK], ...layers }, checks)));
}

describe('checkCreaseDistance', () => {
  it('allows 2 mm from a cut and nothing less', async () => {
    expect(await find({ crease: ['M52 50V110'] })).toEqual([]);
    expect(await find({ crease: ['M51.99 50V110'] })).toEqual([['crease-near-cut', 1, 1.99]]);
    expect(await find({ perforation: ['M51.99 50V110'] })).toEqual([['crease-near-cut', 1, 1.99]]);
  });

  it('allows the same on a slant: a bound that is kept is kept however the lines lie', async () => {
    // 5-12-13: a distance of exactly 2 mm from the line through (60, 60) and (72, 65).
    const cut = [BLANK, 'M60 60L84 70'];
    const beside = (distance: number): string => {
      const [x, y] = [(-5 / 13) * distance, (12 / 13) * distance];
      return `M${60 + x} ${60 + y}l24 10`;
    };
    expect(await find({ cut, crease: [beside(2)] })).toEqual([]);
    expect(await find({ cut, crease: [beside(1.99)] })).toEqual([['crease-near-cut', 1, 1.99]]);
    expect(await find({ cut, crease: [beside(-1.99)] })).toEqual([['crease-near-cut', 1, 1.99]]);
  });

  it('takes its number from the ticket', async () => {
    expect(await find({ crease: ['M53 50V110'] }, { creaseToCutMm: 3 })).toEqual([]);
    expect(await find({ crease: ['M52.99 50V110'] }, { creaseToCutMm: 3 })).toEqual([['crease-near-cut', 1, 2.99]]);
  });

  it('lets a crease run into a cut, across it and steeper than 5 degrees beside it', async () => {
    expect(await find({ crease: ['M100 50V110', 'M40 80H60'] })).toEqual([]);
    expect(await find({ crease: ['M50 60L60 60.9'] })).toEqual([]);
    const cut = [BLANK, 'M60 80H90'];
    expect(await find({ cut, crease: ['M60 81L90 83.7'] })).toEqual([]);
    expect(await find({ cut, crease: ['M60 81L90 83.5'] })).toEqual([['crease-near-cut', 1, 1]]);
  });

  it('lets lines be that run side by side over less than 2 mm', async () => {
    expect(await find({ crease: ['M51 60v1.99'] })).toEqual([]);
    expect(await find({ crease: ['M51 60v2.01'] })).toEqual([['crease-near-cut', 1, 1]]);
  });

  it('leaves lines on each other to another check', async () => {
    expect(await find({ crease: ['M50 60V100'] })).toEqual([]);
    expect(await find({ crease: ['M50.019 60V100'] })).toEqual([]);
    expect(await find({ crease: ['M50.021 60V100'] })).toEqual([['crease-near-cut', 1, 0.021]]);
  });

  it('measures concentric arcs by the difference of their radii', async () => {
    const arc = (r: number): string => `M${100 - r} 80A${r} ${r} 0 0 1 ${100 + r} 80`;
    expect(await find({ cut: [BLANK, arc(20)], crease: [arc(18)] }, { creaseToCutMm: 1.98 })).toEqual([]);
    const found = await find({ cut: [BLANK, arc(20)], crease: [arc(18)] }, { creaseToCutMm: 2.02 });
    expect(found).toEqual([['crease-near-cut', 1, expect.any(Number)]]);
    // Flattening may move each line by 0.005 mm.
    expect(Math.abs((found[0] as readonly number[])[2]! - 2)).toBeLessThan(0.01);
  });

  it('needs 1.5 calipers and the rule from crease to crease', async () => {
    // 1.5 x 0.4 + 0.7 = 1.3 mm.
    const pair = (distance: number): readonly string[] => ['M100 50V110', `M${100 + distance} 50V110`];
    expect(await find({ crease: pair(1) })).toEqual([]);
    expect(await find({ crease: pair(1.3) }, { caliperMm: 0.4 })).toEqual([]);
    expect(await find({ crease: pair(1.29) }, { caliperMm: 0.4 })).toEqual([['crease-pair-narrow', 2, 1.29]]);
    expect(await find({ crease: pair(1.29) }, { caliperMm: 0.4, creaseRuleMm: 0.6 })).toEqual([]);
  });
});
