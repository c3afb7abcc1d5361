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

/** Line and column of an offset in some text, counted from 1. Lines end with a line feed. */
export function findLineColumn(text: Uint8Array, offset: number): LineColumn {
  const at = Math.max(0, Math.min(offset, text.length));
  let line = 1;
  for (let next = text.indexOf(0x0a); next >= 0 && next < at; next = text.indexOf(0x0a, next + 1)) line += 1;
  const column = [...decodeUtf8(text.subarray(startOfLine(text, at), at))].length + 1;
  return { line, column };
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

/**
 * An error about a place in the text, with the line shown.
 *
 * @param place - Line and column in the file as delivered, where they differ from those of `text`.
 */
export function faultAt(
  code: FindingCode,
  text: Uint8Array,
  offset: number,
  fault: TextFault & { readonly place?: LineColumn },
): PinbarError {
  const place = fault.place ?? findLineColumn(text, offset);
  return new PinbarError(code, {
    message: `Line ${place.line}, column ${place.column}: ${fault.message}\n${showLine(text, offset)}`,
    remedy: fault.remedy,
    place: { line: place.line, column: place.column },
    ...(fault.data === undefined ? {} : { data: fault.data }),
  });
}
