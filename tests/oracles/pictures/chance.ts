// Chance that is the same on every run.

/** Numbers from 0 to below 1 by a seed. */
export function seedChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Some of a list, by a seed, in the order of the list. */
export function chooseSome<Item>(list: readonly Item[], count: number, seed: number): readonly Item[] {
  const chance = seedChance(seed);
  const keyed = list.map((item, at) => ({ item, at, key: chance() }));
  const chosen = keyed.sort((a, b) => a.key - b.key).slice(0, count);
  return chosen.sort((a, b) => a.at - b.at).map(({ item }) => item);
}
