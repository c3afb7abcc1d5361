// Holes and slits before the outline that cuts their blank loose.
import { describe, expect, it } from 'vitest';
import { checkRunOrder } from '../../../src/check/check-run-order.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { BLANK, briefly, dieFacts } from './die-facts.js';

const HOLE = 'M70 70H80V80H70Z';
const SLIT = 'M100 70V90';

async function find(cut: readonly string[], checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkRunOrder(await dieFacts({ cut }, checks)));
}

describe('checkRunOrder', () => {
  it('wants holes and slits first', async () => {
    expect(await find([HOLE, SLIT, BLANK])).toEqual([]);
    expect(await find([HOLE, BLANK, SLIT])).toEqual([['cut-order', 1]]);
    expect(await find([BLANK, HOLE, SLIT])).toEqual([['cut-order', 2]]);
  });

  it('counts the outline as cut when its last line is', async () => {
    expect(await find(['M150 110H50V50', HOLE, 'M50 50H150V110'])).toEqual([]);
    expect(await find(['M150 110H50V50', 'M50 50H150V110', HOLE])).toEqual([['cut-order', 1]]);
  });

  it('looks at each blank by itself', async () => {
    const other = 'M50 130H150V170H50Z';
    expect(await find([BLANK, 'M70 140H80V150H70Z', other])).toEqual([]);
    expect(await find([other, HOLE, BLANK])).toEqual([]);
    expect(await find([other, HOLE, BLANK, 'M70 140H80V150H70Z'])).toEqual([['cut-order', 1]]);
  });

  it('says nothing where the machine sorts, and of lines beside the blank', async () => {
    expect(await find([BLANK, HOLE], { cutOrder: 'sorted' })).toEqual([]);
    expect(await find([BLANK, 'M20 20H40'])).toEqual([]);
  });
});
