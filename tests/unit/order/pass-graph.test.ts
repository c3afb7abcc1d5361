// Circles among sheets.
import { describe, expect, it } from 'vitest';
import { closeGraph, findWay, listCircles, orderSheets, type PassGraph } from '../../../src/order/pass-graph.js';

/** `ab` for an edge from a to b. */
function graph(count: number, ...edges: readonly string[]): PassGraph {
  const letters = 'abcdef'.slice(0, count).split('');
  return letters.map((from) => letters.map((to) => edges.includes(from + to)));
}

describe('the graph of sheets', () => {
  it('knows what can be reached', () => {
    expect(closeGraph(graph(3, 'ab', 'bc'))).toEqual(graph(3, 'ab', 'bc', 'ac'));
  });

  it('lists circles apart from what only leads there', () => {
    expect(listCircles(graph(4, 'ab', 'bc', 'cd'))).toEqual([]);
    expect(listCircles(graph(5, 'ab', 'bc', 'cb', 'cd', 'de', 'ed'))).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(listCircles(graph(3, 'ab', 'bc', 'ca'))).toEqual([[0, 1, 2]]);
  });

  it('finds the shortest way', () => {
    expect(findWay(graph(4, 'ab', 'bc', 'cd', 'bd'), 0, 3)).toEqual([0, 1, 3]);
    expect(findWay(graph(2, 'ab'), 1, 0)).toEqual([]);
  });

  it('orders sheets so that few shapes are in the way', () => {
    const costs = [
      [0, 1, 0],
      [9, 0, 5],
      [9, 2, 0],
    ];
    expect(orderSheets([0, 1, 2], (upper, lower) => costs[upper]![lower]!)).toEqual([0, 2, 1]);
  });
});
