// Where a text uses declared entities, and what is to be written there.
import { decodeUtf8, encodeUtf8 } from '../model/platform.js';

/** One use of an entity. */
export interface EntityReference {
  /** Offset of the `&`. */
  readonly at: number;
  /** Bytes of the reference itself. */
  readonly length: number;
  /** What is written in its place. */
  readonly value: Uint8Array;
}

const QUOTE = 0x22;
const AMPERSAND = 0x26;
const APOSTROPHE = 0x27;
const SLASH = 0x2f;
const LESS = 0x3c;
const GREATER = 0x3e;

/** A reference is looked for within this many bytes of its "&". */
const LONGEST_REFERENCE = 200;

/** Sections that are taken literally. */
const LITERALS: readonly (readonly [string, string])[] = [
  ['<![CDATA[', ']]>'],
  ['<!--', '-->'],
  ['<?', '?>'],
];

/** The entity that a reference at an `&` names, if it is one of the declared. */
function findReference(
  text: Uint8Array,
  at: number,
  values: ReadonlyMap<string, Uint8Array>,
): { readonly length: number; readonly value: Uint8Array } | null {
  const length = text.subarray(at, at + LONGEST_REFERENCE).indexOf(0x3b) + 1;
  const value = length === 0 ? undefined : values.get(decodeUtf8(text.subarray(at + 1, at + length - 1)));
  return value === undefined ? null : { length, value };
}

function matchesAt(text: Uint8Array, at: number, ascii: string): boolean {
  for (let i = 0; i < ascii.length; i += 1) if (text[at + i] !== ascii.charCodeAt(i)) return false;
  return true;
}

/** Where a CDATA section, comment or instruction that starts at `<` ends, or 0: nothing is expanded inside. */
function skipLiteral(text: Uint8Array, at: number): number {
  const closing = LITERALS.find(([opening]) => matchesAt(text, at, opening))?.[1];
  if (closing === undefined) return 0;
  const last = closing.charCodeAt(closing.length - 1);
  for (let end = text.indexOf(last, at + 2); end >= 0; end = text.indexOf(last, end + 1)) {
    if (matchesAt(text, end - closing.length + 1, closing)) return end + 1;
  }
  return text.length;
}

/** In a value the quotes of an entity are plain signs; written out, the one that would close the value is spelled. */
function spellQuote(value: Uint8Array, quote: number): Uint8Array {
  if (!value.includes(quote)) return value;
  const [sign, spelled] = quote === QUOTE ? ['"', '&quot;'] : ["'", '&#39;'];
  return encodeUtf8(decodeUtf8(value).replaceAll(sign, spelled));
}

/**
 * Uses of declared entities in order: in attribute values and in the content of elements.
 *
 * A reference anywhere else (a tag's name, between attributes, outside the root) stays, and the scanner refuses it.
 *
 * @source XML 1.0 (5th ed.), sections 4.4.1, 4.4.2, 4.4.5
 */
export function listReferences(
  text: Uint8Array,
  from: number,
  values: ReadonlyMap<string, Uint8Array>,
): readonly EntityReference[] {
  const found: EntityReference[] = [];
  let depth = 0;
  let inTag = false;
  let quote = 0;
  let at = from;
  while (at < text.length) {
    const byte = text[at]!;
    if (byte === AMPERSAND) {
      const isAllowed = inTag ? quote !== 0 : depth > 0;
      const reference = isAllowed ? findReference(text, at, values) : null;
      if (reference !== null) found.push({ at, ...reference, value: spellQuote(reference.value, quote) });
      at += reference?.length ?? 1;
      continue;
    }
    const literal = byte === LESS && !inTag ? skipLiteral(text, at) : 0;
    if (literal > 0) {
      at = literal;
      continue;
    }
    if (quote !== 0) quote = byte === quote ? 0 : quote;
    else if (inTag && (byte === QUOTE || byte === APOSTROPHE)) quote = byte;
    else if (inTag && byte === GREATER) {
      inTag = false;
      if (text[at - 1] === SLASH) depth -= 1;
    } else if (!inTag && byte === LESS) {
      inTag = true;
      depth += text[at + 1] === SLASH ? -1 : 1;
    }
    at += 1;
  }
  return found;
}
