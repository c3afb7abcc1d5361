// What a reading of a file throws, as plain data.
import { decodeUtf8, encodeUtf8 } from '../../../src/model/platform.js';
import { PinbarError } from '../../../src/model/trouble.js';
import { readSource } from '../../../src/source/read-source.js';
import type { Limits, Source } from '../../../src/source/source.js';

/** The error that pinbar throws; anything else is thrown on, and nothing is an error of the test. */
export function catchFault(run: () => unknown): PinbarError {
  try {
    run();
  } catch (error) {
    if (error instanceof PinbarError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

/** Code, line and column of the error, and the line and the caret it shows. */
export function describeFault(run: () => unknown): {
  readonly code: string;
  readonly line: number | undefined;
  readonly column: number | undefined;
  readonly shown: string | undefined;
  readonly caret: string | undefined;
} {
  const { code, message, findings } = catchFault(run);
  const { line, column } = findings.at(-1)?.place ?? {};
  const [, shown, caret] = message.split('\n');
  return { code, line, column, shown, caret };
}

/** A source of some text. */
export function readText(text: string, limits: Partial<Limits> = {}): Source {
  return readSource(encodeUtf8(text), { limits });
}

/** A source of what stands inside an svg element. */
export function readInside(inside: string): Source {
  return readText(`<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`);
}

/** The bytes between two offsets, as text. */
export function slice(text: Uint8Array, start: number, end: number): string {
  return decodeUtf8(text.subarray(start, end));
}
