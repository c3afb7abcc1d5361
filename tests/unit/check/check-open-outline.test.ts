// Openings of cut outlines and folds where a cut should be: widths by hand, at the bound and one past it.
import { describe, expect, it } from 'vitest';
import { checkOpenOutline } from '../../../src/check/check-open-outline.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function find(layers: DieLayers, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkOpenOutline(await dieFacts(layers, checks)));
}

/** A blank that is open by some width in the middle of a side. */
const open = (gap: number): string => `M${100 + gap} 50H150V110H50V50H100`;

describe('openings', () => {
  it('up to 0.05 mm are closed', async () => {
    expect(await find({ cut: [BLANK] })).toEqual([]);
    expect(await find({ cut: [open(0.05)] })).toEqual([]);
    expect(await find({ cut: [open(0.051)] })).toEqual([['outline-open', 1, 0.051]]);
    expect(await find({ cut: [open(0.1)] }, { snapMm: 0.1 })).toEqual([]);
    expect(await find({ cut: [open(0.101)] }, { snapMm: 0.1 })).toEqual([['outline-open', 1, 0.101]]);
  });

  it('narrower and wider than a millimetre are told alike, each once', async () => {
    for (const gap of [0.99, 1, 1.01, 30]) {
      expect(await find({ cut: [open(gap)] })).toEqual([['outline-open', 1, gap]]);
    }
    expect(await find({ cut: ['M100.5 50H150V109.3M150 110H50V50H100'] })).toEqual([['outline-open', 2, 0.7]]);
  });

  it('are measured from end to end, however they lie', async () => {
    // 0.3 and 0.4 mm off: half a millimetre.
    expect(await find({ cut: ['M100.3 50.4H150V110H50V50H100'] })).toEqual([['outline-open', 1, 0.5]]);
  });

  it('across most of the cut are no openings: a line across', async () => {
    expect(await find({ cut: ['M20 80H160'] })).toEqual([]);
    // Three sides of a rectangle: an opening of 100 mm in 220 mm of cut.
    expect(await find({ cut: ['M50 50V110H150V50'] })).toEqual([['outline-open', 1, 100]]);
    // An angle opened by 100 mm in 122 mm of cut.
    expect(await find({ cut: ['M50 50L100 85L150 50'] })).toEqual([]);
  });

  it('within a blank are open by right', async () => {
    expect(await find({ cut: [BLANK, 'M70 70H100V90'] })).toEqual([]);
    expect(await find({ cut: [BLANK, 'M70 70H100V90H70V72'] })).toEqual([]);
  });

  it('as wide as a tie are ties', async () => {
    expect(await find({ cut: [open(0.5)] }, { tieMm: 0.5 })).toEqual([]);
    expect(await find({ cut: [open(0.63)] }, { tieMm: 0.5 })).toEqual([['outline-open', 1, 0.63]]);
  });
});

describe('folds at the edge of the board', () => {
  it('are told with their length', async () => {
    expect(await find({ cut: ['M50 50H150M150 110H50V50'], crease: ['M150 50V110'] })).toEqual([
      ['outline-not-cut', 1, 60],
    ]);
    // Two panels; the lower one is held by a crease where its edge should be cut.
    const cut = ['M50 50H150V110M50 110V50'];
    expect(await find({ cut: [...cut, 'M50 110V130H80V110'], crease: ['M50 110H150'] })).toEqual([
      ['outline-not-cut', 1, 70],
    ]);
    expect(await find({ cut: [...cut, 'M50 110V130H150V110'], crease: ['M50 110H150'] })).toEqual([]);
  });
});
