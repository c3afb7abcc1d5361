// The point a transform turns about.
import { readLength } from './length.js';

const ACROSS: ReadonlyMap<string, number> = new Map([
  ['left', 0],
  ['right', 1],
]);
const DOWN: ReadonlyMap<string, number> = new Map([
  ['top', 0],
  ['bottom', 1],
]);
const TOKEN = /(?:[^\s()]|\((?:[^()]|\([^()]*\))*\))+/g;

/**
 * Reads `transform-origin`: keywords, one, two or three values.
 *
 * @param reference - The reference box: percentages are taken of its size, and the point is measured from its corner.
 * @returns The point in the coordinates of the box, or null where the value cannot be read.
 * @throws Never.
 * @unit px user units
 * @source CSS Transforms 1, section 8
 */
export function readTransformOrigin(
  text: string,
  reference: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  fontSize: number,
): readonly [number, number] | null {
  const tokens = (text.toLowerCase().match(TOKEN) ?? []).map(String);
  if (tokens.length < 1 || tokens.length > 3) return null;
  const [first, second = 'center', third = '0'] = tokens as [string, string?, string?];
  if (third.includes('%') || readLength(third, { fontSize, percentBase: 0 }) === null) return null;
  // A vertical keyword may stand first, and a horizontal one last.
  const turned = DOWN.has(first) || (tokens.length > 1 && ACROSS.has(second));
  const x = readOffset(turned ? second : first, ACROSS, reference.width, fontSize);
  const y = readOffset(turned ? first : second, DOWN, reference.height, fontSize);
  if (x === null || y === null) return null;
  // With a keyword on the wrong side the other value must be a keyword as well.
  if (turned && tokens.length > 1 && !(isKeyword(first) && isKeyword(second))) return null;
  return [reference.x + x, reference.y + y];
}

function isKeyword(token: string): boolean {
  return token === 'center' || ACROSS.has(token) || DOWN.has(token);
}

function readOffset(token: string, words: ReadonlyMap<string, number>, size: number, fontSize: number): number | null {
  if (token === 'center') return size / 2;
  const share = words.get(token);
  return share === undefined ? readLength(token, { fontSize, percentBase: size }) : share * size;
}
