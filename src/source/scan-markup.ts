// Comments, CDATA sections, processing instructions, the XML declaration and the document type.
import { decodeUtf8 } from '../model/platform.js';
import { findAscii, findOrEnd, malformed, type ScanState, skipBlanks, skipName, startsWith } from './scan-state.js';

/** All that these readings need of the scanner's state. */
export type TextOnly = Pick<ScanState, 'text' | 'delivered'>;

/** Offset past the comment that starts at a place. */
export function scanComment(state: TextOnly, offset: number): number {
  const dashes = findAscii(state.text, offset + 4, '--');
  if (dashes < 0) throw malformed(state, offset, 'this comment is never closed.');
  if (state.text[dashes + 2] !== 0x3e) throw malformed(state, dashes, '"--" may not stand inside a comment.');
  return dashes + 3;
}

/** Offset past the CDATA section that starts at a place. */
export function scanCdata(state: ScanState, offset: number): number {
  const end = findAscii(state.text, offset + 9, ']]>');
  if (end < 0) throw malformed(state, offset, 'this CDATA section is never closed.');
  return end + 3;
}

/** Offset past the processing instruction that starts at a place; it is noted. */
export function scanInstruction(state: ScanState, offset: number): number {
  const { text } = state;
  const nameEnd = skipName(text, offset + 2);
  const name = decodeUtf8(text.subarray(offset + 2, nameEnd));
  if (name === '') throw malformed(state, offset, 'a processing instruction begins with a name.');
  if (name.toLowerCase() === 'xml') {
    throw malformed(state, offset, 'the XML declaration stands once, at the very start, and is written <?xml.');
  }
  if (name.includes(':')) throw malformed(state, offset, 'the name of a processing instruction has no colon.');
  const end = findAscii(text, nameEnd, '?>');
  if (end < 0) throw malformed(state, offset, 'this processing instruction is never closed.');
  if (end !== nameEnd && skipBlanks(text, nameEnd) === nameEnd) {
    throw malformed(state, nameEnd, 'a blank parts the name of a processing instruction from the rest.');
  }
  state.instructions.push([offset, end + 2]);
  return end + 2;
}

const DECLARATION =
  /^<\?xml[ \t\r\n]+version[ \t\r\n]*=[ \t\r\n]*(?:"1\.[0-9]+"|'1\.[0-9]+')(?:[ \t\r\n]+encoding[ \t\r\n]*=[ \t\r\n]*(?:"[A-Za-z][-A-Za-z0-9._]*"|'[A-Za-z][-A-Za-z0-9._]*'))?(?:[ \t\r\n]+standalone[ \t\r\n]*=[ \t\r\n]*(?:"(?:yes|no)"|'(?:yes|no)'))?[ \t\r\n]*\?>$/;

/** Offset past the XML declaration at the start of the text, or 0 where there is none. */
export function scanDeclaration(state: ScanState): number {
  const { text } = state;
  if (!startsWith(text, 0, '<?xml') || skipName(text, 2) !== 5) return 0;
  const end = findAscii(text, 5, '?>');
  const spelled = end < 0 ? '' : decodeUtf8(text.subarray(0, end + 2));
  if (!DECLARATION.test(spelled)) {
    throw malformed(state, 0, 'the XML declaration is not of the form <?xml version="1.0" encoding="UTF-8"?>.');
  }
  if (/^<\?xml[ \t\r\n]+version[ \t\r\n]*=[ \t\r\n]*["']1\.1/.test(spelled)) {
    throw malformed(
      state,
      0,
      'the file says it is XML 1.1, whose other rules for characters are not read; SVG is XML 1.0.',
    );
  }
  return end + 2;
}

/** Offset past a quoted string that starts at a place. */
function skipQuoted(state: TextOnly, offset: number): number {
  const end = state.text.indexOf(state.text[offset]!, offset + 1);
  if (end < 0) throw malformed(state, offset, 'this quote is never closed.');
  return end + 1;
}

/** Offset past the declaration of the internal subset that starts at a place; quotes may hold any sign. */
function skipMarkupDeclaration(state: TextOnly, offset: number): number {
  const { text } = state;
  let at = offset + 2;
  while (at < text.length) {
    const byte = text[at]!;
    if (byte === 0x3e) return at + 1;
    if (byte === 0x3c) throw malformed(state, at, '"<" stands inside a declaration of the document type.');
    at = byte === 0x22 || byte === 0x27 ? skipQuoted(state, at) : at + 1;
  }
  throw malformed(state, offset, 'this declaration is never closed.');
}

/** Offset past the internal subset that starts after its bracket. */
function skipSubset(state: TextOnly, offset: number, declarations: [number, number][]): number {
  const { text } = state;
  let at = skipBlanks(text, offset);
  while (at < text.length) {
    const start = at;
    if (text[at] === 0x5d) return at + 1;
    if (startsWith(text, at, '<!--')) at = scanComment(state, at);
    else if (startsWith(text, at, '<?')) {
      const end = findAscii(text, at, '?>');
      if (end < 0) throw malformed(state, at, 'this processing instruction is never closed.');
      at = end + 2;
    } else if (text[at] === 0x25) {
      at = findOrEnd(text, 0x3b, at) + 1;
      declarations.push([start, at]);
    } else if (startsWith(text, at, '<!')) {
      at = skipMarkupDeclaration(state, at);
      declarations.push([start, at]);
    } else throw malformed(state, at, 'here a declaration or the end of the document type, "]>", is expected.');
    at = skipBlanks(text, at);
  }
  throw malformed(state, offset, 'the document type is never closed.');
}

/**
 * Offset past the document type declaration that starts at a place.
 *
 * @param declarations - Gets the offsets of all declarations and parameter references of the internal subset.
 */
export function scanDoctype(state: TextOnly, offset: number, declarations: [number, number][] = []): number {
  const { text } = state;
  const nameStart = skipBlanks(text, offset + 9);
  if (nameStart === offset + 9) throw malformed(state, offset, 'a blank follows <!DOCTYPE.');
  let at = skipName(text, nameStart);
  if (at === nameStart) throw malformed(state, at, 'the document type names the root element.');
  for (;;) {
    at = skipBlanks(text, at);
    const byte = text[at];
    if (byte === 0x3e) return at + 1;
    if (byte === 0x22 || byte === 0x27) at = skipQuoted(state, at);
    else if (byte === 0x5b) at = skipSubset(state, at + 1, declarations);
    else {
      const end = skipName(text, at);
      if (end === at) throw malformed(state, at, 'the document type is not closed here as it should be.');
      at = end;
    }
  }
}

/** Offsets of the document type declaration in the prolog, or null; found before the scan, since its entities change the text. */
export function findDoctype(text: Uint8Array): readonly [number, number] | null {
  const state = { text };
  let at = 0;
  for (;;) {
    at = skipBlanks(text, at);
    if (startsWith(text, at, '<!DOCTYPE')) return [at, scanDoctype(state, at)];
    if (startsWith(text, at, '<!--')) at = scanComment(state, at);
    else if (startsWith(text, at, '<?')) {
      const end = findAscii(text, at, '?>');
      if (end < 0) return null;
      at = end + 2;
    } else return null;
  }
}
