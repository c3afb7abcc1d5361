// The bytes in a data: address.
import { decodeUtf8 } from '../model/platform.js';

const PERCENT = 0x25;
const COMMA = 0x2c;

/** Value of each base64 digit by its byte; 255 for everything else. Both alphabets are read. */
const DIGITS: Uint8Array = (() => {
  const digits = new Uint8Array(256).fill(255);
  const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  for (let i = 0; i < 64; i += 1) digits[alphabet.charCodeAt(i)] = i;
  digits['-'.charCodeAt(0)] = 62;
  digits['_'.charCodeAt(0)] = 63;
  return digits;
})();

function hexDigit(byte: number | undefined): number {
  const value = Number.parseInt(String.fromCharCode(byte ?? 0), 16);
  return Number.isNaN(value) ? -1 : value;
}

/** Calls back with each byte, `%41` taken as one; stops when told to. */
function eachByte(text: Uint8Array, from: number, take: (byte: number) => boolean): void {
  for (let at = from; at < text.length; at += 1) {
    let byte = text[at]!;
    if (byte === PERCENT) {
      const [high, low] = [hexDigit(text[at + 1]), hexDigit(text[at + 2])];
      if (high >= 0 && low >= 0) {
        byte = 16 * high + low;
        at += 2;
      }
    }
    if (!take(byte)) return;
  }
}

/**
 * The first bytes that a data: address holds.
 *
 * @param address - The address, UTF-8.
 * @param most - Bytes wanted at most, so that a large picture is not unpacked for its size.
 * @returns Null where it is no data: address.
 * @throws Never. What is no base64 digit is passed over.
 * @source RFC 2397; RFC 4648, sections 4 and 5
 */
export function readDataUrl(
  address: Uint8Array,
  most: number,
): { readonly mediaType: string; readonly bytes: Uint8Array } | null {
  const comma = address.subarray(0, 1000).indexOf(COMMA);
  if (comma < 0) return null;
  const head = /^\s*data:([^;]*)(.*)$/is.exec(decodeUtf8(address.subarray(0, comma)));
  if (head === null) return null;
  const bytes = new Uint8Array(Math.min(most, address.length));
  let count = 0;
  let [bits, held] = [0, 0];
  const isBase64 = /;\s*base64\s*$/i.test(head[2]!);
  eachByte(address, comma + 1, (byte) => {
    if (!isBase64) bytes[count++] = byte;
    else if (DIGITS[byte]! < 64) {
      bits = (bits << 6) | DIGITS[byte]!;
      held += 6;
      if (held >= 8) {
        held -= 8;
        bytes[count++] = (bits >> held) & 255;
        bits &= (1 << held) - 1;
      }
    }
    return count < bytes.length;
  });
  return { mediaType: head[1]!.trim().toLowerCase(), bytes: bytes.subarray(0, count) };
}
