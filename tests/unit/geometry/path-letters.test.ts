// Commands of path data, held against the grammar.
import { describe, expect, it } from 'vitest';
import { countArguments, LETTER } from '../../../src/geometry/path-letters.js';

/** SVG 2, section 9.3.9: how many numbers each command takes for one segment. */
const GRAMMAR: Readonly<Record<string, number>> = {
  M: 2,
  Z: 0,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
};

describe('commands of path data', () => {
  it('take as many numbers as the grammar says, absolute or relative; all other bytes none', () => {
    for (let byte = 0; byte < 256; byte++) {
      const letter = String.fromCharCode(byte);
      const expected = GRAMMAR[letter] ?? GRAMMAR[letter.toUpperCase()] ?? 0;
      expect(countArguments(byte), `byte ${byte}`).toBe(/[a-z]/i.test(letter) ? expected : 0);
    }
  });

  it('are those of the grammar, by their absolute letters', () => {
    const letters = Object.entries(LETTER).map(([name, code]) => [name.toUpperCase(), String.fromCharCode(code)]);
    expect(letters.every(([name, letter]) => name === letter)).toBe(true);
    expect(letters.map(([name]) => name).sort()).toEqual(Object.keys(GRAMMAR).sort());
  });
});
