// Short and long stretches are sorted alike, and equal items keep their order.
import { describe, expect, it } from 'vitest';
import { sortFew } from '../../../src/geometry/sort-few.js';
import { seedChance } from './seed-chance.js';

/** By tens alone, so that there are equal items that can be told apart. */
function byTens(a: number, b: number): number {
  return Math.floor(a / 10) - Math.floor(b / 10);
}

describe('sortFew', () => {
  it.each([0, 1, 2, 3, 11, 12, 13, 14, 100])(
    'sorts a stretch of %d as the engine does, and leaves what lies around it',
    (count) => {
      const chance = seedChance(count);
      for (let round = 0; round < 20; round += 1) {
        const stretch = Array.from({ length: count }, () => Math.floor(chance() * 60));
        const list = [99, 98, ...stretch, 1, 0];
        const expected = [99, 98, ...stretch.toSorted(byTens), 1, 0];
        sortFew(list, 2, 2 + count, byTens);
        expect(list).toEqual(expected);
        const column = Uint32Array.from([99, 98, ...stretch, 1, 0]);
        sortFew(column, 2, 2 + count, byTens);
        expect([...column]).toEqual(expected);
      }
    },
  );
});
