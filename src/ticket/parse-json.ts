// JSON text to a value, or the place where it stops being JSON.
import type { FindingCode } from '../model/finding.js';
import { PinbarError } from '../model/trouble.js';
import { findJsonFault } from './find-json-fault.js';

const QUOTED_AT_MOST = 20;

/** What is read: its name in messages, and the code of the trouble. */
export interface JsonKind {
  readonly noun: string;
  readonly code: FindingCode;
}

function refuseJson(text: string, kind: JsonKind, cause: unknown): PinbarError {
  const at = Math.max(0, findJsonFault(text));
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  const place = { line: before.length, column: [...before.at(-1)!].length + 1 };
  const found = text
    .slice(at)
    .split(/[\r\n]/, 1)[0]!
    .slice(0, QUOTED_AT_MOST);
  const what = at >= text.length ? 'it ends too soon' : `"${found}" may not stand there`;
  return new PinbarError(
    kind.code,
    {
      message: `The ${kind.noun} is not JSON: ${what} (line ${place.line}, column ${place.column}).`,
      remedy: 'Mend the comma, quote or bracket there or just before it.',
      place,
    },
    [],
    cause,
  );
}

/**
 * Parses JSON text; a byte order mark is let be.
 *
 * @throws PinbarError of the kind's code, with line and column.
 */
export function parseJson(text: string, kind: JsonKind): unknown {
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  try {
    return JSON.parse(plain);
  } catch (error) {
    throw refuseJson(plain, kind, error);
  }
}
