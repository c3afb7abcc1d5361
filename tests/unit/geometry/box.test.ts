// Upright boxes.
import { describe, expect, it } from 'vitest';
import { containsBox, EMPTY_BOX, grow, intersect, isEmptyBox, transformBox, unite } from '../../../src/geometry/box.js';

const BOX = { x0: 1, y0: 2, x1: 3, y1: 6 };

describe('boxes', () => {
  it('unite and intersect', () => {
    const other = { x0: 2, y0: -1, x1: 9, y1: 3 };
    expect(unite(BOX, other)).toEqual({ x0: 1, y0: -1, x1: 9, y1: 6 });
    expect(unite(BOX, EMPTY_BOX)).toBe(BOX);
    expect(unite(EMPTY_BOX, BOX)).toBe(BOX);
    expect(intersect(BOX, other)).toEqual({ x0: 2, y0: 2, x1: 3, y1: 3 });
    expect(intersect(BOX, { x0: 4, y0: 0, x1: 5, y1: 9 })).toBe(EMPTY_BOX);
    expect(isEmptyBox(EMPTY_BOX)).toBe(true);
    expect(isEmptyBox({ x0: 1, y0: 1, x1: 1, y1: 1 })).toBe(false);
  });

  it('grow and shrink', () => {
    expect(grow(BOX, 2)).toEqual({ x0: -1, y0: 0, x1: 5, y1: 8 });
    expect(grow(BOX, -1)).toEqual({ x0: 2, y0: 3, x1: 2, y1: 5 });
    expect(grow(BOX, -2)).toBe(EMPTY_BOX);
    expect(grow(EMPTY_BOX, 5)).toBe(EMPTY_BOX);
  });

  it('are mapped by their corners', () => {
    expect(transformBox([0, 1, -1, 0, 10, 20], BOX)).toEqual({ x0: 4, y0: 21, x1: 8, y1: 23 });
    expect(transformBox([1, 0, 1, 1, 0, 0], BOX)).toEqual({ x0: 3, y0: 2, x1: 9, y1: 6 });
    expect(transformBox([-1, 0, 0, -1, 0, 0], BOX)).toEqual({ x0: -3, y0: -6, x1: -1, y1: -2 });
    expect(transformBox([2, 0, 0, 2, 0, 0], EMPTY_BOX)).toBe(EMPTY_BOX);
  });

  it('hold each other', () => {
    expect(containsBox(BOX, BOX)).toBe(true);
    expect(containsBox(BOX, EMPTY_BOX)).toBe(true);
    expect(containsBox(EMPTY_BOX, BOX)).toBe(false);
    for (const [side, step] of [
      ['x0', -0.1],
      ['y0', -0.1],
      ['x1', 0.1],
      ['y1', 0.1],
    ] as const) {
      expect(containsBox(BOX, { ...BOX, [side]: BOX[side] + step })).toBe(false);
      expect(containsBox(BOX, { ...BOX, [side]: BOX[side] - step })).toBe(true);
    }
  });
});
