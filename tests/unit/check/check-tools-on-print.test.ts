// Tools that press on print: which order, side and place make it so.
import { describe, expect, it } from 'vitest';
import { checkToolsOnPrint } from '../../../src/check/check-tools-on-print.js';
import { listPasses, readFacts } from './read-facts.js';

async function find(
  order: string,
  more: Readonly<Record<string, object>> = {},
  change: readonly (readonly [string, string])[] = [],
): Promise<readonly unknown[]> {
  const found = checkToolsOnPrint(await readFacts({ passes: listPasses(order, more) }, change));
  return found.map(({ data }) => [data.pass, data.after, data.count]);
}

describe('checkToolsOnPrint', () => {
  it('is about creases after print, not before it', async () => {
    expect(await find('print crease cut')).toEqual([['crease', ['print'], 1]]);
    expect(await find('crease print cut')).toEqual([]);
  });

  it('is about the side that is printed', async () => {
    expect(await find('print crease cut', { crease: { side: 'reverse' } })).toEqual([]);
    expect(await find('print crease cut', { crease: { side: 'reverse' }, print: { side: 'reverse' } })).toEqual([
      ['crease', ['print'], 1],
    ]);
  });

  it('is about creases that meet print', async () => {
    const away = [['M67 52H133V98H67Z', 'M67 52H99V98H67Z']] as const;
    expect(await find('print crease cut', {}, away)).toEqual([]);
    // Around the crease, not under it.
    const around = [['M67 52H133V98H67Z', 'M67 52H99V98H67ZM101 52H133V98H101Z']] as const;
    expect(await find('print crease cut', {}, around)).toEqual([]);
    const under = [['M67 52H133V98H67Z', 'M67 52H99.95V98H67Z']] as const;
    // The width of the crease's line, 0.2 mm, reaches it.
    expect(await find('print crease cut', {}, under)).toEqual([['crease', ['print'], 1]]);
  });
});
