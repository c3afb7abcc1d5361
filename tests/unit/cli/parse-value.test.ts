// Lengths of the command line, in mm.
import { describe, expect, it } from 'vitest';
import { parseLength, parseSheet } from '../../../src/cli/parse-value.js';

describe('a length', () => {
  it.each([
    ['3', 3],
    ['-0.3', -0.3],
    ['.5cm', 5],
    ['0.125in', 3.175],
    ['19.7in', 500.38],
    ['0.1cm', 1],
  ])('%s is %d mm, without digits that binary fractions leave', (text, mm) => {
    expect(parseLength(text)).toBe(mm);
  });

  it('has a unit or none, and no other', () => {
    expect(() => parseLength('3pt')).toThrow('mm, cm or in');
    expect(() => parseLength('')).toThrow('mm, cm or in');
  });
});

describe('a sheet', () => {
  it('is two lengths', () => {
    expect(parseSheet('27.5inx19.7in')).toEqual([698.5, 500.38]);
    expect(() => parseSheet('700')).toThrow('width x height');
  });
});
