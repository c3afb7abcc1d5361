// Well-formed UTF-8 and characters of XML, at every alignment.
import { describe, expect, it } from 'vitest';
import { findBadCharacter, sequenceLength } from '../../../src/source/check-characters.js';

/** The bytes behind and before some plain ones, at an offset in their buffer. */
function place(bytes: readonly number[], before: number, shift: number): Uint8Array {
  const all = new Uint8Array(shift + before + bytes.length + 9).fill(0x61);
  all.set(bytes, shift + before);
  return all.subarray(shift);
}

// Unicode 15, table 3-7, well-formed UTF-8 byte sequences: the edges of each row.
const SOUND = [
  [0x7f],
  [0xc2, 0x80],
  [0xdf, 0xbf],
  [0xe0, 0xa0, 0x80],
  [0xe1, 0x80, 0x80],
  [0xed, 0x9f, 0xbf],
  [0xee, 0x80, 0x80],
  [0xef, 0xbf, 0xbd],
  [0xf0, 0x90, 0x80, 0x80],
  [0xf1, 0x80, 0x80, 0x80],
  [0xf4, 0x8f, 0xbf, 0xbf],
  [0x09],
  [0x0a],
  [0x0d],
  [0x20],
];

const BROKEN = [
  [0x80],
  [0xc0, 0x80],
  [0xc1, 0xbf],
  [0xc2, 0x7f],
  [0xc2, 0xc0],
  [0xe0, 0x9f, 0xbf],
  [0xed, 0xa0, 0x80],
  [0xe1, 0x80],
  [0xf0, 0x8f, 0xbf, 0xbf],
  [0xf4, 0x90, 0x80, 0x80],
  [0xf1, 0x80, 0x80],
  [0xf5, 0x80, 0x80, 0x80],
  [0xff],
];

// XML 1.0 (5th ed.), production 2.
const FORBIDDEN = [[0x00], [0x08], [0x0b], [0x0c], [0x0e], [0x1f], [0xef, 0xbf, 0xbe], [0xef, 0xbf, 0xbf]];

describe.each([0, 1, 2, 3])('%i bytes into the buffer', (shift) => {
  it.each([0, 1, 2, 3, 4, 5, 8, 13])('after %i plain bytes', (before) => {
    for (const bytes of SOUND) expect(findBadCharacter(place(bytes, before, shift)), `${bytes}`).toBeNull();
    for (const bytes of BROKEN) {
      expect(findBadCharacter(place(bytes, before, shift)), `${bytes}`).toEqual({ offset: before, kind: 'encoding' });
    }
    for (const bytes of FORBIDDEN) {
      expect(findBadCharacter(place(bytes, before, shift)), `${bytes}`).toEqual({ offset: before, kind: 'character' });
    }
  });
});

it('a sequence that the end cuts off is broken', () => {
  for (const bytes of SOUND.filter(({ length }) => length > 1)) {
    const cut = Uint8Array.from([0x61, ...bytes.slice(0, -1)]);
    expect(findBadCharacter(cut), `${bytes}`).toEqual({ offset: 1, kind: 'encoding' });
  }
});

it('nothing is sound', () => {
  expect(findBadCharacter(new Uint8Array(0))).toBeNull();
});

it('sequenceLength is the length of the character, 0 where it is none', () => {
  expect(SOUND.map((bytes) => sequenceLength(Uint8Array.from(bytes), 0))).toEqual(SOUND.map(({ length }) => length));
  expect(BROKEN.map((bytes) => sequenceLength(Uint8Array.from(bytes), 0))).toEqual(BROKEN.map(() => 0));
});
