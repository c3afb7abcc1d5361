// Errors about a place in the text: line, column, the line itself and a caret.
import type { FindingCode, Json } from '../model/finding.js';
import { decodeUtf8 } from '../model/platform.js';
import { PinbarError } from '../model/trouble.js';

/** A line and a column, both from 1; columns count characters. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}

/** Characters shown on either side of a place. */
const SHOWN = 60;

/** Start of the line that holds an offset. */
function startOfLine(text: Uint8Array, offset: number): number {
  let start = offset;
  while (start > 0 && text[start - 1] !== 0x0a) start -= 1;
  return start;
}

/** Characters between two offsets of UTF-8: every byte but those that go on a sequence. */
export function countCharacters(text: Uint8Array, start: number, end: number): number {
  let count = 0;
  for (let at = start; at < end; at += 1) if ((text[at]! & 0xc0) !== 0x80) count += 1;
  return count;
}

/** Line and column of an offset in some text, counted from 1. Lines end with a line feed. */
export function findLineColumn(text: Uint8Array, offset: number): LineColumn {
  const at = Math.max(0, Math.min(offset, text.length));
  let line = 1;
  for (let next = text.indexOf(0x0a); next >= 0 && next < at; next = text.indexOf(0x0a, next + 1)) line += 1;
  return { line, column: countCharacters(text, startOfLine(text, at), at) + 1 };
}

/** The line around an offset, cut to some characters on either side, and below it a caret. */
export function showLine(text: Uint8Array, offset: number): string {
  const at = Math.max(0, Math.min(offset, text.length));
  const start = Math.max(startOfLine(text, at), at - 4 * SHOWN);
  const end = text.indexOf(0x0a, at);
  const stop = Math.min(end < 0 ? text.length : end, at + 4 * SHOWN);
  const tidy = (bytes: Uint8Array): string[] => [...decodeUtf8(bytes).replace(/[\t\r\u0000-\u001f\u007f]/g, ' ')];
  const before = tidy(text.subarray(start, at)).slice(-SHOWN);
  const after = tidy(text.subarray(at, stop)).slice(0, SHOWN);
  return `${before.join('')}${after.join('')}\n${' '.repeat(before.length)}^`;
}

/** What an error about a place says. */
export interface TextFault {
  readonly message: string;
  readonly remedy: string;
  readonly data?: { readonly [key: string]: Json };
}

/** An error about a place in the text, with the line shown. */
export function faultAt(code: FindingCode, text: Uint8Array, offset: number, fault: TextFault): PinbarError {
  const { line, column } = findLineColumn(text, offset);
  return new PinbarError(code, {
    message: `Line ${line}, column ${column}: ${fault.message}\n${showLine(text, offset)}`,
    remedy: fault.remedy,
    place: { line, column },
    ...(fault.data === undefined ? {} : { data: fault.data }),
  });
}
