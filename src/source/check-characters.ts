// Is every byte part of a UTF-8 sequence, and every character one that XML allows?

/** Reads four bytes at once where all are printable ASCII. */
const HIGH = 0x80808080;
const BELOW_BLANK = 0x20202020;

/** What is wrong, and where. */
export interface CharacterFault {
  readonly offset: number;
  readonly kind: 'encoding' | 'character';
}

/** Length of the well-formed UTF-8 sequence at an offset, or 0. */
export function sequenceLength(bytes: Uint8Array, at: number): number {
  const a = bytes[at]!;
  if (a < 0x80) return 1;
  const b = bytes[at + 1] ?? 0;
  if (a >= 0xc2 && a <= 0xdf) return (b & 0xc0) === 0x80 ? 2 : 0;
  const c = bytes[at + 2] ?? 0;
  if (a >= 0xe0 && a <= 0xef) {
    const low = a === 0xe0 ? 0xa0 : 0x80;
    const high = a === 0xed ? 0x9f : 0xbf;
    return b >= low && b <= high && (c & 0xc0) === 0x80 ? 3 : 0;
  }
  if (a < 0xf0 || a > 0xf4) return 0;
  const low = a === 0xf0 ? 0x90 : 0x80;
  const high = a === 0xf4 ? 0x8f : 0xbf;
  return b >= low && b <= high && (c & 0xc0) === 0x80 && ((bytes[at + 3] ?? 0) & 0xc0) === 0x80 ? 4 : 0;
}

/** Whether a three-byte sequence is U+FFFE or U+FFFF, which XML forbids. */
function isNonCharacter(bytes: Uint8Array, at: number): boolean {
  return bytes[at] === 0xef && bytes[at + 1] === 0xbf && bytes[at + 2]! >= 0xbe;
}

/** Judges one character that is not plain printable ASCII; returns its length, or a fault. */
function judgeCharacter(bytes: Uint8Array, at: number): number | CharacterFault['kind'] {
  const byte = bytes[at]!;
  if (byte < 0x80) return byte >= 0x20 || byte === 0x0a || byte === 0x09 || byte === 0x0d ? 1 : 'character';
  const length = sequenceLength(bytes, at);
  if (length === 0) return 'encoding';
  return length === 3 && isNonCharacter(bytes, at) ? 'character' : length;
}

/**
 * The first place that is not UTF-8 or not a character of XML 1.0, or null.
 *
 * @source XML 1.0 (5th ed.), production 2, Char; Unicode 15, table 3-7, well-formed UTF-8 byte sequences
 */
export function findBadCharacter(bytes: Uint8Array): CharacterFault | null {
  const { length } = bytes;
  const lead = (4 - (bytes.byteOffset & 3)) & 3;
  const words = length > lead ? new Uint32Array(bytes.buffer, bytes.byteOffset + lead, (length - lead) >> 2) : [];
  let at = 0;
  while (at < length) {
    if (((at - lead) & 3) === 0 && at >= lead) {
      let i = (at - lead) >> 2;
      while (i < words.length) {
        const word = words[i]!;
        // A set bit says: not ASCII, or below the blank.
        if ((word & HIGH) !== 0 || ((word - BELOW_BLANK) & ~word & HIGH) !== 0) break;
        i += 1;
      }
      at = lead + i * 4;
      if (at >= length) return null;
    }
    const stop = Math.min(length, at + 8);
    while (at < length && (at < stop || ((at - lead) & 3) !== 0)) {
      const verdict = judgeCharacter(bytes, at);
      if (typeof verdict !== 'number') return { offset: at, kind: verdict };
      at += verdict;
    }
  }
  return null;
}
