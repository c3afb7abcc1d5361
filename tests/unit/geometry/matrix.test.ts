// Products and inverses of matrices, worked out by hand with primes.
import { describe, expect, it } from 'vitest';
import { IDENTITY, invert, type Matrix, multiply } from '../../../src/geometry/matrix.js';

const OUTER: Matrix = [2, 3, 5, 7, 11, 13];
const INNER: Matrix = [17, 19, 23, 29, 31, 37];

describe('the product of matrices', () => {
  it('applies the inner one first', () => {
    expect(multiply(OUTER, INNER)).toEqual([
      2 * 17 + 5 * 19,
      3 * 17 + 7 * 19,
      2 * 23 + 5 * 29,
      3 * 23 + 7 * 29,
      2 * 31 + 5 * 37 + 11,
      3 * 31 + 7 * 37 + 13,
    ]);
  });

  it('with the identity is the other one itself', () => {
    expect(multiply(IDENTITY, INNER)).toBe(INNER);
    expect(multiply(OUTER, IDENTITY)).toBe(OUTER);
    expect(multiply(OUTER, [1, 0, 0, 1, 0, 0])).toEqual(OUTER);
    expect(multiply([1, 0, 0, 1, 0, 0], INNER)).toEqual(INNER);
  });
});

describe('the inverse of a matrix', () => {
  it('undoes it on both sides', () => {
    expect(invert([2, 0, 0, 4, 6, 20])).toEqual([0.5, -0, -0, 0.25, -3, -5]);
    const inverse = invert(OUTER)!;
    expect(inverse).toEqual([-7, 3, 5, -2, 12, -7]);
    expect(multiply(inverse, OUTER)).toEqual([1, 0, 0, 1, 0, 0]);
    expect(multiply(OUTER, inverse)).toEqual([1, 0, 0, 1, 0, 0]);
  });

  it('is missing where the plane is made flat or the numbers are none', () => {
    expect(invert([2, 4, 3, 6, 0, 0])).toBeNull();
    expect(invert([Number.NaN, 0, 0, 1, 0, 0])).toBeNull();
    expect(invert([1e200, 0, 0, 1e200, 0, 0])).toBeNull();
    expect(multiply(invert([-1, 0, 0, 1, 2, 0])!, [-1, 0, 0, 1, 2, 0]).map((value) => value + 0)).toEqual([
      1, 0, 0, 1, 0, 0,
    ]);
  });
});
