// Numbers as hands type them.
import { expect, it } from 'vitest';
import { readAmount } from '../../../src/page/read-amount.js';

it('reads a point and a comma in either language', () => {
  for (const sign of ['.', ','] as const) {
    expect(
      ['2', '1.5', '1,5', '.5', ',5', '3.', '0.125', '0,125', '12.25 mm', '1250'].map((text) => readAmount(text, sign)),
    ).toEqual([2, 1.5, 1.5, 0.5, 0.5, 3, 0.125, 0.125, 12.25, 1250]);
  }
});

it('guesses no thousands', () => {
  expect([readAmount('1,250', '.'), readAmount('1.250', ',')]).toEqual([undefined, undefined]);
  expect([readAmount('1.250', '.'), readAmount('1,250', ',')]).toEqual([1.25, 1.25]);
});

it('says nothing of nothing, and refuses what is no number of nought or more', () => {
  expect([readAmount('', '.'), readAmount(' mm', '.')]).toEqual([null, null]);
  const wrong = ['-5', '1e3', 'abc', '1.2.3', '1,2,3', '--', '5 cm', '.', '9'.repeat(400)];
  expect(wrong.map((text) => readAmount(text, '.'))).toEqual(wrong.map(() => undefined));
});
