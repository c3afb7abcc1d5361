// Finds a place in sorted rows.

/** Index of the first number in an ascending list that is not below a value; the list's length where all are. */
export function firstAtLeast(sorted: ArrayLike<number>, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
