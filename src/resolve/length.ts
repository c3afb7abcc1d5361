// Lengths as CSS and SVG write them.
import { type AbsoluteUnit, PX_PER_UNIT } from '../geometry/units.js';
import type { PercentLength } from './style.js';

/** What a length is relative to; all in px user units. */
export interface LengthContext {
  readonly fontSize: number;
  /** What 100 % is. */
  readonly percentBase: number;
  /** Font size of the outermost svg for `rem`; 16 where nothing is said. */
  readonly rootFontSize?: number;
  /** Whether a number without a unit counts as px; true where nothing is said. Zero always does. */
  readonly bareNumbers?: boolean;
}

/** Medium, the size of type where nothing is said, px: common practice of browsers. */
export const MEDIUM_FONT_SIZE = 16;

const NUMBER = /[+-]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:e[+-]?[0-9]+)?/iy;
const SIMPLE = /^[ \t\n\f\r]*([+-]?(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?)(%|[a-zA-Z]*)[ \t\n\f\r]*$/;
/** Deepest nesting of parentheses in calc(). */
const CALC_DEPTH = 32;

/**
 * Reads a length: number, px, mm, cm, in, pt, pc, Q, em, ex, ch, rem, percentage, or calc() of these.
 *
 * `ex` and `ch` are taken as half an em, since fonts are not read.
 *
 * @returns px user units, or null where the text is no such length or not finite.
 * @throws Never.
 * @unit px user units
 * @source CSS Values and Units 3, sections 5, 6 and 8; SVG 2, section 8.9
 */
export function readLength(text: string, context: LengthContext): number | null {
  const length = readPercentLength(text, context);
  if (length === null) return null;
  const value = length.fraction === 0 ? length.px : length.px + length.fraction * context.percentBase;
  return Number.isFinite(value) ? value : null;
}

/** Reads a length and keeps its percentage apart; `percentBase` of the context is not used. */
export function readPercentLength(text: string, context: Omit<LengthContext, 'percentBase'>): PercentLength | null {
  const match = SIMPLE.exec(text);
  if (match === null) return readCalc(text, context);
  const number = Number(match[1]);
  const unit = match[2]!;
  if (!Number.isFinite(number)) return null;
  if (unit === '%') return { px: 0, fraction: number / 100 };
  if (unit === '') return number === 0 || context.bareNumbers !== false ? { px: number + 0, fraction: 0 } : null;
  const factor = pxPerUnit(unit, context);
  if (factor === null) return null;
  const px = number * factor + 0;
  return Number.isFinite(px) ? { px, fraction: 0 } : null;
}

function pxPerUnit(written: string, context: Omit<LengthContext, 'percentBase'>): number | null {
  const unit = written.toLowerCase();
  if (unit === 'em') return context.fontSize;
  if (unit === 'ex' || unit === 'ch') return context.fontSize / 2;
  if (unit === 'rem') return context.rootFontSize ?? MEDIUM_FONT_SIZE;
  const absolute = unit === 'q' ? 'Q' : unit;
  return Object.hasOwn(PX_PER_UNIT, absolute) ? PX_PER_UNIT[absolute as AbsoluteUnit] : null;
}

/** A term of calc(): a length, or a plain number in `px` when `isNumber`. */
interface Term extends PercentLength {
  readonly isNumber: boolean;
}

function readCalc(text: string, context: Omit<LengthContext, 'percentBase'>): PercentLength | null {
  const match = /^\s*calc(\(.*\))\s*$/is.exec(text);
  if (match === null) return null;
  const reader = { text: match[1]!, at: 0, context };
  const term = readFactor(reader, 0);
  if (term === null || reader.at !== reader.text.length) return null;
  if (term.isNumber && term.px !== 0 && context.bareNumbers === false) return null;
  return Number.isFinite(term.px) && Number.isFinite(term.fraction) ? { px: term.px, fraction: term.fraction } : null;
}

interface CalcReader {
  readonly text: string;
  at: number;
  readonly context: Omit<LengthContext, 'percentBase'>;
}

function skipBlanks(reader: CalcReader): void {
  while (/\s/.test(reader.text[reader.at] ?? '')) reader.at++;
}

function readSum(reader: CalcReader, depth: number): Term | null {
  let sum = readProduct(reader, depth);
  for (;;) {
    if (sum === null) return null;
    const sign = /\s+([+-])\s+/y;
    sign.lastIndex = reader.at;
    const match = sign.exec(reader.text);
    if (match === null) return sum;
    reader.at = sign.lastIndex;
    const next = readProduct(reader, depth);
    if (next === null || next.isNumber !== sum.isNumber) return null;
    const way = match[1] === '+' ? 1 : -1;
    sum = { px: sum.px + way * next.px, fraction: sum.fraction + way * next.fraction, isNumber: sum.isNumber };
  }
}

function readProduct(reader: CalcReader, depth: number): Term | null {
  let product = readFactor(reader, depth);
  for (;;) {
    if (product === null) return null;
    const operator = /\s*([*/])\s*/y;
    operator.lastIndex = reader.at;
    const match = operator.exec(reader.text);
    if (match === null) return product;
    reader.at = operator.lastIndex;
    const next = readFactor(reader, depth);
    if (next === null || !(next.isNumber || (match[1] === '*' && product.isNumber))) return null;
    const [length, number] = next.isNumber ? [product, next.px] : [next, product.px];
    const scale = match[1] === '*' ? number : 1 / number;
    product = { px: length.px * scale, fraction: length.fraction * scale, isNumber: length.isNumber };
  }
}

function readFactor(reader: CalcReader, depth: number): Term | null {
  const open = /(?:calc)?\(\s*/iy;
  open.lastIndex = reader.at;
  if (open.test(reader.text)) {
    if (depth >= CALC_DEPTH) return null;
    reader.at = open.lastIndex;
    const inside = readSum(reader, depth + 1);
    skipBlanks(reader);
    if (inside === null || reader.text[reader.at] !== ')') return null;
    reader.at++;
    return inside;
  }
  const number = new RegExp(NUMBER);
  number.lastIndex = reader.at;
  const match = number.exec(reader.text);
  if (match === null) return null;
  reader.at = number.lastIndex;
  const unit = /%|[a-z]*/iy;
  unit.lastIndex = reader.at;
  const name = unit.exec(reader.text)![0];
  reader.at += name.length;
  if (name === '') return { px: Number(match[0]), fraction: 0, isNumber: true };
  if (name === '%') return { px: 0, fraction: Number(match[0]) / 100, isNumber: false };
  const factor = pxPerUnit(name, reader.context);
  return factor === null ? null : { px: Number(match[0]) * factor, fraction: 0, isNumber: false };
}
