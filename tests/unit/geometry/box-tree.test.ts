// The tree of boxes finds what looking at all boxes finds.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createBoxTree } from '../../../src/geometry/box-tree.js';

type Corners = readonly [number, number, number, number];

function find(boxes: readonly Corners[], [x0, y0, x1, y1]: Corners, below: number): readonly number[] {
  const found: number[] = [];
  createBoxTree(Float64Array.from(boxes.flat())).search({ x0, y0, x1, y1 }, below, (item) => {
    found.push(item);
    return false;
  });
  return found.sort((a, b) => a - b);
}

describe('createBoxTree', () => {
  it('finds all boxes that meet, up to a number', () => {
    const corner = fc.integer({ min: -20, max: 20 });
    const box = fc.tuple(corner, corner, corner, corner);
    fc.assert(
      fc.property(fc.array(box, { maxLength: 150 }), box, fc.nat(160), (boxes, asked, below) => {
        const expected = boxes.flatMap(([x0, y0, x1, y1], i) => {
          const isEmpty = x0 > x1 || y0 > y1;
          const meets = x0 <= asked[2] && x1 >= asked[0] && y0 <= asked[3] && y1 >= asked[1];
          return !isEmpty && meets && i < below ? [i] : [];
        });
        expect(find(boxes, asked, below)).toEqual(expected);
      }),
    );
  });

  it('ends when enough was seen', () => {
    const boxes = Float64Array.from(Array.from({ length: 100 }, () => [0, 0, 1, 1]).flat());
    let seen = 0;
    const ended = createBoxTree(boxes).search({ x0: 0, y0: 0, x1: 1, y1: 1 }, 100, () => {
      seen += 1;
      return seen === 3;
    });
    expect([ended, seen]).toEqual([true, 3]);
  });

  it('finds nothing among nothing', () => {
    expect(find([], [0, 0, 1, 1], 9)).toEqual([]);
    expect(find([[1, 1, 0, 0]], [0, 0, 1, 1], 9)).toEqual([]);
  });
});
