// Groups that grow together.

/** The leader of an item's group; paths are shortened on the way. */
export function findLeader(leaders: Int32Array, item: number): number {
  let at = item;
  while (leaders[at] !== at) {
    leaders[at] = leaders[leaders[at]!]!;
    at = leaders[at]!;
  }
  return at;
}

/** Joins the groups of two items; the lower leader leads. */
export function joinGroups(leaders: Int32Array, a: number, b: number): void {
  const [p, q] = [findLeader(leaders, a), findLeader(leaders, b)];
  if (p !== q) leaders[Math.max(p, q)] = Math.min(p, q);
}

/** Groups of one item each. */
export function createGroups(count: number): Int32Array {
  const leaders = new Int32Array(count);
  for (let item = 0; item < count; item += 1) leaders[item] = item;
  return leaders;
}
