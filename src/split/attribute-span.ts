// Where an attribute stands in its start tag, name and leading blank included.
import type { Source } from '../source/source.js';

const EQUALS = 0x3d;

/** Whether a byte is XML white space. */
export function isBlank(byte: number | undefined): boolean {
  return byte === 0x20 || byte === 0x0a || byte === 0x09 || byte === 0x0d;
}

/** Offsets from the blank before an attribute's name to past its closing quote: what to cut to take it out. */
export function attributeSpan(source: Source, attribute: number): readonly [number, number] {
  const { text } = source;
  let at = source.elements.attributes.valueStart[attribute]! - 2;
  while (text[at] !== EQUALS) at -= 1;
  at -= 1;
  while (isBlank(text[at])) at -= 1;
  while (!isBlank(text[at])) at -= 1;
  while (isBlank(text[at - 1])) at -= 1;
  return [at, source.elements.attributes.valueEnd[attribute]! + 1];
}
