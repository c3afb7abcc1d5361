// Errors in a text with written-out entities speak of the file as delivered.
import { describe, expect, it } from 'vitest';
import { deliveredOffset } from '../../../src/source/delivered.js';
import { describeFault, readText } from './catch-fault.js';

describe('deliveredOffset', () => {
  // 'ab&x;cd&y;ef' with x = '12345' and y = ''.
  const expansions = [
    { start: 2, end: 7, referenceLength: 3 },
    { start: 9, end: 9, referenceLength: 3 },
  ];

  it.each([
    ['before', 1, 1],
    ['at the start of a replacement', 2, 2],
    ['inside a replacement: its reference', 6, 2],
    ['past a replacement', 7, 5],
    ['where nothing was written out: the reference', 9, 7],
    ['past both', 10, 11],
  ])('%s', (_, offset, expected) => {
    expect(deliveredOffset(expansions, offset)).toBe(expected);
  });
});

describe('after a written-out entity, in the line delivered', () => {
  const HEAD = '<!DOCTYPE svg [<!ENTITY e "one\n\ntwo &amp; three">]>\n<svg xmlns="http://www.w3.org/2000/svg">\n';
  const fault = (rest: string, limits = {}) => describeFault(() => readText(HEAD + rest, limits));

  it('malformed text', () => {
    const shown = '<g id="&e;&e;"><b></g></svg>';
    expect(fault(shown)).toEqual({
      code: 'source/malformed',
      line: 5,
      column: 19,
      shown,
      caret: `${' '.repeat(18)}^`,
    });
  });

  it('a tag inside an entity is told at the reference', () => {
    const text = '<!DOCTYPE svg [<!ENTITY e "<b c/>">]>\n<svg>\n<!-- &e; --> &e; </svg>';
    expect(describeFault(() => readText(text))).toMatchObject({ code: 'source/malformed', line: 3, column: 14 });
  });

  it.each([
    [{ depth: 1 }, 'limit/depth', 6, 3],
    [{ elements: 1 }, 'limit/elements', 6, 3],
    [{ attributesPerElement: 1 }, 'limit/attributes', 7, 3],
  ])('the bound %j', (limits, code, line, column) => {
    const place = { code, line, column };
    expect(fault('&e;\n  <g a="&e;"\n  b=""/></svg>', limits)).toMatchObject(place);
  });

  it('a root that is not svg', () => {
    const text = '<!DOCTYPE html [<!ENTITY e "a\nb">]>\n<html>&e;</html>';
    expect(describeFault(() => readText(text))).toMatchObject({ code: 'source/not-svg', line: 3, column: 1 });
  });

  it('a missing namespace does not change the place', () => {
    const text = '<!DOCTYPE svg [<!ENTITY e "a long value">]>\n<svg>&e;<p:g/></svg>';
    expect(describeFault(() => readText(text))).toMatchObject({ code: 'source/malformed', line: 2, column: 9 });
  });
});
