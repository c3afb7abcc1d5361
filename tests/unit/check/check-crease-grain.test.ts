// Creases with and across the grain: lengths by hand.
import { describe, expect, it } from 'vitest';
import { checkCreaseGrain } from '../../../src/check/check-crease-grain.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { BLANK, dieFacts } from './die-facts.js';

async function find(crease: readonly string[], grain: CheckSettings['grain']): Promise<readonly unknown[]> {
  const facts = await dieFacts({ crease, perforation: ['M50 60H150'], cut: [BLANK] }, { grain });
  return checkCreaseGrain(facts).map(({ data }) => [data.withMm, data.acrossMm]);
}

describe('checkCreaseGrain', () => {
  it('adds up what runs with the grain and across it', async () => {
    const crease = ['M100 50V110', 'M50 80H100', 'M100 90h30v-10'];
    expect(await find(crease, 'vertical')).toEqual([[70, 80]]);
    expect(await find(crease, 'horizontal')).toEqual([[80, 70]]);
  });

  it('takes a slanting crease to the side that it is nearer to', async () => {
    expect(await find(['M60 60l30 29.9'], 'horizontal')).toEqual([[expect.closeTo(Math.hypot(30, 29.9), 5), 0]]);
    expect(await find(['M60 60l30 30.1'], 'horizontal')).toEqual([[0, expect.closeTo(Math.hypot(30, 30.1), 5)]]);
  });

  it('is silent without creases, and where no grain is said', async () => {
    expect(await find([], 'vertical')).toEqual([]);
    expect(await find(['M100 50V110'], 'not-said')).toEqual([]);
  });
});
