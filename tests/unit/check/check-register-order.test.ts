// Passes that look for marks which are not on the sheet yet.
import { describe, expect, it } from 'vitest';
import { checkRegisterOrder } from '../../../src/check/check-register-order.js';
import { listPasses, readFacts, type Wishes } from './read-facts.js';

const NO_OWN: readonly (readonly [string, string])[] = [['id="target" d="M20 71H28V79H20Z"', 'id="target" d="M20 71"']];

async function complain(order: string, more: Readonly<Record<string, object>>, marks?: Wishes['marks']) {
  const wishes = { passes: listPasses(order, more), ...(marks === undefined ? {} : { marks }) };
  return checkRegisterOrder(await readFacts(wishes, NO_OWN)).map(({ message }) => message);
}

const TO_PRINT = { registersTo: 'printed-marks' };

describe('a pass that registers to printed marks', () => {
  it('finds them when a pass has printed them before', async () => {
    expect(await complain('crease print cut', { cut: TO_PRINT })).toEqual([]);
  });

  it('does not find them when the printing comes later', async () => {
    expect(await complain('cut crease print', { cut: TO_PRINT, crease: TO_PRINT })).toEqual([
      'Pass 1, cut, registers to printed marks, but the first pass that prints any, print, runs after it.',
      'Pass 2, crease, registers to printed marks, but the first pass that prints any, print, runs after it.',
    ]);
  });

  it('does not find its own', async () => {
    expect(await complain('crease print cut', { print: TO_PRINT })).toEqual([
      'Pass 2, print, registers to printed marks, but no pass prints any.',
    ]);
  });

  it('does not find them on the other side of the sheet', async () => {
    const [message] = await complain('print crease cut', { crease: { ...TO_PRINT, side: 'reverse' } });
    expect(message).toContain('they are on the other side of the sheet');
  });

  it('does not find them where the printed pass carries none', async () => {
    const [message] = await complain('print cut crease', { cut: TO_PRINT }, { passes: ['cut'] });
    expect(message).toContain('print runs before it, but carries no register marks');
    expect(await complain('print cut crease', { cut: TO_PRINT }, { wanted: false })).toHaveLength(1);
  });

  it("finds the designer's own where the sheets get none", async () => {
    const wishes = { passes: listPasses('print cut crease', { cut: TO_PRINT }), marks: { wanted: false } };
    expect(checkRegisterOrder(await readFacts(wishes))).toEqual([]);
  });
});

describe('a pass that registers to another', () => {
  it('finds the marks of one that ran before', async () => {
    expect(await complain('crease print cut', { print: { registersTo: 'crease' } })).toEqual([]);
  });

  it.each([
    ['print', 'crease runs after it', 'print crease cut', 'crease'],
    ['print', 'that is the pass itself', 'crease print cut', 'print'],
  ])('%s: %s', async (pass, why, order, to) => {
    const [message] = await complain(order, { [pass]: { registersTo: to } });
    expect(message).toContain(`registers to the marks of ${to}, but ${why}.`);
  });

  it('does not find those of one that carries none, or is on the other side', async () => {
    const [unmarked] = await complain('crease print cut', { print: { registersTo: 'crease' } }, { passes: ['cut'] });
    expect(unmarked).toContain('crease carries no register marks');
    const [behind] = await complain('crease print cut', {
      crease: { side: 'reverse' },
      print: { registersTo: 'crease' },
    });
    expect(behind).toContain('those of crease are on the other side of the sheet');
  });
});

describe('a pass that registers to the edge, or says nothing', () => {
  it('needs no marks', async () => {
    expect(await complain('cut print crease', { cut: { registersTo: 'edge' } }, { wanted: false })).toEqual([]);
  });
});
