// Pieces that fall out: count and area by hand.
import { describe, expect, it } from 'vitest';
import type { CheckFacts } from '../../../src/check/check-facts.js';
import { checkLoosePieces, listLoose } from '../../../src/check/check-loose-pieces.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { DEFAULT_TIES } from '../../../src/ticket/default-ticket.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function find(layers: DieLayers, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkLoosePieces(await dieFacts(layers, checks)));
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
    // One tie of half a millimetre, drawn as an opening; without the word that such openings are ties it is a fault of the outline.
    const window = 'M75.25 70H80V82H70V70H74.75';
    expect(await find({ cut: [window, BLANK] }, { tieMm: 0.5 })).toEqual([]);
    expect(await find({ cut: [window, BLANK] })).toEqual([['loose-piece', 1, 120]]);
    expect(await find({ cut: [window, 'M100 70H110V80H100Z', BLANK] }, { tieMm: 0.5 })).toEqual([
      ['loose-piece', 1, 100],
    ]);
    // Dashes of a window of 44 mm around: with a gap, and without.
    const dashed = (dashes: string): string => `<path d="M70 70H80V82H70Z" stroke-dasharray="${dashes}"/>`;
    expect(await find({ cut: [dashed('20 1'), BLANK] })).toEqual([]);
    expect(await find({ cut: [dashed('50 1'), BLANK] })).toEqual([['loose-piece', 1, 120]]);
  });

  it('counts none that the ticket asks ties for, by name or role of the pass', async () => {
    const facts = await dieFacts({ cut: ['M70 70H80V82H70Z', BLANK] });
    const tied = (pass: string): CheckFacts => ({
      ...facts,
      ticket: { ...facts.ticket, ties: [{ ...DEFAULT_TIES.hold, pass, mode: 'hold' }] },
    });
    expect(listLoose(facts)).toHaveLength(1);
    expect(listLoose(tied('cut'))).toEqual([]);
    expect(listLoose(tied('cutting'))).toEqual([]);
    expect(listLoose(tied('crease'))).toHaveLength(1);
  });
});
