// Literal entities of the document type are written out; all others are refused.
import { decodeUtf8, encodeUtf8 } from '../model/platform.js';
import type { PinbarError } from '../model/trouble.js';
import { faultAt } from './malformed.js';
import type { Expansion, Limits } from './source.js';

/** The text with its entities written out. */
export interface Expanded {
  readonly text: Uint8Array;
  readonly expansions: readonly Expansion[];
}

const PREDEFINED = new Set(['amp', 'lt', 'gt', 'quot', 'apos']);
const ENTITY = /<!ENTITY\s+(%\s+)?([^\s%"'<>]+)\s+(?:(SYSTEM|PUBLIC)\b|"([^"]*)"|'([^']*)')/g;

function refuse(text: Uint8Array, offset: number, message: string): PinbarError {
  return faultAt('source/entity-refused', text, offset, {
    message,
    remedy: 'Only plain entities with a literal value are allowed. Save the file without the document type.',
  });
}

type EntityBound = 'entities' | 'entityBytes' | 'entityTotalBytes';

const BOUND_CODES = {
  entities: 'limit/entity-count',
  entityBytes: 'limit/entity-length',
  entityTotalBytes: 'limit/entity-total',
} as const;

/** An error that a bound on entities is passed at a place of the delivered text. */
function passBound(
  text: Uint8Array,
  offset: number,
  option: EntityBound,
  fault: { message: string; allowed: number },
): PinbarError {
  const { message, allowed } = fault;
  return faultAt(BOUND_CODES[option], text, offset, {
    message,
    remedy: `Allowed are ${allowed}. If the file is sound, raise the bound with --limit ${option}=NUMBER.`,
    data: { allowed },
  });
}

/** The declared value; a value that names another entity is nested and refused. */
function readValue(text: Uint8Array, offset: number, raw: string, limits: Limits): Uint8Array {
  if (/%[^\s;%&"']+;/.test(raw)) throw refuse(text, offset, 'a parameter entity is used in a declaration.');
  const nested = /&(?!#|(?:amp|lt|gt|quot|apos);)[^\s;]*;?/.exec(raw);
  if (nested !== null) throw refuse(text, offset, `the value of an entity names another entity (${nested[0]}).`);
  const bytes = encodeUtf8(raw);
  if (bytes.length > limits.entityBytes) {
    const message = `an entity is ${bytes.length} bytes long.`;
    throw passBound(text, offset, 'entityBytes', { message, allowed: limits.entityBytes });
  }
  return bytes;
}

/** Comments and instructions hide declarations; blanks of the same length keep all offsets. */
function blankOut(subset: string): string {
  return subset.replace(/<!--[\s\S]*?-->|<\?[\s\S]*?\?>/g, (all) => ' '.repeat(all.length));
}

/** Declared entities by name; the first declaration of a name counts (XML 1.0, section 4.2). */
function readDeclarations(
  text: Uint8Array,
  doctype: readonly [number, number],
  limits: Limits,
): Map<string, Uint8Array> {
  const values = new Map<string, Uint8Array>();
  const spelled = decodeUtf8(text.subarray(doctype[0], doctype[1]));
  const open = /^<!DOCTYPE(?:[^["']|"[^"]*"|'[^']*')*\[/.exec(spelled)?.[0].length;
  if (open === undefined) return values;
  const subset = blankOut(spelled.slice(open));
  if (/^\s*%|[\s>]%[^\s;%]+;/.test(subset)) throw refuse(text, doctype[0], 'a parameter entity is used.');
  for (const match of subset.matchAll(ENTITY)) {
    const at = doctype[0] + encodeUtf8(spelled.slice(0, open + match.index)).length;
    const [, parameter, name, outside, double, single] = match;
    if (parameter !== undefined) throw refuse(text, at, `the parameter entity "${name}" is declared.`);
    if (outside !== undefined) throw refuse(text, at, `the entity "${name}" lies outside the file.`);
    if (values.size >= limits.entities) {
      const message = 'more entities are declared than allowed.';
      throw passBound(text, at, 'entities', { message, allowed: limits.entities });
    }
    if (!values.has(name!)) values.set(name!, readValue(text, at, double ?? single ?? '', limits));
  }
  const plain = subset.replace(ENTITY, '');
  if (/<!ENTITY/.test(plain)) throw refuse(text, doctype[0], 'an entity is declared in a form that is not understood.');
  if (
    /<!ATTLIST[^>]*(?:["'])/.test(plain.replace(/\([^)]*\)/g, '')) &&
    /<!ATTLIST[^>]*\s(?:#FIXED\s+)?["'][^"']*["']/.test(plain)
  ) {
    throw refuse(
      text,
      doctype[0],
      'the document type gives attributes default values, which would be lost in the sheets.',
    );
  }
  return values;
}

/** The character or entity that a reference at an `&` names, if it is one of the declared. */
function findReference(
  text: Uint8Array,
  at: number,
  values: ReadonlyMap<string, Uint8Array>,
): { readonly length: number; readonly value: Uint8Array } | null {
  const end = text.indexOf(0x3b, at);
  if (end < 0 || end - at > 200 || text[at + 1] === 0x23) return null;
  const name = decodeUtf8(text.subarray(at + 1, end));
  const value = PREDEFINED.has(name) ? undefined : values.get(name);
  return value === undefined ? null : { length: end + 1 - at, value };
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
