// Literal entities of the document type are written out; all others are refused.
import { decodeUtf8 } from '../model/platform.js';
import { passBound, readDeclarations } from './read-declarations.js';
import type { Expansion, Limits } from './source.js';

/** The text with its entities written out. */
export interface Expanded {
  readonly text: Uint8Array;
  readonly expansions: readonly Expansion[];
}

/** A reference is looked for within this many bytes of its "&". */
const LONGEST_REFERENCE = 200;

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

/** Where a CDATA section, comment or instruction that starts at `<` ends, or 0: nothing is expanded inside. */
function skipLiteral(text: Uint8Array, at: number): number {
  const head = String.fromCharCode(...text.subarray(at, at + 9));
  const closing = head.startsWith('<![CDATA[')
    ? ']]>'
    : head.startsWith('<!--')
      ? '-->'
      : head.startsWith('<?')
        ? '?>'
        : '';
  if (closing === '') return 0;
  const last = closing.charCodeAt(closing.length - 1);
  for (let end = text.indexOf(last, at + 2); end >= 0; end = text.indexOf(last, end + 1)) {
    let matches = true;
    for (let i = 0; i < closing.length; i += 1)
      matches &&= text[end - closing.length + 1 + i] === closing.charCodeAt(i);
    if (matches) return end + 1;
  }
  return text.length;
}

/** References after the document type, in order, outside sections that are taken literally. */
function listReferences(
  text: Uint8Array,
  from: number,
  values: ReadonlyMap<string, Uint8Array>,
): { at: number; length: number; value: Uint8Array }[] {
  const found: { at: number; length: number; value: Uint8Array }[] = [];
  let at = from;
  while (at < text.length) {
    const byte = text[at];
    const literal = byte === 0x3c ? skipLiteral(text, at) : 0;
    if (literal > 0) {
      at = literal;
      continue;
    }
    const reference = byte === 0x26 ? findReference(text, at, values) : null;
    if (reference !== null) found.push({ at, ...reference });
    at += reference?.length ?? 1;
  }
  return found;
}

/**
 * Writes the entities that the internal subset declares out where they are used.
 *
 * @param doctype - Offsets of the document type declaration.
 * @throws PinbarError `source/entity-refused` for nested, parameter and external ones, or a `limit/` code.
 * @source XML 1.0 (5th ed.), sections 4.2, 4.4
 */
export function expandEntities(text: Uint8Array, doctype: readonly [number, number], limits: Limits): Expanded {
  const values = readDeclarations(text, doctype, limits);
  if (values.size === 0) return { text, expansions: [] };
  const references = listReferences(text, doctype[1], values);
  let total = 0;
  let grown = text.length;
  for (const { at, length, value } of references) {
    total += value.length;
    grown += value.length - length;
    if (total > limits.entityTotalBytes) {
      const message = 'entities expand to more text than allowed.';
      throw passBound(text, at, 'entityTotalBytes', { message, allowed: limits.entityTotalBytes });
    }
  }
  const out = new Uint8Array(grown);
  const expansions: Expansion[] = [];
  let from = 0;
  let to = 0;
  for (const { at, length, value } of references) {
    out.set(text.subarray(from, at), to);
    to += at - from;
    out.set(value, to);
    expansions.push({ start: to, end: to + value.length, referenceLength: length });
    to += value.length;
    from = at + length;
  }
  out.set(text.subarray(from), to);
  return { text: out, expansions };
}
