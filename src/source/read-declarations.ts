// The entities that the internal subset declares, each refusal at its own declaration.
import { decodeUtf8, encodeUtf8 } from '../model/platform.js';
import type { PinbarError } from '../model/trouble.js';
import { faultAt } from './malformed.js';
import { scanDoctype } from './scan-markup.js';
import type { Limits } from './source.js';

/** Names that every XML reader knows; a declaration changes nothing about them. */
export const PREDEFINED: readonly string[] = ['amp', 'lt', 'gt', 'quot', 'apos'];

const ENTITY = /^<!ENTITY\s+(?:(%)\s+)?([^\s%"'<>&;]+)\s+(?:(SYSTEM|PUBLIC)\s|"([^"]*)"\s*>$|'([^']*)'\s*>$)/;

type EntityBound = 'entities' | 'entityBytes' | 'entityTotalBytes';

const BOUND_CODES = {
  entities: 'limit/entity-count',
  entityBytes: 'limit/entity-length',
  entityTotalBytes: 'limit/entity-total',
} as const;

function refuse(text: Uint8Array, offset: number, message: string): PinbarError {
  return faultAt('source/entity-refused', text, offset, {
    message,
    remedy: 'Only plain entities with a literal value are allowed. Save the file without the document type.',
  });
}

/** An error that a bound on entities is passed at a place of the delivered text. */
export function passBound(
  text: Uint8Array,
  offset: number,
  option: EntityBound,
  fault: { readonly message: string; readonly allowed: number },
): PinbarError {
  return faultAt(BOUND_CODES[option], text, offset, {
    message: fault.message,
    remedy: `Allowed are ${fault.allowed}. If the file is sound, raise the bound with --limit ${option}=NUMBER.`,
    data: { allowed: fault.allowed },
  });
}

/** Whether all tags, comments and elements that begin in a value end in it (XML 1.0, section 4.3.2). */
function isWhole(raw: string): boolean {
  const markup = raw.replace(/<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>/g, '');
  let depth = 0;
  const rest = markup.replace(/<(?:[^<>"']|"[^"]*"|'[^']*')*>/g, (tag) => {
    if (tag.startsWith('</')) depth -= 1;
    else if (!tag.endsWith('/>')) depth += 1;
    return depth < 0 ? '<' : '';
  });
  return depth === 0 && !rest.includes('<');
}

/** The declared value; one that names another entity, plainly or by way of a written-out "&", is nested and refused. */
function readValue(text: Uint8Array, offset: number, raw: string, limits: Limits): Uint8Array {
  if (/%[^\s;%&"']+;/.test(raw)) throw refuse(text, offset, 'a parameter entity is used in a declaration.');
  const nested = /&(?!#[0-9]+;|#x[0-9a-fA-F]+;|(?:amp|lt|gt|quot|apos);)[^\s;]*;?/.exec(raw);
  if (nested !== null) throw refuse(text, offset, `the value of an entity names another entity (${nested[0]}).`);
  const markup = /&#(?:0*(?:38|60)|x0*(?:26|3c));/i.exec(raw);
  if (markup !== null) throw refuse(text, offset, `the value of an entity spells markup by its number (${markup[0]}).`);
  const bytes = encodeUtf8(raw);
  if (bytes.length > limits.entityBytes) {
    const message = `an entity is ${bytes.length} bytes long.`;
    throw passBound(text, offset, 'entityBytes', { message, allowed: limits.entityBytes });
  }
  if (!isWhole(raw)) throw refuse(text, offset, 'the value of an entity holds part of a tag, comment or element.');
  return bytes;
}

/** Other declarations change nothing unless they give attributes a value, which is the only text they hold in quotes. */
function refuseDefaults(text: Uint8Array, offset: number, spelled: string): void {
  if (spelled.startsWith('<!ATTLIST') && /["']/.test(spelled)) {
    const message = 'the document type gives attributes default values, which would be lost in the sheets.';
    throw refuse(text, offset, message);
  }
  if (/^<!(?:ATTLIST|ELEMENT)[^"']*%/.test(spelled)) throw refuse(text, offset, 'a parameter entity is used.');
}

/**
 * Declared entities by name; the first declaration of a name counts.
 *
 * @param doctype - Offsets of the document type declaration.
 * @throws PinbarError `source/entity-refused`, `limit/entity-count` or `limit/entity-length`.
 * @source XML 1.0 (5th ed.), section 4.2
 */
export function readDeclarations(
  text: Uint8Array,
  doctype: readonly [number, number],
  limits: Limits,
): ReadonlyMap<string, Uint8Array> {
  const declarations: [number, number][] = [];
  scanDoctype({ text }, doctype[0], declarations);
  const values = new Map<string, Uint8Array>();
  for (const [start, end] of declarations) {
    const spelled = decodeUtf8(text.subarray(start, end));
    if (spelled.startsWith('%')) throw refuse(text, start, 'a parameter entity is used.');
    if (!spelled.startsWith('<!ENTITY')) {
      refuseDefaults(text, start, spelled);
      continue;
    }
    const [, parameter, name, outside, double, single] = ENTITY.exec(spelled) ?? [];
    if (name === undefined) throw refuse(text, start, 'an entity is declared in a form that is not understood.');
    if (parameter !== undefined) throw refuse(text, start, `the parameter entity "${name}" is declared.`);
    if (outside !== undefined) throw refuse(text, start, `the entity "${name}" lies outside the file.`);
    if (values.has(name) || PREDEFINED.includes(name)) continue;
    if (values.size >= limits.entities) {
      const message = 'more entities are declared than allowed.';
      throw passBound(text, start, 'entities', { message, allowed: limits.entities });
    }
    values.set(name, readValue(text, start, double ?? single ?? '', limits));
  }
  return values;
}
