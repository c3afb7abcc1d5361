// Circles in the graph of what draws what.
import { describe, expect, it } from 'vitest';
import { findCircles } from '../../../src/resolve/use-circles.js';

/** Targets are numbers; a use from a to b is `100 * a + b`. */
function find(edges: readonly (readonly [number, number])[]) {
  const targets = new Map(edges.map(([from, to]) => [100 * from + to, to]));
  const nodes = [...new Set(edges.flat())].sort((a, b) => a - b);
  return findCircles(nodes, (node) => [...targets.keys()].filter((use) => Math.floor(use / 100) === node), targets);
}

describe('circular uses', () => {
  it.each([
    [
      'none in a tree',
      [
        [1, 2],
        [1, 3],
        [3, 4],
      ],
      [],
    ],
    [
      'none where two ways meet',
      [
        [1, 2],
        [1, 3],
        [2, 4],
        [3, 4],
      ],
      [],
    ],
    [
      'a use of itself',
      [
        [1, 1],
        [1, 2],
      ],
      [101],
    ],
    [
      'a round of three',
      [
        [1, 2],
        [2, 3],
        [3, 1],
        [3, 4],
      ],
      [102, 203, 301],
    ],
    [
      'a round entered from outside',
      [
        [1, 2],
        [2, 3],
        [3, 4],
        [4, 2],
      ],
      [203, 304, 402],
    ],
    [
      'two rounds that share a target',
      [
        [1, 2],
        [2, 1],
        [2, 3],
        [3, 2],
      ],
      [102, 201, 203, 302],
    ],
    [
      'a way back into what is done is none',
      [
        [1, 2],
        [3, 2],
        [3, 1],
      ],
      [],
    ],
  ] as const)('%s', (_, edges, circular) => {
    expect(find(edges).circular).toEqual(circular);
  });

  it('come with an order in which each target follows what it draws', () => {
    const { order } = find([
      [1, 2],
      [1, 3],
      [2, 4],
      [3, 4],
      [4, 5],
    ]);
    expect([...order].sort()).toEqual([1, 2, 3, 4, 5]);
    for (const [from, to] of [
      [1, 2],
      [1, 3],
      [2, 4],
      [3, 4],
      [4, 5],
    ] as const) {
      expect(order.indexOf(to)).toBeLessThan(order.indexOf(from));
    }
  });
});
