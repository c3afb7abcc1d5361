// What lies within what.
import { describe, expect, it } from 'vitest';
import type { Outline } from '../../../src/geometry/outline.js';
import { findNesting } from '../../../src/sequence/find-nesting.js';

function outline(closed: boolean, ...points: readonly number[]): Outline {
  return { closed, points: Float64Array.from(points), starts: new Uint32Array(), curved: new Uint8Array() };
}

function square(x: number, y: number, size: number): Outline {
  return outline(true, x, y, x + size, y, x + size, y + size, x, y + size);
}

describe('lines within outlines', () => {
  it('come before the nearest outline around them', () => {
    const nested = findNesting([[square(0, 0, 100)], [square(20, 20, 30)], [square(10, 10, 60)]]);
    expect(nested).toEqual([
      [1, 2],
      [2, 0],
    ]);
  });

  it('may be open, and may start on the rim', () => {
    expect(findNesting([[square(0, 0, 100)], [outline(false, 0, 50, 30, 50)]])).toEqual([[1, 0]]);
    expect(findNesting([[square(0, 0, 100)], [outline(false, 0, 50, -30, 50)]])).toEqual([]);
  });

  it('may have an outline of several lines around them', () => {
    const sides = [
      [outline(false, 0, 0, 100, 0)],
      [outline(false, 100, 100, 100, 0)],
      [outline(false, 100, 100, 0, 100, 0, 0)],
    ];
    expect(findNesting([...sides, [square(40, 40, 10)]])).toEqual([
      [3, 0],
      [3, 1],
      [3, 2],
    ]);
  });

  it('are not within themselves, nor within an outline drawn twice', () => {
    expect(findNesting([[square(0, 0, 100), square(10, 10, 10)]])).toEqual([]);
    expect(findNesting([[square(0, 0, 100)], [square(0, 0, 100)]])).toEqual([]);
  });
});
