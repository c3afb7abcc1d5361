// The text as it came, before its entities were written out.
import type { Expansion } from './source.js';

/** The delivered text, and what was written out in it. */
export interface Delivered {
  readonly text: Uint8Array;
  readonly expansions: readonly Expansion[];
}

/** Offset in the delivered text of an offset in the written-out text; inside a written-out entity: of its reference. */
export function deliveredOffset(expansions: readonly Expansion[], offset: number): number {
  let shift = 0;
  for (const { start, end, referenceLength } of expansions) {
    if (start >= offset) break;
    if (offset < end) return start + shift;
    shift += referenceLength - (end - start);
  }
  return offset + shift;
}
