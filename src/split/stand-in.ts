// What stays behind of a dropped element, so that style rules that count or look at siblings go on matching the rest.
import { decodeUtf8 } from '../model/platform.js';
import type { Source } from '../source/source.js';
import { attributeSpan } from './attribute-span.js';

const LEFT_OUT = /^(?:style|d|points|href|on.*|src|data-pinbar)$/i;

/** An empty, undrawn element of the same name, id and class; geometry, style and handlers are left out. */
export function standInFor(source: Source, row: number): string {
  const { elements, text } = source;
  const { attributes } = elements;
  const name = elements.names[elements.name[row]!]!;
  let tag = `<${name.qualified}`;
  for (let a = elements.attributeStart[row]!; a < elements.attributeStart[row + 1]!; a += 1) {
    const attribute = attributes.names[attributes.name[a]!]!;
    if (LEFT_OUT.test(attribute.local)) continue;
    const [start, end] = attributeSpan(source, a);
    tag += decodeUtf8(text.subarray(start, end));
  }
  return `${tag} data-pinbar="stand-in" style="display:none!important"/>`;
}
