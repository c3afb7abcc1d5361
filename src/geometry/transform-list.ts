// The transform attribute.
import { turnOf } from './degrees.js';
import { IDENTITY, type Matrix, multiply } from './matrix.js';

const SPACE = '[ \\t\\n\\f\\r]*';
const NUMBER = '[+-]?(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?';

/**
 * Reads a list of transforms; the first in the list is the outermost.
 *
 * Commas are optional wherever white space may stand between two numbers or two transforms. Units and the keyword `none` belong
 * to the CSS property and are refused here.
 *
 * @returns The product, the identity for an empty list, or null where the list cannot be read or a number is not finite.
 * @throws Never.
 * @unit user units and degrees, as the attribute has them
 * @source SVG 1.1, section 7.6; CSS Transforms 1, section 7 (the SVG transform attribute)
 */
export function readTransformList(text: string): Matrix | null {
  const scan = new RegExp(`${SPACE}([A-Za-z]+)${SPACE}\\(([^()]*)\\)${SPACE}`, 'y');
  let product: Matrix = IDENTITY;
  let at = skip(text, 0);
  if (at === text.length) return IDENTITY;
  for (;;) {
    scan.lastIndex = at;
    const match = scan.exec(text);
    if (match === null) return null;
    const numbers = readNumbers(match[2]!);
    const step = numbers === null ? null : readTransform(match[1]!, numbers);
    if (step === null) return null;
    product = multiply(product, step);
    at = scan.lastIndex;
    if (at === text.length) break;
    // Several commas in a row are legal between transforms, but not after the last.
    while (text[at] === ',') at = skip(text, at + 1);
  }
  return product.every(Number.isFinite) ? product : null;
}

function skip(text: string, start: number): number {
  let at = start;
  while (at < text.length && ' \t\n\f\r'.includes(text[at]!)) at++;
  return at;
}

function readNumbers(text: string): readonly number[] | null {
  const numbers: number[] = [];
  const scan = new RegExp(`${SPACE}(${NUMBER})${SPACE}(,?)`, 'y');
  let open = false;
  while (scan.lastIndex < text.length) {
    const match = scan.exec(text);
    if (match === null) return null;
    numbers.push(Number(match[1]));
    open = match[2] === ',';
  }
  return open ? null : numbers;
}

function readTransform(name: string, numbers: readonly number[]): Matrix | null {
  const count = numbers.length;
  const [first = 0, second = 0, third = 0] = numbers;
  switch (name) {
    case 'matrix':
      return count === 6 ? [first, second, third, numbers[3]!, numbers[4]!, numbers[5]!] : null;
    case 'translate':
      return count === 1 || count === 2 ? [1, 0, 0, 1, first, second] : null;
    case 'scale':
      return count === 1 || count === 2 ? [first, 0, 0, count === 1 ? first : second, 0, 0] : null;
    case 'rotate':
      return count === 1 || count === 3 ? rotateAbout(first, second, third) : null;
    case 'skewX':
      return count === 1 ? [1, 0, slopeOf(first), 1, 0, 0] : null;
    case 'skewY':
      return count === 1 ? [1, slopeOf(first), 0, 1, 0, 0] : null;
    default:
      return null;
  }
}

function rotateAbout(degrees: number, x: number, y: number): Matrix {
  const [cos, sin] = turnOf(degrees);
  return [cos, sin, 0 - sin, cos, x - cos * x + sin * y, y - sin * x - cos * y];
}

function slopeOf(degrees: number): number {
  const [cos, sin] = turnOf(degrees);
  return sin / cos;
}
