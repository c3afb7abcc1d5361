// Decimal numbers straight from bytes.

/** Powers of ten that a double holds exactly. */
const POWERS_OF_TEN: Float64Array = Float64Array.of(
  ...[1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11],
  ...[1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22],
);

/** Up to here a mantissa can take one more digit and stay exact. */
const SAFE_MANTISSA = 900719925474098;

/**
 * Reads the number at `start` into `out[index]`.
 *
 * Mantissas of up to nine digits are read as integers and divided once by an exact power of ten, which rounds
 * correctly; everything else takes a slower road with the same result.
 *
 * @param start - Offset of the sign, digit or dot; nothing is skipped.
 * @param end - Offset past the text.
 * @returns The offset past the number, or `~offset` of the byte where no number can be read.
 * @throws Never.
 * @accuracy Equal to `Number(text)` to the bit; a number that is not finite is refused.
 * @source SVG 2, section 9.3.9, production `number` with sign and exponent
 */
export function scanNumber(bytes: Uint8Array, start: number, end: number, out: Float64Array, index: number): number {
  let at = start;
  let byte = at < end ? bytes[at]! : 0;
  const negative = byte === 0x2d;
  if (negative || byte === 0x2b) {
    at++;
    byte = at < end ? bytes[at]! : 0;
  }
  const first = at;
  let mantissa = 0;
  while (byte >= 0x30 && byte <= 0x39) {
    mantissa = (mantissa * 10 + (byte - 0x30)) | 0;
    at++;
    byte = at < end ? bytes[at]! : 0;
  }
  let digits = at - first;
  let places = 0;
  if (byte === 0x2e) {
    at++;
    const point = at;
    byte = at < end ? bytes[at]! : 0;
    while (byte >= 0x30 && byte <= 0x39) {
      mantissa = (mantissa * 10 + (byte - 0x30)) | 0;
      at++;
      byte = at < end ? bytes[at]! : 0;
    }
    places = at - point;
    if (places === 0) return ~at;
    digits += places;
  }
  if (digits === 0) return ~at;
  if (digits > 9 || (byte | 0x20) === 0x65) return scanLongNumber(bytes, start, end, out, index);
  const value = mantissa / POWERS_OF_TEN[places]!;
  out[index] = negative ? -value : value;
  return at;
}

/** The same for numbers with an exponent or more than nine digits; the part before the exponent is known to be well formed. */
function scanLongNumber(bytes: Uint8Array, start: number, end: number, out: Float64Array, index: number): number {
  let at = start;
  const negative = bytes[at] === 0x2d;
  if (negative || bytes[at] === 0x2b) at++;
  let mantissa = 0;
  let point = -1;
  let exact = true;
  for (; at < end; at++) {
    const digit = bytes[at]! - 0x30;
    if (digit >= 0 && digit <= 9) {
      if (mantissa > SAFE_MANTISSA) exact = false;
      mantissa = mantissa * 10 + digit;
    } else if (digit === -2 && point < 0) point = at + 1;
    else break;
  }
  const places = point < 0 ? 0 : at - point;
  const past = skipExponent(bytes, at, end);
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
function skipExponent(bytes: Uint8Array, at: number, end: number): number {
  if (at >= end || (bytes[at]! | 0x20) !== 0x65) return at;
  let past = at + 1;
  if (past < end && (bytes[past] === 0x2d || bytes[past] === 0x2b)) past++;
  const first = past;
  while (past < end && bytes[past]! >= 0x30 && bytes[past]! <= 0x39) past++;
  return past > first ? past : at;
}

function readText(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at]!);
  return text;
}

/** The offset of the first byte from `start` that is not white space (space, tab, line feed, form feed, carriage return). */
export function skipSpace(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  while (at < end && isSpace(bytes[at]!)) at++;
  return at;
}

/** The same with at most one comma among the white space. */
export function skipSeparator(bytes: Uint8Array, start: number, end: number): number {
  // A single blank or comma before a digit is the common case.
  const at = skipSpace(bytes, start, end);
  if (at < end && bytes[at] === 0x2c) return skipSpace(bytes, at + 1, end);
  return at;
}

function isSpace(byte: number): boolean {
  return byte <= 0x20 && (byte === 0x20 || byte === 0x0a || byte === 0x0d || byte === 0x09 || byte === 0x0c);
}
