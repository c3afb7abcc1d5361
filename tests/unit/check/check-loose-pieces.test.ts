// Pieces that fall out: count and area by hand.
import { describe, expect, it } from 'vitest';
import { checkLoosePieces } from '../../../src/check/check-loose-pieces.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function find(layers: DieLayers): Promise<readonly unknown[]> {
  return briefly(checkLoosePieces(await dieFacts(layers)));
}

describe('checkLoosePieces', () => {
  it('finds windows and holes with their area', async () => {
    expect(await find({ cut: [BLANK] })).toEqual([]);
    expect(await find({ cut: ['M70 70H80V82H70Z', BLANK] })).toEqual([['loose-piece', 1, 120]]);
    expect(await find({ cut: ['M70 70H80V82H70Z', 'M100 70L110 70L100 90Z', BLANK] })).toEqual([
      ['loose-piece', 2, 220],
    ]);
  });

  it('gives size and place of each, the largest first', async () => {
    const [found] = checkLoosePieces(await dieFacts({ cut: ['M70 70H80V82H70Z', 'M100 70l3 4l-8 6l-3 -4Z', BLANK] }));
    expect(found!.data.pieces).toMatchObject([
      { lengthMm: 12, widthMm: 10, areaMm2: 120 },
      { lengthMm: 10, widthMm: 5, areaMm2: 50 },
    ]);
    // A window with a tongue in it leaves less of itself.
    const [ring] = checkLoosePieces(await dieFacts({ cut: ['M75 75H78V78H75Z', 'M70 70H80V82H70Z', BLANK] }));
    expect(ring!.data).toMatchObject({ count: 2, areaMm2: 120 });
  });

  it('counts slits, flaps and pieces that ties hold as none', async () => {
    expect(await find({ cut: ['M70 70V82H80V70', BLANK] })).toEqual([]);
    expect(await find({ cut: ['M70 70V82H80V70', BLANK], crease: ['M70 70H80'] })).toEqual([]);
    expect(await find({ cut: ['M76 70H80V82H70V70H74', BLANK] })).toEqual([]);
  });
});
