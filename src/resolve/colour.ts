// Colours as CSS and SVG write them.
import { parse, rgb } from 'culori';
import type { Colour } from '../model/artwork.js';

const HEX = /^#(?:[0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/;
/** A word that is not hexadecimal digits without their sign, or a function. */
const WORD_OR_FUNCTION = /^(?!(?:[a-f]{3,4}|[a-f]{6}|[a-f]{8})$|constructor$)[a-z]+$|^[a-z]+\(.*\)$/s;
const DEVICE_CMYK = /^device-cmyk\(([^()]*)\)$/;
/** A colour of a profile behind its sRGB stand-in, as SVG 1.1 and SVG Color have it. */
const PROFILE_TAIL =
  /\s+(?:icc-color|icc-named-color|device-gray|device-rgb|device-cmyk|device-nchannel|cielab|cielch|cielchab)\([^()]*\)$/;

/**
 * Reads a colour.
 *
 * Knows the colours of CSS Color 4, `device-cmyk()` of CSS Color 5 and the profile colours of SVG 1.1, of which the sRGB
 * stand-in counts. Colours outside sRGB are cut to it channel by channel. `currentColor`, `none` and system colours are not
 * read here.
 *
 * @returns The colour, or null where the text is none.
 * @throws Never.
 * @accuracy Channels are rounded to 1/255.
 * @source CSS Color 4, sections 4 to 10; CSS Color 5, section 12; SVG 1.1, section 11.2
 */
export function readColour(text: string): Colour | null {
  // One blank for many: patterns that look for blanks before a word would try each of a long row.
  const lower = text.trim().toLowerCase().replace(/\s+/g, ' ');
  const head = lower.startsWith('#') ? lower : '';
  if (HEX.test(head)) return readHex(head.slice(1));
  const cmyk = DEVICE_CMYK.exec(lower);
  if (cmyk !== null) return readDeviceCmyk(cmyk[1]!);
  const tail = PROFILE_TAIL.exec(lower);
  if (tail !== null) return readColour(lower.slice(0, tail.index));
  const nested = /^device-cmyk\((.*)\)$/s.exec(lower);
  if (nested !== null) return readDeviceCmyk(nested[1]!);
  if (!WORD_OR_FUNCTION.test(lower)) return null;
  const known = parseSafely(lower);
  if (known === undefined) return null;
  return makeColour(toByte(known.r), toByte(known.g), toByte(known.b), known.alpha ?? 1);
}

/** The library trips over some texts that are no colours, such as a number run into a word. */
function parseSafely(text: string): ReturnType<typeof rgb> | undefined {
  try {
    return rgb(parse(text));
  } catch (error) {
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}

function readHex(digits: string): Colour {
  const wide = digits.length <= 4 ? [...digits].map((digit) => digit + digit).join('') : digits;
  const channel = (at: number): number => Number.parseInt(wide.slice(at, at + 2), 16);
  return makeColour(channel(0), channel(2), channel(4), wide.length === 8 ? channel(6) / 255 : 1);
}

/** Halves are rounded up, also where the arithmetic before left them a trace too small. */
function toByte(value: number): number {
  return Math.round(Math.min(1, Math.max(0, Number.isFinite(value) ? value : 0)) * 255 + 1e-7);
}

function makeColour(red: number, green: number, blue: number, alpha: number): Colour {
  const digits = ((red << 16) | (green << 8) | blue).toString(16).padStart(6, '0');
  return { key: `#${digits}`, rgb: [red, green, blue], alpha: clampUnit(alpha) };
}

function clampUnit(value: number): number {
  return Number.isNaN(value) ? 0 : Math.min(1, Math.max(0, value));
}

/** The inside of `device-cmyk( )`: with commas (four numbers) or blanks, alpha after a slash, an sRGB stand-in after a comma. */
function readDeviceCmyk(inside: string): Colour | null {
  const legacy = inside.split(',');
  const commas = legacy.length === 4 && legacy.every((part) => readFraction(part) !== null);
  const comma = commas ? -1 : inside.indexOf(',');
  const standIn = comma < 0 ? null : readColour(inside.slice(comma + 1));
  if (comma >= 0 && standIn === null) return null;
  const [inks = '', opacity, ...more] = (comma < 0 ? inside : inside.slice(0, comma)).split('/');
  if (more.length > 0 || (commas && opacity !== undefined)) return null;
  const parts = (commas ? legacy : inks.trim().split(/\s+/)).map(readFraction);
  const alpha = opacity === undefined ? 1 : readFraction(opacity);
  if (parts.length !== 4 || alpha === null || parts.includes(null)) return null;
  const [cyan, magenta, yellow, black] = parts as [number, number, number, number];
  const shown = (ink: number): number => toByte(1 - Math.min(1, ink * (1 - black) + black));
  const rgbBytes = standIn?.rgb ?? ([shown(cyan), shown(magenta), shown(yellow)] as const);
  const key = `device-cmyk(${[cyan, magenta, yellow, black].map((ink) => String(Math.round(ink * 1e4) / 1e4)).join(' ')})`;
  return { key, rgb: rgbBytes, alpha };
}

/** A number or percentage cut to 0 to 1. */
function readFraction(text: string): number | null {
  const match = /^\s*([+-]?(?:\d*\.)?\d+(?:e[+-]?\d+)?)(%?)\s*$/.exec(text);
  if (match === null) return /^\s*none\s*$/.test(text) ? 0 : null;
  return clampUnit(Number(match[1]) / (match[2] === '%' ? 100 : 1));
}
