// The first bytes that do not fit their encoding.
import { describe, expect, it } from 'vitest';
import { findBroken } from '../../../src/source/find-broken.js';

const wide = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le'));
const swapped = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf16le').swap16());

describe('findBroken', () => {
  it.each([
    ['a whole text', wide('a😀b'), 'utf-16le', 8],
    ['a first half without a second', wide('ab\ud83dc'), 'utf-16le', 4],
    ['a second half without a first', wide('a\ude00b'), 'utf-16le', 2],
    ['a first half at the end', wide('a\ud83d'), 'utf-16le', 2],
    ['a byte left over', wide('ab').subarray(0, 3), 'utf-16le', 2],
    ['a half, the other way round', swapped('a😀\ud83d\ud83d'), 'utf-16be', 6],
    ['a byte that is no character', Uint8Array.of(0x41, 0xe4, 0xd2), 'windows-1253', 2],
    ['bytes that are all characters', Uint8Array.of(0x41, 0xe4, 0xd1), 'windows-1253', 3],
  ])('%s', (_, bytes, label, offset) => {
    expect(findBroken(bytes, label)).toBe(offset);
  });
});
