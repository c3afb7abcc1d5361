// Decimal numbers straight from bytes.

/** Powers of ten that a double holds exactly. */
const POWERS_OF_TEN: Float64Array = Float64Array.of(
  ...[1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11],
  ...[1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22],
);

/** Up to here a mantissa can take one more digit and stay exact. */
const SAFE_MANTISSA = 900719925474098;

/** Text whose bytes from `end` on are there for `PADDING` bytes and whose byte at `end` is part of no number. */
export interface NumberText {
  readonly bytes: Uint8Array;
  /** Of the same bytes. */
  readonly view: DataView;
}

/** Bytes that must follow a text. */
export const PADDING = 12;

/**
 * Reads the number at `start` into `out[index]`.
 *
 * Digits are taken four bytes at a time, without a branch per digit: their lengths are what a processor guesses wrong. Up to
 * fifteen digits make an exact mantissa that is divided once by an exact power of ten, which rounds correctly; everything else
 * takes a slower road with the same result.
 *
 * @param start - Offset of the sign, digit or dot; nothing is skipped.
 * @returns The offset past the number, or `~offset` of the byte where no number can be read.
 * @throws Never.
 * @accuracy Equal to `Number(text)` to the bit; a number that is not finite is refused.
 * @source SVG 2, section 9.3.9, production `number` with sign and exponent
 */
export function scanNumber(text: NumberText, start: number, out: Float64Array, index: number): number {
  const { bytes, view } = text;
  const sign = bytes[start]!;
  // 1 for a minus, else 0.
  const negative = ((sign ^ 0x2d) - 1) >>> 31;
  let at = start + negative;
  if (sign === 0x2b) at++;
  let word = view.getInt32(at, true) ^ 0x30303030;
  let stops = ((word + 0x76767676) | word) & ~0x7f7f7f7f;
  let value = 0;
  let digits = 0;
  if (stops === 0) {
    value = joinDigits(word);
    digits = 4;
    word = view.getInt32(at + 4, true) ^ 0x30303030;
    stops = ((word + 0x76767676) | word) & ~0x7f7f7f7f;
    if (stops === 0) return scanWideNumber(text, start, out, index);
  }
  const more = countDigits(stops);
  value = value * POWERS_OF_TEN[more]! + joinDigits((word << 8) << (24 - 8 * more));
  digits += more;
  at += digits;
  if (bytes[at] === 0x2e) {
    at++;
    word = view.getInt32(at, true) ^ 0x30303030;
    stops = ((word + 0x76767676) | word) & ~0x7f7f7f7f;
    if (stops === 0) return scanWideNumber(text, start, out, index);
    const places = countDigits(stops);
    if (places === 0) return ~at;
    digits += places;
    at += places;
    const scale = POWERS_OF_TEN[places]!;
    value = (value * scale + joinDigits((word << 8) << (24 - 8 * places))) / scale;
  }
  if (digits === 0) return ~at;
  if ((bytes[at]! | 0x20) === 0x65) return scanLongNumber(text, start, out, index);
  out[index] = value * (1 - 2 * negative);
  return at;
}

/** How many bytes lie below the lowest set bit, for bits at the top of each byte. */
function countDigits(stops: number): number {
  return (31 - Math.clz32(stops & -stops)) >> 3;
}

/** The decimal number of four bytes from 0 to 9, the lowest byte first. */
function joinDigits(word: number): number {
  const pairs = (Math.imul(word, 10) + (word >>> 8)) & 0x00ff00ff;
  return (pairs & 0xff) * 100 + (pairs >>> 16);
}

/** The same with more than seven digits before the dot or more than three after it. */
function scanWideNumber(text: NumberText, start: number, out: Float64Array, index: number): number {
  const { bytes } = text;
  const negative = bytes[start] === 0x2d;
  let at = negative || bytes[start] === 0x2b ? start + 1 : start;
  const first = at;
  let mantissa = 0;
  let digit = bytes[at]! - 0x30;
  while (digit >= 0 && digit <= 9) {
    mantissa = mantissa * 10 + digit;
    digit = bytes[++at]! - 0x30;
  }
  let digits = at - first;
  let places = 0;
  if (digit === -2) {
    const point = ++at;
    digit = bytes[at]! - 0x30;
    while (digit >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      digit = bytes[++at]! - 0x30;
    }
    places = at - point;
    if (places === 0) return ~at;
    digits += places;
  }
  if (digits > 15 || (bytes[at]! | 0x20) === 0x65) return scanLongNumber(text, start, out, index);
  const value = mantissa / POWERS_OF_TEN[places]!;
  out[index] = negative ? -value : value;
  return at;
}

/** The same with an exponent or more digits yet; the part before the exponent is known to be well formed. */
function scanLongNumber({ bytes }: NumberText, start: number, out: Float64Array, index: number): number {
  let at = start;
  const negative = bytes[at] === 0x2d;
  if (negative || bytes[at] === 0x2b) at++;
  let mantissa = 0;
  let point = -1;
  let exact = true;
  for (; ; at++) {
    const digit = bytes[at]! - 0x30;
    if (digit >= 0 && digit <= 9) {
      if (mantissa > SAFE_MANTISSA) exact = false;
      mantissa = mantissa * 10 + digit;
    } else if (digit === -2 && point < 0) point = at + 1;
    else break;
  }
  const places = point < 0 ? 0 : at - point;
  const past = skipExponent(bytes, at);
  const exponent = (past > at ? Number(readText(bytes, at + 1, past)) : 0) - places;
  let value: number;
  if (exact && exponent >= -22 && exponent <= 22) {
    value = exponent < 0 ? mantissa / POWERS_OF_TEN[-exponent]! : mantissa * POWERS_OF_TEN[exponent]!;
    if (negative) value = -value;
  } else {
    value = Number(readText(bytes, start, past));
  }
  if (!Number.isFinite(value)) return ~start;
  out[index] = value;
  return past;
}

/** The offset past an exponent that starts at `at`, or `at` where there is none. */
function skipExponent(bytes: Uint8Array, at: number): number {
  if ((bytes[at]! | 0x20) !== 0x65) return at;
  let past = at + 1;
  if (bytes[past] === 0x2d || bytes[past] === 0x2b) past++;
  const first = past;
  while (bytes[past]! >= 0x30 && bytes[past]! <= 0x39) past++;
  return past > first ? past : at;
}

function readText(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at]!);
  return text;
}

/** The offset of the first byte from `start` that is not white space (space, tab, line feed, form feed, carriage return). */
export function skipSpace(bytes: Uint8Array, start: number): number {
  let at = start;
  while (isSpace(bytes[at]!)) at++;
  return at;
}

/** The same with at most one comma among the white space. */
export function skipSeparator(bytes: Uint8Array, start: number): number {
  const byte = bytes[start]!;
  if (byte > 0x2c) return start;
  // One comma or one blank is the common case.
  if ((byte === 0x2c || byte === 0x20) && bytes[start + 1]! > 0x2c) return start + 1;
  const at = skipSpace(bytes, start);
  return bytes[at] === 0x2c ? skipSpace(bytes, at + 1) : at;
}

function isSpace(byte: number): boolean {
  return byte <= 0x20 && (byte === 0x20 || byte === 0x0a || byte === 0x0d || byte === 0x09 || byte === 0x0c);
}
