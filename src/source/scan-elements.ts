// The strict scanner: bytes to the element table, in one go.
import { decodeUtf8 } from '../model/platform.js';
import type { Delivered } from './delivered.js';
import { type Columns, createColumns, finishColumns, growElements } from './element-columns.js';
import { createExpandedNames, createNamespaceScope, createNameTable } from './name-table.js';
import { scanAttributes } from './scan-attributes.js';
import { scanCdata, scanComment, scanDeclaration, scanDoctype, scanInstruction } from './scan-markup.js';
import {
  beyond,
  checkReferences,
  findAscii,
  findOrEnd,
  malformed,
  type ScanState,
  skipBlanks,
  skipName,
  startsWith,
} from './scan-state.js';
import { type ElementTable, type Limits, SVG_NAMESPACE } from './source.js';

/** What the scanner found. */
export interface Scan {
  readonly elements: ElementTable;
  readonly declaration: readonly [number, number] | null;
  readonly doctype: readonly [number, number] | null;
  readonly instructions: readonly (readonly [number, number])[];
}

/** How a scan may be told to read names. */
export interface ScanOptions {
  readonly limits: Limits;
  /** Read names without a prefix as SVG where no namespace is declared. */
  readonly assumeSvg?: boolean;
  /** What errors speak of, where entities were written out. */
  readonly delivered?: Delivered | undefined;
}

const LESS = 0x3c;
const SLASH = 0x2f;
const BANG = 0x21;
const QUESTION = 0x3f;

interface Progress {
  readonly state: ScanState;
  /** Rows of the open elements, and how many namespaces each declared. */
  readonly open: number[];
  readonly declared: number[];
  /** Written name numbers of the open elements. */
  readonly openNames: number[];
  declaration: readonly [number, number] | null;
  doctype: readonly [number, number] | null;
}

function expandElement(state: ScanState, writtenNumber: number, offset: number): number {
  const version = state.scope.version();
  if (state.elementCacheVersion[writtenNumber] === version) return state.elementCache[writtenNumber]!;
  const written = state.written.written[writtenNumber]!;
  if (!written.isQualified) throw malformed(state, offset, `"${written.text}" is not a name with at most one prefix.`);
  if (written.prefix === 'xmlns') throw malformed(state, offset, 'an element may not have the prefix xmlns.');
  const namespace = state.scope.lookUp(written.prefix);
  if (namespace === undefined && written.prefix !== '') {
    throw malformed(state, offset, `the prefix "${written.prefix}" is not declared.`);
  }
  const number = state.elementNames.number(namespace ?? '', written);
  state.elementCache[writtenNumber] = number;
  state.elementCacheVersion[writtenNumber] = version;
  return number;
}

function closeRow(progress: Progress, row: number, tailStart: number, end: number): void {
  const { columns, scope } = progress.state;
  columns.tailStart[row] = tailStart;
  columns.end[row] = end;
  columns.next[row] = columns.count;
  scope.forget(progress.declared.pop()!);
  progress.open.pop();
  progress.openNames.pop();
}

function checkBounds(progress: Progress, offset: number): void {
  const { state, open } = progress;
  if (open.length >= state.limits.depth) {
    throw beyond(state, offset, 'limit/depth', {
      message: 'elements are nested deeper than allowed.',
      option: 'depth',
      allowed: state.limits.depth,
    });
  }
  if (state.columns.count >= state.limits.elements) {
    throw beyond(state, offset, 'limit/elements', {
      message: 'the file has more elements than allowed.',
      option: 'elements',
      allowed: state.limits.elements,
    });
  }
}

/** Scans a start tag; returns the offset past it. */
function scanStartTag(progress: Progress, offset: number): number {
  const { state, open } = progress;
  const { text, columns } = state;
  const nameEnd = skipName(text, offset + 1);
  if (nameEnd === offset + 1) throw malformed(state, offset, '"<" begins a tag; for the sign itself write &lt;.');
  if (open.length === 0 && columns.count > 0) throw malformed(state, offset, 'a file has one root element only.');
  checkBounds(progress, offset);
  growElements(columns);
  const row = columns.count;
  columns.count = row + 1;
  columns.start[row] = offset;
  columns.parent[row] = open.length === 0 ? -1 : open[open.length - 1]!;
  const written = state.written.intern(text, offset + 1, nameEnd);
  const attributes = scanAttributes(state, row, nameEnd);
  columns.name[row] = expandElement(state, written, offset);
  columns.headEnd[row] = attributes.headEnd;
  open.push(row);
  progress.openNames.push(written);
  progress.declared.push(attributes.declared);
  if (attributes.isEmpty) closeRow(progress, row, attributes.headEnd, attributes.headEnd);
  return attributes.headEnd;
}

