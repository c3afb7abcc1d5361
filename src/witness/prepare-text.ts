// Bounds what the XML library is given, and takes out what it reads wrongly: mark, comments, document type.
import { strictDecoder } from '../model/platform.js';

/** Largest file that the second judge reads, in bytes. */
export const WITNESS_BYTES: number = 64 * 1024 * 1024;
/** Deepest nesting that the second judge reads. */
export const WITNESS_DEPTH = 256;

/** A file as text, or why it cannot be read. */
export interface PreparedText {
  /** Without byte order mark, comments and document type; '' where `fault` is set. */
  readonly text: string;
  readonly fault: string | null;
  readonly hasDoctype: boolean;
}

const BARE_REFERENCE = /&(?!(?:amp|lt|gt|quot|apos|#[0-9]+|#x[0-9a-fA-F]+);)/;
const NUMBERED_REFERENCE = /&#(?:([0-9]+)|x([0-9a-fA-F]+));/g;
const FORBIDDEN_SIGN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/;

interface Scan {
  readonly text: string;
  readonly parts: string[];
  /** Start of what is not yet in `parts`. */
  from: number;
  at: number;
  /** The next `&` at or after what was looked at; remembered, so that the search stays linear. */
  reference: number;
  depth: number;
  hasDoctype: boolean;
  fault: string | null;
}

/** Offset past the `>` that ends a tag, minding quotes; -1 where there is none. */
function findTagEnd(text: string, start: number): number {
  let i = start;
  for (;;) {
    while (i < text.length && text[i] !== '>' && text[i] !== '"' && text[i] !== "'") i += 1;
    if (i >= text.length) return -1;
    if (text[i] === '>') return i + 1;
    const close = text.indexOf(text[i]!, i + 1);
    if (close < 0) return -1;
    i = close + 1;
  }
}

/** Offset past the `>` that ends a document type, minding quotes, comments and its bracket; -1 where there is none. */
function findDoctypeEnd(text: string, start: number): number {
  const sign = /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|"[^"]*"|'[^']*'|[[\]>]/g;
  sign.lastIndex = start;
  let inside = false;
  for (let match = sign.exec(text); match !== null; match = sign.exec(text)) {
    if (match[0] === '[') inside = true;
    else if (match[0] === ']') inside = false;
    else if (match[0] === '>' && !inside) return match.index + 1;
  }
  return -1;
}

function cut(scan: Scan, start: number, end: number): void {
  scan.parts.push(scan.text.slice(scan.from, start));
  scan.from = end;
  scan.at = end;
}

function checkReferences(scan: Scan, start: number, end: number): void {
  if (scan.reference < start) {
    const next = scan.text.indexOf('&', start);
    scan.reference = next < 0 ? scan.text.length : next;
  }
  const first = scan.reference;
  if (first >= end) return;
  const stretch = scan.text.slice(first, end);
  const bare = BARE_REFERENCE.exec(stretch);
  if (bare !== null) {
    scan.fault = `"${stretch.slice(bare.index, bare.index + 20)}" is neither a character nor one of the five known entities`;
  }
  for (const match of stretch.matchAll(NUMBERED_REFERENCE)) {
    const code = match[1] === undefined ? Number.parseInt(match[2]!, 16) : Number.parseInt(match[1], 10);
    const legal = code === 9 || code === 10 || code === 13 || (code >= 0x20 && code <= 0x10ffff);
    if (!legal || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff) {
      scan.fault = `${match[0]} names no legal character`;
    }
  }
}

function stepComment(scan: Scan, start: number): void {
  const end = scan.text.indexOf('--', start + 4);
  if (end < 0 || scan.text[end + 2] !== '>') scan.fault = 'a comment is not closed or holds "--"';
  else cut(scan, start, end + 3);
}

function stepDoctype(scan: Scan, start: number): void {
  const end = findDoctypeEnd(scan.text, start + 9);
  if (end < 0 || scan.depth > 0 || scan.hasDoctype)
    scan.fault = 'the document type declaration is not closed or misplaced';
  else cut(scan, start, end);
  scan.hasDoctype = true;
}

function skipTo(scan: Scan, mark: string, start: number): void {
  const end = scan.text.indexOf(mark, start);
  if (end < 0) scan.fault = `"${mark}" is missing`;
  else scan.at = end + mark.length;
}

function stepTag(scan: Scan, start: number): void {
  const { text } = scan;
  const end = findTagEnd(text, start + 1);
  if (end < 0) {
    scan.fault = 'a tag is not closed';
    return;
  }
  if (text[start + 1] === '/') scan.depth -= 1;
  else if (text[end - 2] !== '/') scan.depth += 1;
  if (scan.depth > WITNESS_DEPTH) scan.fault = `elements are nested deeper than ${WITNESS_DEPTH}`;
  checkReferences(scan, start, end);
  scan.at = end;
}

function scanText(text: string): PreparedText {
  const scan: Scan = { text, parts: [], from: 0, at: 0, reference: -1, depth: 0, hasDoctype: false, fault: null };
  while (scan.fault === null) {
    const start = text.indexOf('<', scan.at);
    checkReferences(scan, scan.at, start < 0 ? text.length : start);
    if (start < 0) break;
    if (text.startsWith('<!--', start)) stepComment(scan, start);
    else if (text.startsWith('<![CDATA[', start)) skipTo(scan, ']]>', start + 9);
    else if (text.startsWith('<!DOCTYPE', start)) stepDoctype(scan, start);
    else if (text.startsWith('<?', start)) skipTo(scan, '?>', start + 2);
    else stepTag(scan, start);
  }
  scan.parts.push(text.slice(scan.from));
  return { text: scan.fault === null ? scan.parts.join('') : '', fault: scan.fault, hasDoctype: scan.hasDoctype };
}

/** Decodes a file and holds it to the bounds of the second judge. */
export function prepareText(bytes: Uint8Array): PreparedText {
  const refuse = (fault: string): PreparedText => ({ text: '', fault, hasDoctype: false });
  if (bytes.length > WITNESS_BYTES) {
    return refuse(`it has ${bytes.length} bytes and the second judge reads up to ${WITNESS_BYTES}`);
  }
  let text: string;
  try {
    text = strictDecoder('utf-8').decode(bytes);
  } catch {
    return refuse('its bytes are not UTF-8');
  }
  const forbidden = FORBIDDEN_SIGN.exec(text);
  if (forbidden !== null) {
    return refuse(`it holds the control character U+${forbidden[0].charCodeAt(0).toString(16).padStart(4, '0')}`);
  }
  return scanText(text);
}
