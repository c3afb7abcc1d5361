// Chance that falls the same way every time.

/** Seeded chance. */
export interface Dice {
  /** From 0 to below 1. */
  readonly next: () => number;
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <T>(items: readonly T[]) => T;
  /** True with a likelihood. */
  readonly happens: (likelihood: number) => boolean;
  /** A number between two, with at most three digits after the point. */
  readonly between: (low: number, high: number) => number;
}

/** Dice by a seed: a 32-bit state, stirred (the mulberry32 generator, public domain). */
export function createDice(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 0x1_0000_0000;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    next,
    whole,
    pick: (items) => items[whole(0, items.length - 1)]!,
    happens: (likelihood) => next() < likelihood,
    between: (low, high) => Math.round((low + next() * (high - low)) * 1000) / 1000,
  };
}
