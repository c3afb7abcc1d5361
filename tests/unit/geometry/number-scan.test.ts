// Numbers of every length and form against Number(), and what stands between them.
import { describe, expect, it } from 'vitest';
import { PADDING, scanNumber, skipSeparator, skipSpace } from '../../../src/geometry/number-scan.js';
import { seedChance } from './seed-chance.js';

/** Value and length read from the start of a text, with something in front; null where no number is. */
function scan(text: string, after = ';'): { readonly value: number; readonly length: number } | null {
  const bytes = new Uint8Array(Buffer.from(`ab${text}${after}${'\0'.repeat(PADDING)}`));
  const out = Float64Array.of(7, 7, 7);
  const end = scanNumber({ bytes, view: new DataView(bytes.buffer) }, 2, out, 1);
  expect([out[0], out[2]]).toEqual([7, 7]);
  if (end < 0) {
    expect(out[1]).toBe(7);
    expect(~end).toBeGreaterThanOrEqual(2);
    return null;
  }
  return { value: out[1]!, length: end - 2 };
}

const SIGNS = ['', '-', '+'];
const EXPONENTS = ['', '', '', 'e0', 'E1', 'e-1', 'e+7', 'e22', 'e23', 'e-22', 'e-23', 'e-300', 'e280'];

describe('a number', () => {
  it('of any count of digits is that of Number(), to the bit and to its end', () => {
    const next = seedChance(3);
    const digits = (count: number): string => Array.from({ length: count }, () => Math.floor(next() * 10)).join('');
    for (let before = 0; before <= 20; before++) {
      for (let behind = before === 0 ? 1 : 0; behind <= 20; behind++) {
        for (const sign of SIGNS) {
          const exponent = EXPONENTS[Math.floor(next() * EXPONENTS.length)]!;
          const text = `${sign}${digits(before)}${behind === 0 ? '' : `.${digits(behind)}`}${exponent}`;
          expect(scan(text), text).toEqual({ value: Number(text), length: text.length });
        }
      }
    }
  });

  it.each([
    '9007199254740993',
    '900719925474099',
    '9007199254740980',
    '900719925474098.5',
    '123456789012345.5',
    '0.1e-21',
  ])('at the edge of what is exact: %s', (text) => {
    expect(scan(text)).toEqual({ value: Number(text), length: text.length });
  });

  it('keeps the sign of zero', () => {
    expect(Object.is(scan('-0')!.value, -0)).toBe(true);
    expect(Object.is(scan('-.0')!.value, -0)).toBe(true);
    expect(Object.is(scan('-00000000000000000')!.value, -0)).toBe(true);
    expect(Object.is(scan('+0')!.value, 0)).toBe(true);
  });

  it.each([
    ['1.5', '.5', 3],
    ['1', '-2', 1],
    ['12345678', '+2', 8],
    ['1', 'e', 1],
    ['1', 'e+', 1],
    ['1', 'E-x', 1],
    ['12345678901', 'em', 11],
    ['1234567890123456', 'e;', 16],
    ['.5', '.5', 2],
    ['1', ':', 1],
    ['1', '/', 1],
    ['1e2', '.5', 3],
    ['1e2', '5', 4],
  ])('ends where it ends: %s before %s', (text, after, length) => {
    expect(scan(text, after)?.length).toBe(length);
  });

  it.each([
    '',
    '-',
    '+',
    '.',
    '-.',
    '+.',
    'e1',
    '-e1',
    '.e1',
    '--1',
    '+-1',
    'x',
    '1.',
    '-1.',
    '12345.',
    '123456789.',
    '12345678901234567890.',
    '1.e1',
    '1e400',
    '-1e999',
  ])('is none: "%s"', (text) => {
    expect(scan(text)).toBeNull();
  });
});

describe('the place where no number can be read', () => {
  const faultAt = (text: string): number => {
    const bytes = new Uint8Array(Buffer.from(`ab${text};${'\0'.repeat(PADDING)}`));
    return ~scanNumber({ bytes, view: new DataView(bytes.buffer) }, 2, new Float64Array(1), 0) - 2;
  };

  it.each([
    ['', 0],
    ['x', 0],
    ['e1', 0],
    ['-', 1],
    ['+', 1],
    ['--1', 1],
    ['+-1', 1],
    ['-e1', 1],
    ['.', 1],
    ['.e1', 1],
    ['-.', 2],
    ['1.', 2],
    ['1.e1', 2],
    ['-1.', 3],
    ['1234.x', 5],
    ['12345.', 6],
    ['1234567.', 8],
    ['123456789.', 10],
    ['-123456789.', 11],
    ['+123456789.e5', 11],
    ['12345678901234567890.', 21],
    // Too large as a whole: at its start.
    ['1e400', 0],
    ['-1e999', 0],
  ] as const)('of "%s" is %i', (text, at) => {
    expect(faultAt(text)).toBe(at);
  });
});

describe('what stands between numbers', () => {
  const at = (skip: typeof skipSpace, text: string): number => skip(new Uint8Array(Buffer.from(`ab${text};`)), 2) - 2;

  it('is white space', () => {
    expect(at(skipSpace, ' \t\n\f\r1')).toBe(5);
    for (const text of ['1', '\u000b', '\u0000', ',', '']) expect(at(skipSpace, text)).toBe(0);
  });

  it.each([
    ['1', 0],
    ['-1', 0],
    [' 1', 1],
    [' -1', 1],
    [',1', 1],
    [',-1', 1],
    ['  1', 2],
    [' , 1', 3],
    [', 1', 2],
    [' ,1', 2],
    [',,1', 1],
    [' , ,1', 3],
    ['\t\n1', 2],
    ['+1', 0],
  ] as const)('is one comma at most: "%s"', (text, length) => {
    expect(at(skipSeparator, text)).toBe(length);
  });
});
