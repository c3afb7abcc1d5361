// Paint from computed texts.
import type { Colour, Paint, PaintSource } from '../model/artwork.js';
import { readColour } from './colour.js';
import type { PercentLength, StrokePercent, Style } from './style.js';
import type { ComputedTexts } from './style-properties.js';

/** Black, the initial colour. */
export const BLACK: Colour = { key: '#000000', rgb: [0, 0, 0], alpha: 1 };

const URL_REFERENCE = /url\(\s*(?:"([^"]*)"|'([^']*)'|([^\s"'()]*))\s*\)/gi;

/** All targets of url() in a text, as written; those in the file begin with `#`. */
export function listUrls(text: string): readonly string[] {
  if (!/url\(/i.test(text)) return [];
  return [...text.matchAll(URL_REFERENCE)].map((match) => (match[1] ?? match[2] ?? match[3] ?? '').trim());
}

/** The id that a url names in this file, or null. */
export function idOfUrl(url: string): string | null {
  if (!url.startsWith('#') || url.length < 2) return null;
  const written = url.slice(1);
  if (!written.includes('%')) return written;
  try {
    return decodeURIComponent(written);
  } catch {
    return written;
  }
}

/**
 * Paint from computed texts.
 *
 * @param color - What `currentcolor` stands for.
 * @param isServer - Whether an id is that of a gradient or pattern.
 * @unit px user units; percentages count as nothing, see `readStrokePercent`
 */
export function readPaint(texts: ComputedTexts, color: Colour, isServer: (id: string) => boolean): Paint {
  const dashes = texts['stroke-dasharray'] === 'none' ? [] : texts['stroke-dasharray'].split(' ').map(readStated);
  return {
    fill: readPaintSource(texts.fill, color, isServer),
    stroke: readPaintSource(texts.stroke, color, isServer),
    fillOpacity: Number(texts['fill-opacity']),
    strokeOpacity: Number(texts['stroke-opacity']),
    fillRule: texts['fill-rule'] as Paint['fillRule'],
    strokeWidth: readStated(texts['stroke-width']).px,
    strokeLinecap: texts['stroke-linecap'] as Paint['strokeLinecap'],
    strokeLinejoin: texts['stroke-linejoin'] as Paint['strokeLinejoin'],
    strokeMiterlimit: Number(texts['stroke-miterlimit']),
    strokeDasharray: settleDashes(dashes.map((dash) => dash.px)),
    strokeDashoffset: readStated(texts['stroke-dashoffset']).px,
    nonScalingStroke: texts['vector-effect'].split(' ').includes('non-scaling-stroke'),
  };
}

/** Dashes that add up to nothing are a solid line. @source SVG 2, section 13.5.6 */
function settleDashes(dashes: readonly number[]): readonly number[] {
  return dashes.some((dash) => dash > 0) ? dashes : [];
}

/** `px` or `px,fraction`. */
function readStated(text: string): PercentLength {
  const comma = text.indexOf(',');
  if (comma < 0) return { px: Number(text), fraction: 0 };
  return { px: Number(text.slice(0, comma)), fraction: Number(text.slice(comma + 1)) };
}

function readPaintSource(text: string, color: Colour, isServer: (id: string) => boolean): PaintSource {
  if (text === 'none') return { kind: 'none' };
  const url = listUrls(text)[0];
  if (url === undefined) return makeColourSource(readPaintColour(text, color));
  const fallback = readPaintColour(text.replace(URL_REFERENCE, '').trim(), color);
  const id = idOfUrl(url);
  const known = id !== null && isServer(id);
  return { kind: known ? 'server' : 'missing', id: id ?? url, fallback };
}

function makeColourSource(colour: Colour | null): PaintSource {
  return colour === null ? { kind: 'none' } : { kind: 'colour', colour };
}

function readPaintColour(text: string, color: Colour): Colour | null {
  if (text === '' || text === 'none') return null;
  return text === 'currentcolor' ? color : readColour(text);
}

/** Stroke lengths of computed texts that hold a percentage, or null where none does. */
export function readStrokePercent(texts: ComputedTexts): StrokePercent | null {
  const stated = [texts['stroke-width'], texts['stroke-dashoffset'], texts['stroke-dasharray']];
  if (!stated.some((text) => text.includes(','))) return null;
  const [width, dashoffset] = stated.slice(0, 2).map((text) => (text!.includes(',') ? readStated(text!) : null));
  const dasharray = stated[2]!.includes(',') ? stated[2]!.split(' ').map(readStated) : null;
  return { width: width ?? null, dashoffset: dashoffset ?? null, dasharray };
}

/**
 * The paint of a style inside a viewport: percentages of stroke lengths are taken of its diagonal.
 *
 * @param diagonal - `sqrt((width * width + height * height) / 2)` of the nearest viewport, in its user units.
 * @returns `style.paint` itself where the style holds no percentage.
 * @unit px user units
 * @source SVG 2, section 8.9
 */
export function paintWithin(style: Style, diagonal: number): Paint {
  const { paint, strokePercent: percent } = style;
  if (percent === null) return paint;
  const settle = (length: PercentLength): number => length.px + length.fraction * diagonal;
  return {
    ...paint,
    strokeWidth: percent.width === null ? paint.strokeWidth : settle(percent.width),
    strokeDashoffset: percent.dashoffset === null ? paint.strokeDashoffset : settle(percent.dashoffset),
    strokeDasharray: percent.dasharray === null ? paint.strokeDasharray : settleDashes(percent.dasharray.map(settle)),
  };
}
