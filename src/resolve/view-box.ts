// Boxes of user units fitted into viewports.
import type { Matrix } from '../geometry/matrix.js';

/** x, y, width, height in user units; width and height above zero. */
export type ViewBox = readonly [number, number, number, number];

/** What a `viewBox` attribute says. `zero` has a side of zero: the element is not drawn. `invalid` counts as not written. */
export type ViewBoxReading = { readonly kind: 'box'; readonly box: ViewBox } | { readonly kind: 'zero' | 'invalid' };

const NUMBER = '([+-]?(?:\\d*\\.)?\\d+(?:[eE][+-]?\\d+)?)';
const SEPARATOR = '(?:\\s+,?\\s*|,\\s*|(?=[+-]))';
const FOUR = new RegExp(`^\\s*${NUMBER}${SEPARATOR}${NUMBER}${SEPARATOR}${NUMBER}${SEPARATOR}${NUMBER}\\s*$`);
const PRESERVE = /^\s*(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/;
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/**
 * Reads the value of a `viewBox`.
 *
 * @throws Never.
 * @source SVG 2, section 8.6
 */
export function readViewBox(text: string): ViewBoxReading {
  const match = FOUR.exec(text);
  if (match === null) return { kind: 'invalid' };
  const [x, y, width, height] = match.slice(1).map((part) => Number(part) + 0) as [number, number, number, number];
  if (![x, y, width, height].every(Number.isFinite) || width < 0 || height < 0) return { kind: 'invalid' };
  if (width === 0 || height === 0) return { kind: 'zero' };
  return { kind: 'box', box: [x, y, width, height] };
}

/**
 * The matrix from the user units of a viewBox to a viewport whose corner is (0, 0).
 *
 * @param preserve - Value of `preserveAspectRatio`; what cannot be read counts as `xMidYMid meet`.
 * @throws Never.
 * @source SVG 2, sections 8.2 and 8.7
 */
export function fitViewBox(
  viewBox: ViewBox,
  viewport: { readonly width: number; readonly height: number },
  preserve: string,
): Matrix {
  const [x, y, boxWidth, boxHeight] = viewBox;
  const { width, height } = viewport;
  const match = PRESERVE.exec(preserve);
  let sx = width / boxWidth;
  let sy = height / boxHeight;
  if (match?.[1] === 'none') return [sx, 0, 0, sy, 0 - x * sx, 0 - y * sy];
  sx = match?.[4] === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  sy = sx;
  const spareX = (width - boxWidth * sx) * SHARE[match?.[2] ?? 'Mid']!;
  const spareY = (height - boxHeight * sy) * SHARE[match?.[3] ?? 'Mid']!;
  return [sx, 0, 0, sy, spareX - x * sx, spareY - y * sy];
}
