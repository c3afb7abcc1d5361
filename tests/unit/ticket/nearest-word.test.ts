// The word that was meant: by edit distance, else by a common beginning.
import { describe, expect, it } from 'vitest';
import { ROLES } from '../../../src/model/pass.js';
import { nearestWord } from '../../../src/ticket/nearest-word.js';

const KEYS = ['layer', 'stroke', 'fill', 'width', 'dashed'];

describe('nearestWord', () => {
  it.each([
    ['strok', 'stroke'],
    ['storke', 'stroke'],
    ['STROKE', 'stroke'],
    ['layr', 'layer'],
    ['fil', 'fill'],
    ['widht', 'width'],
  ])('takes %s for %s', (word, meant) => {
    expect(nearestWord(word, KEYS)).toBe(meant);
  });

  it.each(['colour', '', 'x', 'strokes of luck'])('finds nothing near %j', (word) => {
    expect(nearestWord(word, KEYS)).toBeNull();
  });

  it.each([
    ['crease', 'creasing'],
    ['cut', 'cutting'],
    ['perforate', 'perforating'],
    ['glue', 'gluing'],
    ['drill', 'drilling'],
  ])('takes the verb %s for the role %s', (verb, role) => {
    expect(nearestWord(verb, ROLES)).toBe(role);
  });

  it('says nothing where two words begin alike', () => {
    expect(nearestWord('part', ['partial-cutting', 'partnership'])).toBeNull();
  });

  it('counts a swap of neighbours as one change', () => {
    expect(nearestWord('ab', ['ba'])).toBe('ba');
    expect(nearestWord('abc', ['cab'])).toBeNull();
  });

  it('knows no word among none', () => {
    expect(nearestWord('layer', [])).toBeNull();
  });
});
