// Scans the attributes of one start tag.
import { decodeUtf8 } from '../model/platform.js';
import { growAttributes } from './element-columns.js';
import { decodeReferences } from './read-attribute.js';
import { beyond, checkReferences, findOrEnd, malformed, type ScanState, skipBlanks, skipName } from './scan-state.js';
import { XML_NAMESPACE, XMLNS_NAMESPACE } from './source.js';

const EQUALS = 0x3d;
const GREATER = 0x3e;
const SLASH = 0x2f;
const QUOTE = 0x22;
const APOSTROPHE = 0x27;
const LESS = 0x3c;
/** Up to this many bytes a value is searched by hand: a call into the engine costs more. */
const SHORT = 24;

/** Offset of the closing quote of a value that starts at a place. */
function findQuote(text: Uint8Array, start: number, quote: number): number {
  const stop = Math.min(text.length, start + SHORT);
  for (let at = start; at < stop; at += 1) if (text[at] === quote) return at;
  return text.indexOf(quote, stop);
}

/** Checks a value and returns the offset of its closing quote. */
function scanValue(state: ScanState, offset: number): number {
  const { text } = state;
  const quote = text[offset];
  if (quote !== QUOTE && quote !== APOSTROPHE)
    throw malformed(state, offset, 'the value of an attribute stands in quotes.');
  const start = offset + 1;
  const end = findQuote(text, start, quote);
  if (end < 0) throw malformed(state, offset, 'this quote is never closed.');
  if (state.nextLess < start) state.nextLess = findOrEnd(text, LESS, start);
  if (state.nextLess < end)
    throw malformed(state, state.nextLess, '"<" may not stand in the value of an attribute; write &lt;.');
  if (state.nextAmpersand < end) checkReferences(state, start, end);
  return end;
}

/** Number of a written attribute name, as an expanded name; written numbers come from the name table. */
function expandAttribute(state: ScanState, writtenNumber: number, offset: number): number {
  const version = state.scope.version();
  if (state.attributeCacheVersion[writtenNumber] === version) return state.attributeCache[writtenNumber]!;
  const written = state.written.written[writtenNumber]!;
  if (!written.isQualified) throw malformed(state, offset, `"${written.text}" is not a name with at most one prefix.`);
  let namespace: string | undefined = '';
  if (written.text === 'xmlns') namespace = XMLNS_NAMESPACE;
  else if (written.prefix !== '') namespace = state.scope.lookUp(written.prefix);
  if (namespace === undefined || (namespace === '' && written.prefix !== '')) {
    throw malformed(state, offset, `the prefix "${written.prefix}" is not declared.`);
  }
  const number = state.attributeNames.number(namespace, written);
  state.attributeCache[writtenNumber] = number;
  state.attributeCacheVersion[writtenNumber] = version;
  return number;
}

/** Declares a namespace; refuses what Namespaces in XML 1.0, section 3, refuses. */
function declareNamespace(state: ScanState, prefix: string, offset: number, value: readonly [number, number]): void {
  const uri = decodeReferences(decodeUtf8(state.text.subarray(value[0], value[1]))).trim();
  if (prefix === 'xmlns') throw malformed(state, offset, 'the prefix xmlns may not be declared.');
  if ((prefix === 'xml') !== (uri === XML_NAMESPACE)) {
    throw malformed(state, offset, 'the prefix xml and its namespace belong together and to nothing else.');
  }
  if (uri === XMLNS_NAMESPACE) throw malformed(state, offset, 'the namespace of declarations may not be declared.');
  if (uri === '' && prefix !== '')
    throw malformed(state, offset, `the prefix "${prefix}" is declared without a namespace.`);
  state.scope.declare(prefix, uri);
}

/** What scanning a start tag's attributes found. */
export interface AttributesEnd {
  /** Offset past the `>`. */
  readonly headEnd: number;
  readonly isEmpty: boolean;
  readonly declared: number;
}

/** Written numbers of the attributes of a tag, in order, kept for expanding once all declarations are known. */
function scanRaw(state: ScanState, row: number, nameEnd: number): AttributesEnd {
  const { text, columns } = state;
  const first = columns.attributeCount;
  let at = nameEnd;
  let declared = 0;
  for (;;) {
    const gap = at;
    at = skipBlanks(text, at);
    const byte = text[at];
    if (byte === GREATER) return { headEnd: at + 1, isEmpty: false, declared };
    if (byte === SLASH && text[at + 1] === GREATER) return { headEnd: at + 2, isEmpty: true, declared };
    if (byte === undefined) throw malformed(state, columns.start[row]!, 'this tag is never closed.');
    const end = skipName(text, at);
    if (end === at) throw malformed(state, at, 'here a name, "/>" or ">" is expected.');
    if (gap === at) throw malformed(state, at, 'attributes are parted by a blank.');
    const equals = skipBlanks(text, end);
    if (text[equals] !== EQUALS) throw malformed(state, equals, 'an attribute has a value: name="value".');
    const quote = skipBlanks(text, equals + 1);
    const close = scanValue(state, quote);
    if (columns.attributeCount - first >= state.limits.attributesPerElement) {
      throw beyond(state, at, 'limit/attributes', {
        message: 'this element has more attributes than allowed.',
        option: 'attributesPerElement',
        allowed: state.limits.attributesPerElement,
      });
    }
    growAttributes(columns);
    const number = state.written.intern(text, at, end);
    const slot = columns.attributeCount;
    columns.attributeName[slot] = number;
    columns.valueStart[slot] = quote + 1;
    columns.valueEnd[slot] = close;
    columns.attributeCount = slot + 1;
    const name = state.written.written[number]!;
    if (name.prefix === 'xmlns' || name.text === 'xmlns') {
      declareNamespace(state, name.text === 'xmlns' ? '' : name.local, at, [quote + 1, close]);
      declared += 1;
    }
    at = close + 1;
  }
}

/** Two prefixes of one namespace make two spellings of one name; that is a duplicate too. */
function refuseSameExpanded(state: ScanState, first: number): void {
  const { columns, attributeNames } = state;
  const seen = new Set<string>();
  for (let a = first; a < columns.attributeCount; a += 1) {
    const name = attributeNames.names[columns.attributeName[a]!]!;
    // A declaration has one spelling, and that was looked at.
    if (name.namespace === '' || name.namespace === XMLNS_NAMESPACE) continue;
    const key = `${name.namespace} ${name.local}`;
    if (seen.has(key))
      throw malformed(state, columns.valueStart[a]! - 1, `the attribute ${name.qualified} stands twice.`);
    seen.add(key);
  }
}

/** Scans the attributes of the start tag of a row and expands their names. */
export function scanAttributes(state: ScanState, row: number, nameEnd: number): AttributesEnd {
  const { columns } = state;
  const first = columns.attributeCount;
  columns.attributeStart[row] = first;
  const end = scanRaw(state, row, nameEnd);
  let prefixed = 0;
  for (let a = first; a < columns.attributeCount; a += 1) {
    const written = columns.attributeName[a]!;
    const number = expandAttribute(state, written, columns.valueStart[a]! - 1);
    columns.attributeName[a] = number;
    if (state.lastCarrier[number] === row) {
      const { qualified } = state.attributeNames.names[number]!;
      throw malformed(state, columns.valueStart[a]! - 1, `the attribute ${qualified} stands twice.`);
    }
    state.lastCarrier[number] = row;
    if (state.written.written[written]!.prefix !== '') prefixed += 1;
  }
  if (prefixed > 1) refuseSameExpanded(state, first);
  return end;
}
