// Stretches that touch are one.
import { describe, expect, it } from 'vitest';
import { joinStretches, stretchLength } from '../../../src/check/join-stretches.js';

describe('joinStretches', () => {
  it('joins what overlaps or lies within the tolerance, in any order', () => {
    expect(
      joinStretches(
        [
          [5, 7],
          [0, 2],
          [2.1, 3],
          [1, 1.5],
        ],
        0.1,
      ),
    ).toEqual([
      [0, 3],
      [5, 7],
    ]);
    expect(
      joinStretches(
        [
          [0, 2],
          [2.11, 3],
        ] as const,
        0.1,
      ),
    ).toHaveLength(2);
    expect(joinStretches([], 1)).toEqual([]);
  });

  it('leaves a length', () => {
    expect(
      stretchLength([
        [0, 3],
        [5, 7],
      ] as const),
    ).toBe(5);
  });
});
