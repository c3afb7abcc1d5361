// Groups that grow, against a walk from neighbour to neighbour.
import { describe, expect, it } from 'vitest';
import { createGroups, findLeader, joinGroups } from '../../../src/geometry/union-find.js';
import { seedChance } from './seed-chance.js';

/** The lowest item that can be reached from each one. */
function walkAll(count: number, pairs: readonly (readonly [number, number])[]): readonly number[] {
  return Array.from({ length: count }, (_, item) => {
    const reached = new Set([item]);
    for (const at of reached) {
      for (const [a, b] of pairs) {
        if (a === at) reached.add(b);
        if (b === at) reached.add(a);
      }
    }
    return Math.min(...reached);
  });
}

/** How many steps lead from an item to its leader. */
function countSteps(leaders: Int32Array, item: number): number {
  let [at, steps] = [item, 0];
  while (leaders[at] !== at) [at, steps] = [leaders[at]!, steps + 1];
  return steps;
}

describe('groups', () => {
  it('begin with one item each', () => {
    expect([...createGroups(4)]).toEqual([0, 1, 2, 3]);
    expect(createGroups(0)).toHaveLength(0);
  });

  it('are led by the lower leader, whichever is named first', () => {
    const leaders = createGroups(6);
    joinGroups(leaders, 4, 2);
    expect([2, 4].map((item) => findLeader(leaders, item))).toEqual([2, 2]);
    joinGroups(leaders, 3, 5);
    joinGroups(leaders, 5, 4);
    expect([2, 3, 4, 5].map((item) => findLeader(leaders, item))).toEqual([2, 2, 2, 2]);
    joinGroups(leaders, 0, 5);
    joinGroups(leaders, 5, 0);
    expect([0, 1, 2, 3, 4, 5].map((item) => findLeader(leaders, item))).toEqual([0, 1, 0, 0, 0, 0]);
  });

  it('are those that a walk finds, after each pair that is joined', () => {
    const chance = seedChance(11);
    const count = 24;
    const leaders = createGroups(count);
    const pairs: (readonly [number, number])[] = [];
    for (let run = 0; run < 30; run += 1) {
      const pair = [Math.floor(chance() * count), Math.floor(chance() * count)] as const;
      pairs.push(pair);
      joinGroups(leaders, ...pair);
      const found = Array.from({ length: count }, (_, item) => findLeader(leaders, item));
      expect(found).toEqual(walkAll(count, pairs));
    }
  });

  it('shorten the way on each look, to one step in the end', () => {
    const leaders = Int32Array.from({ length: 33 }, (_, item) => Math.max(0, item - 1));
    let steps = countSteps(leaders, 32);
    expect(steps).toBe(32);
    for (let look = 0; look < 5; look += 1) {
      expect(findLeader(leaders, 32)).toBe(0);
      const left = countSteps(leaders, 32);
      expect(left).toBe(steps / 2);
      steps = left;
    }
    expect(steps).toBe(1);
  });
});
