// Numbers as SVG text.

/**
 * Prints a number for an SVG file: a plain decimal without exponent, as short as reads back to the same number, but with at most
 * `decimals` places and no zeros at the end. Negative zero, and what rounds to it, is `0`.
 *
 * @param decimals - From 0 to 100.
 * @throws Error - `number is not finite`; RangeError for `decimals` out of range.
 * @accuracy Rounded once, half away from zero, from the exact value of the double.
 */
export function printNumber(value: number, decimals: number = 6): string {
  if (!Number.isFinite(value)) throw new Error(`number is not finite: ${value}`);
  const size = Math.abs(value);
  const text = printSize(size, decimals);
  return value < 0 && text !== '0' ? `-${text}` : text;
}

function printSize(size: number, decimals: number): string {
  const shortest = String(size);
  const exponentAt = shortest.indexOf('e+');
  if (exponentAt >= 0) {
    const [whole = '', fraction = ''] = shortest.slice(0, exponentAt).split('.');
    return whole + fraction.padEnd(Number(shortest.slice(exponentAt + 2)), '0');
  }
  if (!shortest.includes('e')) {
    const point = shortest.indexOf('.');
    if (point < 0 || shortest.length - point - 1 <= decimals) return shortest;
  }
  const fixed = size.toFixed(decimals);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}
