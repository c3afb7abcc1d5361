// A selection of rows becomes pieces: spans of the source and small insertions.
import type { Pass } from '../model/pass.js';
import { encodeUtf8 } from '../model/platform.js';
import type { Sheet } from '../model/sheet.js';
import type { Source } from '../source/source.js';
import { isBlank } from './attribute-span.js';
import { type Edit, firstEditFrom } from './edit.js';
import { CHAIN, DEFINITION, DROPPED, type Grounds, WHOLE } from './select-rows.js';
import { standInFor } from './stand-in.js';

/** What a sheet is made of. */
export interface Order {
  readonly pass: Pass;
  /** Duty per row; see select-rows. */
  readonly duty: Uint8Array;
  /** Ordered edits of this sheet. */
  readonly edits: readonly Edit[];
  /** Whether dropped elements leave an empty stand-in, so that style rules go on matching the rest. */
  readonly standIns: boolean;
}

const DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>';
const DEFINITION_OPEN = '<defs data-pinbar="definition">';
const DEFINITION_CLOSE = '</defs>';

interface Writer {
  readonly source: Source;
  readonly order: Order;
  readonly pieces: Uint8Array[];
  readonly rows: number[];
  /** The span of the source not yet turned into a piece. */
  spanStart: number;
  spanEnd: number;
}

function flush(writer: Writer): void {
  if (writer.spanEnd > writer.spanStart) {
    writer.pieces.push(writer.source.text.subarray(writer.spanStart, writer.spanEnd));
  }
  writer.spanStart = writer.spanEnd;
}

function writeBare(writer: Writer, start: number, end: number): void {
  if (start !== writer.spanEnd) {
    flush(writer);
    writer.spanStart = start;
  }
  writer.spanEnd = end;
}

/** Writes a span of the source with the edits that fall into it. */
function writeSpan(writer: Writer, start: number, end: number): void {
  const { edits } = writer.order;
  let at = start;
  for (let i = firstEditFrom(edits, start); i < edits.length && edits[i]!.start < end; i += 1) {
    const edit = edits[i]!;
    writeBare(writer, at, edit.start);
    if (edit.replacement !== '') insert(writer, edit.replacement);
    at = edit.end;
  }
  writeBare(writer, at, end);
}

function insert(writer: Writer, text: string): void {
  flush(writer);
  writer.pieces.push(encodeUtf8(text));
  writer.spanStart = -1;
  writer.spanEnd = -1;
}

/** Offset where the white space before an element begins. */
function gapBefore(text: Uint8Array, offset: number): number {
  let at = offset;
  while (isBlank(text[at - 1])) at -= 1;
  return at;
}

function listRows(writer: Writer, row: number, removed: Uint8Array): void {
  const end = writer.source.elements.next[row]!;
  for (let at = row; at < end; at += 1) if (removed[at] === 0) writer.rows.push(at);
}

/** Whether a child of a kept group tells its name or meaning, in text alone. */
function isCaption(grounds: Grounds, row: number): boolean {
  const { elements } = grounds.source;
  const { local } = elements.names[elements.name[row]!]!;
  return (local === 'title' || local === 'desc') && elements.next[row] === row + 1 && grounds.removed[row] === 0;
}

function writeWhole(writer: Writer, grounds: Grounds, row: number): void {
  const { start, end } = writer.source.elements;
  writeSpan(writer, gapBefore(writer.source.text, start[row]!), start[row]!);
  const wrapped = writer.order.duty[row] === DEFINITION && grounds.neverDrawn[row] === 0;
  if (wrapped) {
    insert(writer, DEFINITION_OPEN);
    writer.rows.push(-1);
  }
  writeSpan(writer, start[row]!, end[row]!);
  listRows(writer, row, grounds.removed);
  if (wrapped) insert(writer, DEFINITION_CLOSE);
}

/** Writes one child of a kept group; true when its own children come next. */
function writeChild(writer: Writer, grounds: Grounds, row: number): boolean {
  const { source, order } = writer;
  const duty = order.duty[row]!;
  const caption = duty === DROPPED && isCaption(grounds, row);
  if (duty === WHOLE || duty === DEFINITION || caption) {
    writeWhole(writer, grounds, row);
  } else if (duty === CHAIN) {
    const { start, headEnd } = source.elements;
    writeSpan(writer, gapBefore(source.text, start[row]!), headEnd[row]!);
    writer.rows.push(row);
    return true;
  } else if (order.standIns && grounds.removed[row] === 0) {
    insert(writer, standInFor(source, row));
    writer.rows.push(-1);
  }
  return false;
}

function closeGroup(writer: Writer, row: number): void {
  const { text, elements } = writer.source;
  const tail = elements.tailStart[row]!;
  if (tail === elements.end[row]) return;
  writeSpan(writer, gapBefore(text, tail), elements.end[row]!);
}

/** Walks the kept groups in document order without recursion; returns the piece index of the root's end tag. */
function writeTree(writer: Writer, grounds: Grounds): number {
  const { elements } = writer.source;
  const open: number[] = [];
  let row = 0;
  let marksAt = -1;
  while (row < elements.count || open.length > 0) {
    const group = open.at(-1);
    if (group !== undefined && row >= elements.next[group]!) {
      if (group === 0) marksAt = openEnd(writer);
      closeGroup(writer, group);
      open.pop();
      continue;
    }
    if (writeChild(writer, grounds, row)) {
      open.push(row);
      row += 1;
    } else {
      row = elements.next[row]!;
    }
  }
  flush(writer);
  return marksAt;
}

/** Ends the current piece, so that marks can go before what follows. */
function openEnd(writer: Writer): number {
  flush(writer);
  return writer.pieces.length;
}

/** The XML declaration, if the file had one; a file that was not UTF-8 gets one that is true. */
function writeDeclaration(writer: Writer): void {
  const { source } = writer;
  if (source.declaration === null) return;
  if (source.encoding.toLowerCase() === 'utf-8') writeBare(writer, source.declaration[0], source.declaration[1]);
  else insert(writer, DECLARATION);
  // Where blanks stand before the root they part it from the declaration; one more line for every split would never end.
  const root = source.elements.start[0]!;
  if (gapBefore(source.text, root) === root) insert(writer, '\n');
}

/** Writes one sheet. The root is never an empty-element tag here; see `openRoot` in split. */
export function emitSheet(grounds: Grounds, order: Order): Sheet {
  const writer: Writer = { source: grounds.source, order, pieces: [], rows: [], spanStart: -1, spanEnd: -1 };
  writeDeclaration(writer);
  const marksAt = writeTree(writer, grounds);
  insert(writer, '\n');
  return { pass: order.pass, pieces: writer.pieces, marksAt, rows: Int32Array.from(writer.rows), findings: [] };
}
