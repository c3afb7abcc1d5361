// Lengths of an element, from CSS or its attributes.
import { readAttribute } from '../source/read-attribute.js';
import type { Slot } from './attribute-slots.js';
import type { GeometryGrounds, Setting, Viewport } from './drawing.js';
import { readLength } from './length.js';

/** What 100 % is of. */
export type Axis = 'x' | 'y' | 'diagonal';

/** What 100 % comes to, user units. @source SVG 2, section 8.9 */
export function percentBase(viewport: Viewport, axis: Axis): number {
  if (axis === 'x') return viewport.width;
  if (axis === 'y') return viewport.height;
  return Math.sqrt((viewport.width * viewport.width + viewport.height * viewport.height) / 2);
}

/** Remembers that a text in percent depends on the artboard. */
export function notePercent(grounds: GeometryGrounds, text: string, viewport: Viewport): void {
  if (viewport.isOuter && text.includes('%')) grounds.notes.usesPercent = true;
}

/** One length and where it is to be found. */
export interface LengthPlace {
  readonly row: number;
  readonly slot: Slot;
  readonly axis: Axis;
  /** What CSS says; it beats the attribute. */
  readonly css: string | null;
}

/** A length in user units, or null where none is said, `auto` is, or what is said cannot be read (which is noted). */
export function findLength(grounds: GeometryGrounds, setting: Setting, place: LengthPlace): number | null {
  const { row, slot, axis, css } = place;
  let text = css;
  if (text === null) {
    const attribute = grounds.slots.find(row, slot);
    if (attribute < 0) return null;
    text = readAttribute(grounds.source, attribute);
  }
  const { style, viewport } = setting;
  const { fontSize, rootFontSize } = style;
  notePercent(grounds, text, viewport);
  const value = readLength(text, { fontSize, rootFontSize, percentBase: percentBase(viewport, axis) });
  if (value === null && text.trim().toLowerCase() !== 'auto') grounds.log.note('resolve/length-invalid', text, row);
  return value;
}
