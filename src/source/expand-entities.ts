// Literal entities of the document type are written out; all others are refused.
import { listReferences } from './list-references.js';
import { passBound, readDeclarations } from './read-declarations.js';
import type { Expansion, Limits } from './source.js';

/** The text with its entities written out. */
export interface Expanded {
  readonly text: Uint8Array;
  readonly expansions: readonly Expansion[];
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
