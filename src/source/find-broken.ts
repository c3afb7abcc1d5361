// Where bytes stop fitting an encoding that is not UTF-8.
import { strictDecoder } from '../model/platform.js';

/** Offset of the first half of a surrogate pair without the other, or of a byte left over at the end. */
function findLoneSurrogate(bytes: Uint8Array, isBigEndian: boolean): number {
  const highAt = isBigEndian ? 0 : 1;
  const isHalf = (at: number, mark: number): boolean => (bytes[at + highAt]! & 0xfc) === mark;
  let at = 0;
  while (at + 1 < bytes.length) {
    if (isHalf(at, 0xdc)) return at;
    if (isHalf(at, 0xd8)) {
      if (at + 3 >= bytes.length || !isHalf(at + 2, 0xdc)) return at;
      at += 2;
    }
    at += 2;
  }
  return at;
}

/** Offset of the first byte that a single-byte encoding has no character for. */
function findUnknownByte(bytes: Uint8Array, label: string): number {
  const decoder = strictDecoder(label);
  const isUnknown = Array.from({ length: 256 }, (_, byte) => {
    try {
      decoder.decode(Uint8Array.of(byte));
      return false;
    } catch {
      return true;
    }
  });
  const at = bytes.findIndex((byte) => isUnknown[byte]!);
  return at < 0 ? bytes.length : at;
}

/**
 * Where bytes that cannot be decoded are broken.
 *
 * @param label - Of a UTF-16 or single-byte encoding.
 * @returns The offset; all before it can be decoded. The length of the bytes where nothing is broken.
 */
export function findBroken(bytes: Uint8Array, label: string): number {
  return label.startsWith('utf-16') ? findLoneSurrogate(bytes, label === 'utf-16be') : findUnknownByte(bytes, label);
}
