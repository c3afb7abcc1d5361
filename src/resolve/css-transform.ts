// Transforms as CSS writes them.
import { turnOf } from '../geometry/degrees.js';
import { IDENTITY, type Matrix, multiply } from '../geometry/matrix.js';
import { readLength } from './length.js';

const FUNCTION = /[ \t\n\f\r]*([a-z0-9]+)\(((?:[^()]|\((?:[^()]|\([^()]*\))*\))*)\)[ \t\n\f\r]*/iy;
const NUMBER = /^[+-]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:e[+-]?[0-9]+)?$/i;

export { readTransformOrigin } from './transform-origin.js';

/** Width and height of the reference box and the font size, for percentages and em. */
interface Reference {
  readonly width: number;
  readonly height: number;
  readonly fontSize: number;
}

/**
 * Reads the value of the CSS property `transform`.
 *
 * Lengths and angles need their units, as CSS has it. Functions in three dimensions are read as they fall onto the page, except
 * those with a perspective.
 *
 * @param reference - Size of the reference box: percentages of a translation are taken of it.
 * @returns The product, the identity for `none`, or null where the value cannot be read or a number is not finite.
 * @throws Never.
 * @unit px user units
 * @source CSS Transforms 1, sections 7 and 12 to 14; CSS Transforms 2, section 11
 */
export function readCssTransform(
  text: string,
  reference: { readonly width: number; readonly height: number },
  fontSize: number,
): Matrix | null {
  if (text.trim().toLowerCase() === 'none') return IDENTITY;
  const surroundings = { width: reference.width, height: reference.height, fontSize };
  const scan = new RegExp(FUNCTION);
  let product: Matrix = IDENTITY;
  let at = 0;
  while (at < text.length) {
    scan.lastIndex = at;
    const match = scan.exec(text);
    if (match === null) return null;
    const step = readFunction(match[1]!.toLowerCase(), splitArguments(match[2]!), surroundings);
    if (step === null) return null;
    product = multiply(product, step);
    at = scan.lastIndex;
  }
  return at > 0 && product.every(Number.isFinite) ? product : null;
}

function splitArguments(text: string): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    const character = text[at];
    if (character === '(') depth++;
    else if (character === ')') depth--;
    else if (character === ',' && depth === 0) {
      parts.push(text.slice(start, at).trim());
      start = at + 1;
    }
  }
  parts.push(text.slice(start).trim());
  return parts;
}

function readFunction(name: string, parts: readonly string[], reference: Reference): Matrix | null {
  if (name.startsWith('translate')) return readTranslate(name, parts, reference);
  if (name.startsWith('scale')) return readScale(name, parts);
  if (name.startsWith('rotate')) return readRotate(name, parts);
  if (name.startsWith('skew')) return readSkew(name, parts);
  if (name === 'matrix' || name === 'matrix3d') return readMatrix(name, parts);
  return null;
}

function readTranslate(name: string, parts: readonly string[], reference: Reference): Matrix | null {
  const [first = '', second = '0', third = '0px'] = parts;
  const readX = (text: string): number | null => readShift(text, reference.width, reference);
  const readY = (text: string): number | null => readShift(text, reference.height, reference);
  if (name === 'translate' && parts.length <= 2) return translateBy(readX(first), readY(second));
  if (parts.length === 1 && name === 'translatex') return translateBy(readX(first), 0);
  if (parts.length === 1 && name === 'translatey') return translateBy(0, readY(first));
  // Without a perspective a shift towards the eye moves nothing, but it must be readable.
  if (parts.length === 1 && name === 'translatez') return readZ(first, reference) === null ? null : IDENTITY;
  if (name !== 'translate3d' || parts.length !== 3 || readZ(third, reference) === null) return null;
  return translateBy(readX(first), readY(second));
}

function readShift(text: string, percentBase: number, reference: Reference): number | null {
  return readLength(text, { fontSize: reference.fontSize, percentBase, bareNumbers: false });
}

function readZ(text: string, reference: Reference): number | null {
  return text.includes('%') ? null : readShift(text, 0, reference);
}

function translateBy(x: number | null, y: number | null): Matrix | null {
  return x === null || y === null ? null : [1, 0, 0, 1, x, y];
}

