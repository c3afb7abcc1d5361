// What the scanner carries along, and the small readings all its parts share.
import type { FindingCode } from '../model/finding.js';
import { decodeUtf8 } from '../model/platform.js';
import type { PinbarError } from '../model/trouble.js';
import { sequenceLength } from './check-characters.js';
import { type Delivered, deliveredOffset } from './delivered.js';
import type { Columns } from './element-columns.js';
import { faultAt, type TextFault } from './malformed.js';
import { BLANK, BYTE_CLASSES, isNameCharacter, NAME_GOES_ON, NAME_START } from './name-characters.js';
import type { ExpandedNames, NamespaceScope, NameTable } from './name-table.js';
import type { Limits } from './source.js';

/** The scanner's state over one text. */
export interface ScanState {
  readonly text: Uint8Array;
  /** What errors speak of, where the text is not it. */
  readonly delivered?: Delivered | undefined;
  readonly limits: Limits;
  readonly columns: Columns;
  readonly written: NameTable;
  readonly scope: NamespaceScope;
  readonly elementNames: ExpandedNames;
  readonly attributeNames: ExpandedNames;
  readonly instructions: [number, number][];
  /** Offset of the next `&` and `<` at or after the last place asked for; the text's length where there is none. */
  nextAmpersand: number;
  nextLess: number;
  /** Expanded number per written element name, valid while the scope's version is the one beside it. */
  readonly elementCache: number[];
  readonly elementCacheVersion: number[];
  readonly attributeCache: number[];
  readonly attributeCacheVersion: number[];
  /** Row of the element that last carried an attribute name. */
  readonly lastCarrier: number[];
}

/** An error at an offset of the text, told as a place of the delivered text. */
function faultIn(
  state: Pick<ScanState, 'text' | 'delivered'>,
  code: FindingCode,
  offset: number,
  fault: TextFault,
): PinbarError {
  const { delivered, text } = state;
  if (delivered === undefined) return faultAt(code, text, offset, fault);
  return faultAt(code, delivered.text, deliveredOffset(delivered.expansions, offset), fault);
}

/** An error that the text is not well-formed at a place. */
export function malformed(state: Pick<ScanState, 'text' | 'delivered'>, offset: number, message: string): PinbarError {
  return faultIn(state, 'source/malformed', offset, {
    message,
    remedy: 'The file is not well-formed XML. Save it again from the drawing program, or mend the line shown.',
  });
}

/** An error that a bound is passed at a place. */
export function beyond(
  state: ScanState,
  offset: number,
  code: 'limit/depth' | 'limit/elements' | 'limit/attributes',
  what: { readonly message: string; readonly option: string; readonly allowed: number },
): PinbarError {
  return faultIn(state, code, offset, {
    message: what.message,
    remedy: `Allowed are ${what.allowed}. If the file is sound, raise the bound with --limit ${what.option}=NUMBER.`,
    data: { allowed: what.allowed },
  });
}

/** Offset past the white space at a place. */
export function skipBlanks(text: Uint8Array, offset: number): number {
  let at = offset;
  while (BYTE_CLASSES[text[at]!] === BLANK) at += 1;
  return at;
}

/** Offset past a name that goes on above ASCII. */
function skipWideName(text: Uint8Array, start: number, offset: number): number {
  let at = offset;
  while (at < text.length) {
    if ((BYTE_CLASSES[text[at]!]! & NAME_GOES_ON) !== 0) {
      at += 1;
      continue;
    }
    if (text[at]! < 0x80) return at;
    const length = sequenceLength(text, at);
    if (!isNameCharacter(decodeUtf8(text.subarray(at, at + length)), at === start)) return at;
    at += length;
  }
  return at;
}

