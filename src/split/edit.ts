// Small changes to the source's bytes that a sheet makes on its way out.

/** Bytes from `start` to `end` of the source are written as `replacement`. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly replacement: string;
}

/** Edits in order of place; an edit inside a larger removal is dropped, since its bytes are gone. */
export function orderEdits(edits: readonly Edit[]): readonly Edit[] {
  const sorted = [...edits].sort((a, b) => a.start - b.start || b.end - a.end);
  const kept: Edit[] = [];
  let reach = -1;
  for (const edit of sorted) {
    if (edit.start < reach) continue;
    kept.push(edit);
    reach = Math.max(reach, edit.end);
  }
  return kept;
}

/** Index of the first edit that starts at or after an offset. */
export function firstEditFrom(edits: readonly Edit[], offset: number): number {
  let low = 0;
  let high = edits.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (edits[middle]!.start < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}
