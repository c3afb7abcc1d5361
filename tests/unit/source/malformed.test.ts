// Lines, columns and carets.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { countCharacters, faultAt, findLineColumn, showLine } from '../../../src/source/malformed.js';

const offsetOf = (text: string, mark: string): number => encodeUtf8(text.slice(0, text.indexOf(mark))).length;

describe('findLineColumn', () => {
  it.each([
    ['|', 1, 1],
    ['ab|', 1, 3],
    ['ab\n|', 2, 1],
    ['ab\r\nc|', 2, 2],
    ['ab|\n', 1, 3],
    ['a\n\n\näö€|', 4, 4],
    ['😀😀|', 1, 3],
  ])('%j', (text, line, column) => {
    expect(findLineColumn(encodeUtf8(text.replace('|', '')), offsetOf(text, '|'))).toEqual({ line, column });
  });

  it('past the end is the end', () => {
    expect(findLineColumn(encodeUtf8('a\nb'), 99)).toEqual({ line: 2, column: 2 });
  });
});

describe('showLine', () => {
  const show = (text: string): string[] => showLine(encodeUtf8(text.replace('|', '')), offsetOf(text, '|')).split('\n');

  it('shows the line alone, and a caret under the place', () => {
    expect(show('one\ntwo |three\nfour')).toEqual(['two three', '    ^']);
  });

  it('cuts a long line to 60 characters on either side', () => {
    expect(show(`${'a'.repeat(61)}${'b'.repeat(60)}|${'c'.repeat(60)}d`)).toEqual([
      'b'.repeat(60) + 'c'.repeat(60),
      `${' '.repeat(60)}^`,
    ]);
  });

  it.each(['ä', '€', '😀'])('cuts between whole characters, of %s', (sign) => {
    for (const lead of ['', 'a', 'aa', 'aaa']) {
      const [shown] = show(`${sign.repeat(99)}${lead}|${lead}${sign.repeat(99)}`);
      expect(shown).toBe(`${sign.repeat(60 - lead.length)}${lead}${lead}${sign.repeat(60 - lead.length)}`);
    }
  });

  it('keeps the caret in place where tabs and control characters stand', () => {
    expect(show('\ta\u0001|b')).toEqual([' a b', '   ^']);
  });
});

it('countCharacters counts what stands between two offsets', () => {
  expect(countCharacters(encodeUtf8('aä€😀b'), 1, 10)).toBe(3);
});

it('faultAt says line, column, what is wrong, and shows it', () => {
  const fault = faultAt('source/malformed', encodeUtf8('a\nbc'), 3, { message: 'wrong.', remedy: 'Mend it.' });
  expect(fault.message).toBe('Line 2, column 2: wrong.\nbc\n ^');
  expect(fault.findings).toEqual([
    expect.objectContaining({ code: 'source/malformed', place: { line: 2, column: 2 }, remedy: 'Mend it.' }),
  ]);
});
