// Sets style properties of a kept element without touching what is written there.
import { findAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import type { Edit } from './edit.js';

const SLASH = 0x2f;

/** Offset in a start tag where one more attribute can go. */
export function attributeGap(source: Source, row: number): number {
  const end = source.elements.headEnd[row]! - 1;
  return source.text[end - 1] === SLASH ? end - 1 : end;
}

/**
 * An edit that appends declarations to an element's style attribute, or adds the attribute.
 *
 * @param css - Declarations, each with `!important`, so that they win over every rule of the author (CSS Cascade 5, section 6.1).
 */
export function overrideStyle(source: Source, row: number, css: string): Edit {
  const attribute = findAttribute(source, row, 'style');
  if (attribute < 0) {
    const at = attributeGap(source, row);
    return { start: at, end: at, replacement: ` style="${css}"` };
  }
  const at = source.elements.attributes.valueEnd[attribute]!;
  return { start: at, end: at, replacement: `;${css}` };
}