/** Offset past the name that starts at a place; equal to it where there is none. */
export function skipName(text: Uint8Array, start: number): number {
  const first = text[start]!;
  if (first < 0x80 && (BYTE_CLASSES[first]! & NAME_START) === 0) return start;
  let at = start;
  while (at < text.length && (BYTE_CLASSES[text[at]!]! & NAME_GOES_ON) !== 0) at += 1;
  return at < text.length && text[at]! >= 0x80 ? skipWideName(text, start, at) : at;
}

/** Whether the text goes on with some ASCII at a place. */
export function startsWith(text: Uint8Array, offset: number, ascii: string): boolean {
  for (let i = 0; i < ascii.length; i += 1) if (text[offset + i] !== ascii.charCodeAt(i)) return false;
  return true;
}

/** Offset of some ASCII at or after a place, or -1. */
export function findAscii(text: Uint8Array, offset: number, ascii: string): number {
  const first = ascii.charCodeAt(0);
  for (let at = text.indexOf(first, offset); at >= 0; at = text.indexOf(first, at + 1)) {
    if (startsWith(text, at, ascii)) return at;
  }
  return -1;
}

const KNOWN_ENTITY = /^&(?:amp|lt|gt|quot|apos);$/;
const NUMBER_SIGN = 0x23;
const SEMICOLON = 0x3b;
/** A reference ends within this many bytes of its "&". */
const LONGEST_REFERENCE = 65;
const SMALL_X = 0x78;

/** Value of a hexadecimal digit, or a number beyond all bases. */
function digitOf(byte: number): number {
  if (byte >= 0x30 && byte <= 0x39) return byte - 0x30;
  const letter = byte | 0x20;
  return letter >= 0x61 && letter <= 0x66 ? letter - 0x57 : 99;
}

/** The code point that a reference by number names, read without a decoder: a file may hold a million of them. NaN where it is none. */
function readCode(text: Uint8Array, offset: number, end: number): number {
  const base = text[offset + 2] === SMALL_X ? 16 : 10;
  let at = offset + (base === 16 ? 3 : 2);
  if (at >= end) return Number.NaN;
  let code = 0;
  for (; at < end; at += 1) {
    const digit = digitOf(text[at]!);
    if (digit >= base) return Number.NaN;
    code = Math.min(code * base + digit, 0x110000);
  }
  return code;
}

/** Whether a code point is a character that XML allows (XML 1.0, production 2). */
export function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || (code >= 0x10000 && code <= 0x10ffff);
}

/** Checks the reference at an `&`; returns the offset past it. */
function checkReference(state: ScanState, offset: number): number {
  const { text } = state;
  const found = text.subarray(offset, offset + LONGEST_REFERENCE).indexOf(SEMICOLON);
  const end = offset + found;
  const code = found > 0 && text[offset + 1] === NUMBER_SIGN ? readCode(text, offset, end) : Number.NaN;
  if (isXmlCharacter(code)) return end + 1;
  const spelled = found < 0 ? '' : decodeUtf8(text.subarray(offset, end + 1));
  if (KNOWN_ENTITY.test(spelled)) return end + 1;
  if (Number.isNaN(code)) {
    const name = /^&([^\s;&<"']+);$/.exec(spelled)?.[1];
    throw malformed(
      state,
      offset,
      name === undefined ? 'a bare "&"; write &amp; for the sign itself.' : `the entity "${name}" is not declared.`,
    );
  }
  throw malformed(state, offset, `${spelled} names a character that XML forbids.`);
}

/** Checks every reference between two offsets. */
export function checkReferences(state: ScanState, start: number, end: number): void {
  if (state.nextAmpersand < start) state.nextAmpersand = findOrEnd(state.text, 0x26, start);
  while (state.nextAmpersand < end) {
    const past = checkReference(state, state.nextAmpersand);
    state.nextAmpersand = findOrEnd(state.text, 0x26, past);
  }
}

/** Offset of a byte at or after a place, or the text's length. */
export function findOrEnd(text: Uint8Array, byte: number, offset: number): number {
  const at = text.indexOf(byte, offset);
  return at < 0 ? text.length : at;
}
