// Reads attributes and text of elements on demand.
import { decodeUtf8 } from '../model/platform.js';
import { type ExpandedName, type Source, SVG_NAMESPACE } from './source.js';

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Text with its character references and predefined entities decoded. */
export function decodeReferences(raw: string): string {
  if (!raw.includes('&')) return raw;
  return raw.replace(/&(?:#([0-9]+)|#x([0-9a-fA-F]+)|(amp|lt|gt|quot|apos));/g, (_, decimal, hex, name) => {
    if (decimal !== undefined) return String.fromCodePoint(Number(decimal));
    if (hex !== undefined) return String.fromCodePoint(Number.parseInt(hex, 16));
    return NAMED[name]!;
  });
}

/** Row of an element's attribute in the attribute table, or -1. */
export function findAttribute(source: Source, row: number, local: string, namespace = ''): number {
  const { attributeStart, attributes } = source.elements;
  for (let a = attributeStart[row]!; a < attributeStart[row + 1]!; a += 1) {
    const name = attributes.names[attributes.name[a]!]!;
    if (name.local === local && name.namespace === namespace) return a;
  }
  return -1;
}

/** Whether the raw bytes of a value are the value: no reference, no tab, no line end. */
export function attributeIsPlain(source: Source, attribute: number): boolean {
  const end = source.elements.attributes.valueEnd[attribute]!;
  for (let i = source.elements.attributes.valueStart[attribute]!; i < end; i += 1) {
    const byte = source.text[i]!;
    if (byte === 0x26 || byte < 0x20) return false;
  }
  return true;
}

/** Short plain values need no decoder: bytes are their own characters. */
function readShort(text: Uint8Array, start: number, end: number): string | null {
  let value = '';
  for (let i = start; i < end; i += 1) {
    const byte = text[i]!;
    if (byte === 0x26 || byte < 0x20 || byte > 0x7e) return null;
    value += String.fromCharCode(byte);
  }
  return value;
}

/** The normalised value of an attribute: white space as blanks, references decoded (XML 1.0, section 3.3.3). */
export function readAttribute(source: Source, attribute: number): string {
  const { valueStart, valueEnd } = source.elements.attributes;
  const start = valueStart[attribute]!;
  const end = valueEnd[attribute]!;
  if (end - start <= 32) {
    const short = readShort(source.text, start, end);
    if (short !== null) return short;
  }
  return decodeReferences(decodeUtf8(source.text.subarray(start, end)).replace(/\r\n|[\t\r\n]/g, ' '));
}

/** The value of an element's attribute by name, or null. */
export function readAttributeValue(source: Source, row: number, local: string, namespace = ''): string | null {
  const attribute = findAttribute(source, row, local, namespace);
  return attribute < 0 ? null : readAttribute(source, attribute);
}

/** One stretch between tags: comments and instructions dropped, CDATA taken as it is, references decoded. */
function readStretch(raw: string): string {
  return raw
    .replace(/\r\n?/g, '\n')
    .replace(
      /<!\[CDATA\[([\s\S]*?)\]\]>|<!--[\s\S]*?-->|<\?[\s\S]*?\?>|([^<]+)/g,
      (_, data, plain) => data ?? decodeReferences(plain ?? ''),
    );
}

/** Character data that stands directly in an element; its child elements are passed over. */
export function readText(source: Source, row: number): string {
  const { headEnd, tailStart, next, start, end } = source.elements;
  let text = '';
  let at = headEnd[row]!;
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    text += readStretch(decodeUtf8(source.text.subarray(at, start[child]!)));
    at = end[child]!;
  }
  return text + readStretch(decodeUtf8(source.text.subarray(at, tailStart[row]!)));
}

/** The expanded name of an element. */
export function elementName(source: Source, row: number): ExpandedName {
  return source.elements.names[source.elements.name[row]!]!;
}

/** Whether an element is the SVG element of a local name. */
export function isSvgElement(source: Source, row: number, local: string): boolean {
  const name = elementName(source, row);
  return name.local === local && name.namespace === SVG_NAMESPACE;
}
