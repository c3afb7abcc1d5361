// Sorts lists that are mostly short: a call of the engine's own sort costs more than to sort four numbers.

/** Up to this many are sorted one by one. */
const FEW = 12;

/**
 * Sorts a stretch of a list in place; equal items keep their order.
 *
 * @param from - Place of its first item.
 * @param past - Place after its last one.
 */
export function sortFew(
  list: number[] | Uint32Array,
  from: number,
  past: number,
  compare: (a: number, b: number) => number,
): void {
  if (past - from > FEW) {
    const sorted = Array.from(list.slice(from, past)).sort(compare);
    for (let i = 0; i < sorted.length; i += 1) list[from + i] = sorted[i]!;
    return;
  }
  for (let i = from + 1; i < past; i += 1) {
    const item = list[i]!;
    let at = i;
    while (at > from && compare(list[at - 1]!, item) > 0) {
      list[at] = list[at - 1]!;
      at -= 1;
    }
    list[at] = item;
  }
}
