// The order of a pass: rules first, groups whole, nothing past what is fixed.
import { describe, expect, it } from 'vitest';
import type { WorkItem } from '../../../src/model/sequence.js';
import { countBroken, listItems, type OrderTask, planOrder, type WorkGroup } from '../../../src/sequence/plan-order.js';

const origin = { x: 0, y: 0 };

/** A dot at x; where it is fixed nothing may pass it. */
function dot(x: number, tier = 0, fixed = false): WorkItem {
  return { runs: [{ x0: x, y0: 0, x1: x, y1: 0 }], tier, fixed };
}

function group(...children: readonly (number | WorkGroup)[]): WorkGroup {
  return { children, fixed: false };
}

function order(task: Partial<OrderTask> & Pick<OrderTask, 'items' | 'root'>): readonly number[] {
  return listItems(planOrder({ before: [], origin, ...task }));
}

describe('the order of a pass', () => {
  it('goes the short way', () => {
    expect(order({ items: [dot(3), dot(1), dot(2)], root: group(0, 1, 2) })).toEqual([1, 2, 0]);
  });

  it('runs lines of a smaller tier first, however far they are', () => {
    expect(order({ items: [dot(1, 5), dot(9, 2), dot(2, 5)], root: group(0, 1, 2) })).toEqual([1, 2, 0]);
  });

  it('keeps pairs', () => {
    expect(order({ items: [dot(3), dot(9), dot(2)], root: group(0, 1, 2), before: [[1, 0]] })).toEqual([2, 1, 0]);
  });

  it('keeps groups whole, and orders what is in them', () => {
    const root = group(group(0, 1), 2);
    expect(order({ items: [dot(9), dot(8), dot(1)], root })).toEqual([2, 1, 0]);
    const arranged = planOrder({ items: [dot(9), dot(8), dot(1)], root, before: [], origin });
    expect(arranged.from).toEqual([1, 0]);
  });

  it('carries a pair over to the groups that part the two', () => {
    const root = group(group(0, 1), group(2));
    expect(order({ items: [dot(1), dot(2), dot(9)], root, before: [[2, 1]] })).toEqual([2, 1, 0]);
  });

  it('lets nothing pass what is fixed, nor move in a fixed group', () => {
    expect(order({ items: [dot(3), dot(2), dot(9, 0, true), dot(1)], root: group(0, 1, 2, 3) })).toEqual([1, 0, 2, 3]);
    const fixed = { children: [1, 0], fixed: true };
    expect(order({ items: [dot(1), dot(2), dot(0)], root: group(fixed, 2) })).toEqual([1, 0, 2]);
  });

  it('leaves to the order of the file what goes round in a circle', () => {
    const task = {
      items: [dot(3), dot(2), dot(1)],
      root: group(0, 1, 2),
      before: [
        [0, 1],
        [1, 0],
      ] as const,
    };
    const found = order(task);
    expect(found.indexOf(0)).toBeLessThan(found.indexOf(1));
    expect(countBroken({ origin, ...task }, found)).toBe(1);
  });

  it('leaves what draws nothing where it is', () => {
    const empty: WorkItem = { runs: [], tier: 0, fixed: false };
    expect(order({ items: [dot(3), empty, dot(1)], root: group(0, 1, 2) })).toEqual([2, 1, 0]);
  });
});

describe('broken rules', () => {
  it('are pairs the wrong way round and steps back to creases', () => {
    const task: OrderTask = { items: [dot(1, 1), dot(2, 0)], root: group(0, 1), before: [[1, 0]], origin };
    expect(countBroken(task, [0, 1])).toBe(2);
    expect(countBroken(task, [1, 0])).toBe(0);
  });
});
