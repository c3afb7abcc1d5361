// Printed numbers.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printNumber } from '../../../src/geometry/print-number.js';

describe('a printed number', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [1, '1'],
    [-1, '-1'],
    [10, '10'],
    [100, '100'],
    [0.5, '0.5'],
    [-0.5, '-0.5'],
    [0.1 + 0.2, '0.3'],
    [1 / 3, '0.333333'],
    [2 / 3, '0.666667'],
    [0.0000004, '0'],
    [-0.0000004, '0'],
    [0.0000005, '0'],
    [0.0000006, '0.000001'],
    [1e-7, '0'],
    [-1e-300, '0'],
    [99.9999999, '100'],
    [123456.789, '123456.789'],
    [1e15 + 0.25, '1000000000000000.2'],
    [1e20, '100000000000000000000'],
    [1e21, '1000000000000000000000'],
    [-1.5e22, '-15000000000000000000000'],
    [1.7976931348623157e308, `17976931348623157${'0'.repeat(292)}`],
  ])('%d', (value, text) => {
    expect(printNumber(value)).toBe(text);
  });

  it('has as many places as asked for', () => {
    expect(printNumber(1.23456789, 0)).toBe('1');
    expect(printNumber(10.4, 0)).toBe('10');
    expect(printNumber(1.23456789, 2)).toBe('1.23');
    expect(printNumber(1.999, 2)).toBe('2');
    expect(printNumber(1e-7, 7)).toBe('0.0000001');
    expect(printNumber(0.1 + 0.2, 20)).toBe('0.30000000000000004');
  });

  it('refuses what is not finite', () => {
    for (const value of [Number.NaN, Infinity, -Infinity]) {
      expect(() => printNumber(value)).toThrow('number is not finite');
    }
  });

  it('reads back within half a place, without exponent, zeros at the end or negative zero', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        fc.integer({ min: 0, max: 9 }),
        (value, decimals) => {
          const text = printNumber(value, decimals);
          expect(text).toMatch(/^(0|-?(0|[1-9][0-9]*)(\.[0-9]*[1-9])?)$/);
          expect(text).not.toBe('-0');
          const half = 0.5 / Number(`1e${decimals}`);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(half * (1 + 1e-6) + Math.abs(value) * 2e-16);
        },
      ),
    );
  });
});