function readScale(name: string, parts: readonly string[]): Matrix | null {
  const numbers = parts.map(readFactor);
  if (numbers.includes(null)) return null;
  const [x, y = x] = numbers as number[];
  const count = numbers.length;
  if (name === 'scale' && count <= 2) return [x!, 0, 0, y!, 0, 0];
  if (name === 'scalex' && count === 1) return [x!, 0, 0, 1, 0, 0];
  if (name === 'scaley' && count === 1) return [1, 0, 0, x!, 0, 0];
  if (name === 'scalez' && count === 1) return IDENTITY;
  return name === 'scale3d' && count === 3 ? [x!, 0, 0, y!, 0, 0] : null;
}

/** A number or percentage. */
function readFactor(text: string): number | null {
  const isPercent = text.endsWith('%');
  const number = readNumber(isPercent ? text.slice(0, -1) : text);
  return number === null ? null : number / (isPercent ? 100 : 1);
}

function readNumber(text: string): number | null {
  return NUMBER.test(text) ? Number(text) + 0 : null;
}

function readRotate(name: string, parts: readonly string[]): Matrix | null {
  const angle = readAngle(parts.at(-1)!);
  if (angle === null) return null;
  if (parts.length === 1) {
    const [cos, sin] = turnOf(angle);
    if (name === 'rotate' || name === 'rotatez') return [cos, sin, 0 - sin, cos, 0, 0];
    if (name === 'rotatex') return [1, 0, 0, cos, 0, 0];
    return name === 'rotatey' ? [cos, 0, 0, 1, 0, 0] : null;
  }
  if (name !== 'rotate3d' || parts.length !== 4) return null;
  const axis = parts.slice(0, 3).map(readNumber);
  return axis.includes(null) ? null : turnAboutAxis(axis as number[], angle);
}

/** The part on the page of a turn about an axis through the origin. */
function turnAboutAxis(axis: readonly number[], angle: number): Matrix {
  const length = Math.hypot(axis[0]!, axis[1]!, axis[2]!);
  if (length === 0) return IDENTITY;
  const [x, y, z] = [axis[0]! / length, axis[1]! / length, axis[2]! / length];
  const [cos, sin] = turnOf(angle);
  const rest = 1 - cos;
  return [cos + x * x * rest, y * x * rest + z * sin, x * y * rest - z * sin, cos + y * y * rest, 0, 0];
}

/** Degrees, or null. */
function readAngle(text: string): number | null {
  const match = /^(.*?)(deg|grad|rad|turn)?$/is.exec(text);
  const number = readNumber(match?.[1] ?? '');
  if (number === null) return null;
  switch (match?.[2]?.toLowerCase()) {
    case 'deg':
      return number;
    case 'grad':
      return number * 0.9;
    case 'rad':
      return (number * 180) / Math.PI;
    case 'turn':
      return number * 360;
    default:
      return number === 0 ? 0 : null;
  }
}

function readSkew(name: string, parts: readonly string[]): Matrix | null {
  const slopes = parts.map((part) => {
    const angle = readAngle(part);
    if (angle === null) return null;
    const [cos, sin] = turnOf(angle);
    return sin / cos;
  });
  if (slopes.includes(null)) return null;
  const [x, y = 0] = slopes as number[];
  if (name === 'skew' && slopes.length <= 2) return [1, y, x!, 1, 0, 0];
  if (slopes.length !== 1) return null;
  if (name === 'skewx') return [1, 0, x!, 1, 0, 0];
  return name === 'skewy' ? [1, x!, 0, 1, 0, 0] : null;
}

function readMatrix(name: string, parts: readonly string[]): Matrix | null {
  const numbers = parts.map(readNumber);
  if (numbers.includes(null)) return null;
  const n = numbers as number[];
  if (name === 'matrix') return n.length === 6 ? [n[0]!, n[1]!, n[2]!, n[3]!, n[4]!, n[5]!] : null;
  // The fourth row is the perspective.
  if (n.length !== 16 || n[3] !== 0 || n[7] !== 0 || n[11] !== 0 || n[15] !== 1) return null;
  return [n[0]!, n[1]!, n[4]!, n[5]!, n[12]!, n[13]!];
}
