// Rounding does not break a bound.
import { describe, expect, it } from 'vitest';
import { isAbove, isBelow } from '../../../src/check/beyond-bound.js';

describe('a bound', () => {
  it('is kept within a thousandth', () => {
    expect([isBelow(2, 2), isBelow(1.9991, 2), isBelow(1.9989, 2)]).toEqual([false, false, true]);
    expect([isAbove(2, 2), isAbove(2.0009, 2), isAbove(2.0011, 2)]).toEqual([false, false, true]);
  });

  it('that is small is kept within a thousandth of itself', () => {
    expect([isBelow(0.01, 0.01), isBelow(0.009991, 0.01), isBelow(0.009989, 0.01)]).toEqual([false, false, true]);
    expect([isAbove(0, 0), isAbove(1e-9, 0), isBelow(0, 0), isBelow(-1e-9, 0)]).toEqual([false, true, false, true]);
  });
});
