// A reverse side without an axis.
import { describe, expect, it } from 'vitest';
import { checkTurnAxis } from '../../../src/check/check-turn-axis.js';
import { listPasses, readFacts } from './read-facts.js';

async function find(more: Readonly<Record<string, object>>, checks: object = {}): Promise<readonly unknown[]> {
  const facts = await readFacts({ passes: listPasses('print crease cut', more), checks });
  return checkTurnAxis(facts).map(({ data }) => data.passes);
}

const reverse = { side: 'reverse' };

describe('checkTurnAxis', () => {
  it('wants an axis where some passes run on the reverse side', async () => {
    expect(await find({})).toEqual([]);
    expect(await find({ crease: reverse })).toEqual([['crease']]);
    expect(await find({ crease: reverse, cut: reverse })).toEqual([['crease', 'cut']]);
  });

  it('is silent where all do, or where it is said', async () => {
    expect(await find({ print: reverse, crease: reverse, cut: reverse })).toEqual([]);
    expect(await find({ crease: reverse }, { turnAxis: 'vertical' })).toEqual([]);
    expect(await find({ crease: reverse }, { turnAxis: 'horizontal' })).toEqual([]);
  });
});