/** Scans an end tag; returns the offset past it. */
function scanEndTag(progress: Progress, offset: number): number {
  const { state, open, openNames } = progress;
  const { text } = state;
  const nameEnd = skipName(text, offset + 2);
  const close = skipBlanks(text, nameEnd);
  if (nameEnd === offset + 2 || text[close] !== 0x3e)
    throw malformed(state, offset, 'an end tag is of the form </name>.');
  const row = open[open.length - 1];
  if (row === undefined) throw malformed(state, offset, 'this end tag closes nothing.');
  const written = state.written.intern(text, offset + 2, nameEnd);
  if (written !== openNames[openNames.length - 1]) {
    const expected = state.written.written[openNames[openNames.length - 1]!]!.text;
    const found = decodeUtf8(text.subarray(offset + 2, nameEnd));
    throw malformed(state, offset, `</${found}> closes <${expected}>; they must match.`);
  }
  closeRow(progress, row, offset, close + 1);
  return close + 1;
}

/** Checks the text between tags; outside the root only white space may stand. */
function checkText(progress: Progress, start: number, end: number): void {
  const { state, open } = progress;
  if (open.length === 0) {
    const at = skipBlanks(state.text, start);
    if (at < end) throw malformed(state, at, 'text stands outside the root element.');
    return;
  }
  if (state.nextAmpersand < end) checkReferences(state, start, end);
  if (end - start < 3) return;
  const bracket = state.text.subarray(start, end).indexOf(0x5d);
  if (bracket < 0) return;
  const close = findAscii(state.text.subarray(0, end), start + bracket, ']]>');
  if (close >= 0) throw malformed(state, close, '"]]>" may not stand in text; write ]]&gt;.');
}

/** Scans what begins with `<!`; returns the offset past it. */
function scanBang(progress: Progress, offset: number): number {
  const { state, open } = progress;
  const { text } = state;
  if (startsWith(text, offset, '<!--')) return scanComment(state, offset);
  if (startsWith(text, offset, '<![CDATA[')) {
    if (open.length === 0) throw malformed(state, offset, 'a CDATA section stands outside the root element.');
    return scanCdata(state, offset);
  }
  if (!startsWith(text, offset, '<!DOCTYPE'))
    throw malformed(state, offset, '"<!" begins a comment, CDATA or the document type.');
  if (progress.doctype !== null || state.columns.count > 0) {
    throw malformed(state, offset, 'the document type stands once, before the root element.');
  }
  const end = scanDoctype(state, offset);
  progress.doctype = [offset, end];
  return end;
}

function scanAll(progress: Progress): void {
  const { state, open } = progress;
  const { text } = state;
  let at = scanDeclaration(state);
  if (at > 0) progress.declaration = [0, at];
  while (at < text.length) {
    if (text[at] !== LESS) {
      // White space up to the next tag, the common case, needs no look at what it holds.
      const blank = skipBlanks(text, at);
      if (text[blank] === LESS) {
        at = blank;
        continue;
      }
      const end = findOrEnd(text, LESS, at);
      checkText(progress, at, end);
      at = end;
      continue;
    }
    const second = text[at + 1];
    if (second === SLASH) at = scanEndTag(progress, at);
    else if (second === BANG) at = scanBang(progress, at);
    else if (second === QUESTION) at = scanInstruction(state, at);
    else at = scanStartTag(progress, at);
  }
  const unclosed = open[open.length - 1];
  if (unclosed !== undefined) throw malformed(state, state.columns.start[unclosed]!, 'this element is never closed.');
  if (state.columns.count === 0) throw malformed(state, text.length, 'the file has no root element.');
}

function createState(text: Uint8Array, { limits, delivered }: ScanOptions): ScanState {
  const columns: Columns = createColumns(Math.max(64, Math.min(limits.elements, text.length >> 8)));
  return {
    text,
    delivered,
    limits,
    columns,
    written: createNameTable(),
    scope: createNamespaceScope(),
    elementNames: createExpandedNames(),
    attributeNames: createExpandedNames(),
    instructions: [],
    nextAmpersand: findOrEnd(text, 0x26, 0),
    nextLess: 0,
    elementCache: [],
    elementCacheVersion: [],
    attributeCache: [],
    attributeCacheVersion: [],
    lastCarrier: [],
  };
}

/**
 * Scans well-formed XML into the element table.
 *
 * @param text - UTF-8 without byte order mark, checked for characters, entities of the document type written out.
 * @throws PinbarError `source/malformed` or a `limit/` code, with line, column, the line shown and a caret.
 * @source XML 1.0 (5th ed.), Namespaces in XML 1.0 (3rd ed.)
 */
export function scanElements(text: Uint8Array, options: ScanOptions): Scan {
  const state = createState(text, options);
  if (options.assumeSvg) state.scope.declare('', SVG_NAMESPACE);
  const progress: Progress = { state, open: [], declared: [], openNames: [], declaration: null, doctype: null };
  scanAll(progress);
  return {
    elements: finishColumns(state.columns, state.elementNames.names, state.attributeNames.names),
    declaration: progress.declaration,
    doctype: progress.doctype,
    instructions: state.instructions,
  };
}
