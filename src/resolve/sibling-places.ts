// Places of elements among their siblings.
import type { ElementTable } from '../source/source.js';

/** Columns over the element table; places count from 1. */
export interface SiblingPlaces {
  readonly fromFirst: Int32Array;
  readonly fromLast: Int32Array;
}

/** Places among those siblings that `counts` keeps, told apart by `kind` (0 for all alike). */
export function findSiblingPlaces(
  elements: ElementTable,
  kind: (row: number) => number,
  counts: (row: number) => boolean,
): SiblingPlaces {
  const fromFirst = new Int32Array(elements.count);
  const fromLast = new Int32Array(elements.count);
  const groups = new Map<string, number>();
  const keyOf = (row: number): string => `${elements.parent[row]!} ${kind(row)}`;
  const counted = new Uint8Array(elements.count);
  for (let row = 0; row < elements.count; row++) {
    if (!counts(row)) continue;
    counted[row] = 1;
    const place = (groups.get(keyOf(row)) ?? 0) + 1;
    groups.set(keyOf(row), place);
    fromFirst[row] = place;
  }
  for (let row = 0; row < elements.count; row++) {
    if (counted[row] === 1) fromLast[row] = groups.get(keyOf(row))! - fromFirst[row]! + 1;
  }
  return { fromFirst, fromLast };
}

/** `an+b`: step and offset. */
export interface Series {
  readonly step: number;
  readonly offset: number;
}

/** Reads `odd`, `even`, `5`, `2n+1`, `-n + 3`; null where the text is none of these. @source CSS Syntax 3, section 6 */
export function readSeries(text: string): Series | null {
  const plain = text.trim().toLowerCase();
  if (plain === 'odd') return { step: 2, offset: 1 };
  if (plain === 'even') return { step: 2, offset: 0 };
  const match = /^(?:([+-]?\d*)n)?(?:\s*([+-])\s*)?(\d+)?$/.exec(plain);
  if (match === null || plain === '') return null;
  const [, written, sign, digits] = match;
  if (sign !== undefined && digits === undefined) return null;
  if (written !== undefined && digits !== undefined && sign === undefined) return null;
  const step = written === undefined ? 0 : readStep(written);
  const offset = digits === undefined ? 0 : Number(`${sign ?? ''}${digits}`);
  return { step, offset };
}

function readStep(written: string): number {
  if (written === '' || written === '+') return 1;
  return written === '-' ? -1 : Number(written);
}

/** Whether a place (from 1) is one of a series. */
export function isInSeries(series: Series, place: number): boolean {
  if (place < 1) return false;
  const rest = place - series.offset;
  return series.step === 0 ? rest === 0 : rest % series.step === 0 && rest / series.step >= 0;
}
