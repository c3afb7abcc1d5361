// The map of whole numbers, held against the one of the language.
import { describe, expect, it } from 'vitest';
import { createNumberMap } from '../../../src/geometry/number-map.js';
import { seedChance } from './seed-chance.js';

describe('createNumberMap', () => {
  it('holds what the map of the language holds, while it grows', () => {
    const next = seedChance(5);
    const [own, other] = [createNumberMap(), new Map<number, number>()];
    for (let count = 0; count < 20_000; count += 1) {
      const key = Math.floor((next() - 0.5) * 2 ** Math.floor(next() * 54));
      const value = Math.floor(next() * 2 ** 31);
      own.set(key, value);
      other.set(key, value);
      const asked = key + Math.floor(next() * 3) - 1;
      expect(own.get(asked)).toBe(other.get(asked) ?? -1);
    }
    for (const [key, value] of other) expect(own.get(key)).toBe(value);
  });

  it('keeps the value 0 beside others, while it grows', () => {
    const map = createNumberMap();
    for (let key = -3000; key < 3000; key += 1) map.set(7919 * key, Math.abs(key) % 2);
    for (let key = -3000; key < 3000; key += 1) expect(map.get(7919 * key)).toBe(Math.abs(key) % 2);
    map.set(7919, 0);
    expect([map.get(7919), map.get(7918)]).toEqual([0, -1]);
  });

  it('tells keys apart that are a multiple of 2^32 from each other', () => {
    const map = createNumberMap();
    for (let at = -4; at <= 4; at += 1) map.set(at * 4294967296 + 7, at + 4);
    expect(Array.from({ length: 9 }, (_, at) => map.get((at - 4) * 4294967296 + 7))).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8,
    ]);
    expect(map.get(5 * 4294967296 + 7)).toBe(-1);
  });
});
