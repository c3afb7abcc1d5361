// Lengths and their units.
import { describe, expect, test } from 'vitest';
import { readLength, readPercentLength } from '../../../src/resolve/length.js';

const CONTEXT = { fontSize: 20, percentBase: 200 };

describe('readLength', () => {
  // CSS Values and Units 3, section 5.2: 1in = 2.54cm = 25.4mm = 101.6Q = 72pt = 6pc = 96px.
  test.each([
    ['1in', 96],
    ['2.54cm', 96],
    ['25.4mm', 96],
    ['101.6Q', 96],
    ['72pt', 96],
    ['6pc', 96],
    ['96px', 96],
    ['96', 96],
  ])('%s is an inch', (text, px) => {
    expect(readLength(text, CONTEXT)).toBeCloseTo(px, 12);
  });

  test.each([
    ['1MM', 96 / 25.4],
    [' 3px ', 3],
    ['-.5', -0.5],
    ['+2e1', 20],
    ['1e-1px', 0.1],
    ['2em', 40],
    ['2ex', 20],
    ['1ch', 10],
    ['2rem', 32],
    ['50%', 100],
    ['1q', 96 / 101.6],
    ['0', 0],
    ['calc(1px + 2px)', 3],
    ['calc(50% - 10px)', 90],
    ['calc(2 * 3px)', 6],
    ['calc(3px*2)', 6],
    ['calc(6px / 2)', 3],
    ['calc((1px + 1em) * 2)', 42],
    ['CALC( 1in - 1pc )', 80],
    ['calc(-1 * -2px)', 2],
    ['calc(1px + calc(2px))', 3],
  ])('%s is %d', (text, px) => {
    expect(readLength(text, CONTEXT)).toBeCloseTo(px, 12);
  });

  test('zero has no sign', () => {
    expect(Object.is(readLength('-0', CONTEXT), 0)).toBe(true);
    expect(Object.is(readLength('-0px', CONTEXT), 0)).toBe(true);
  });

  test.each([
    '',
    'px',
    '1 px',
    '1parsec',
    '1,5',
    'NaN',
    'Infinity',
    '1e999',
    '--1',
    '1px2',
    'auto',
    '0x10',
    // No number of CSS nor of SVG 1.1 ends in its point.
    '5.',
    '5.px',
    '1.e1',
    'calc()',
    'calc(1px+2px)',
    'calc(1px + 2)',
    'calc(1px * 2px)',
    'calc(2 / 1px)',
    'calc(1px / 0)',
    'calc(1px',
    '1toString',
    '1constructor',
    `calc${'('.repeat(100)}1px${')'.repeat(100)}`,
  ])('%s is none', (text) => {
    expect(readLength(text, CONTEXT)).toBeNull();
  });

  test('a number needs its unit where bare numbers do not count', () => {
    const strict = { ...CONTEXT, bareNumbers: false };
    expect(readLength('3', strict)).toBeNull();
    expect(readLength('calc(1 + 2)', strict)).toBeNull();
    expect(readLength('0', strict)).toBe(0);
    expect(readLength('3px', strict)).toBe(3);
  });

  test('rem is that of the root', () => {
    expect(readLength('2rem', { ...CONTEXT, rootFontSize: 10 })).toBe(20);
  });

  test('keeps the percentage apart', () => {
    expect(readPercentLength('calc(1em + 25%)', { fontSize: 10 })).toEqual({ px: 10, fraction: 0.25 });
  });
});
