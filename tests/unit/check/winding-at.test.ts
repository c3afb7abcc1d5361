// How often lines wind around a point.
import { describe, expect, it } from 'vitest';
import { windingAt } from '../../../src/check/winding-at.js';
import type { Outline } from '../../../src/geometry/outline.js';

const loop = (...points: readonly number[]): Outline => ({
  closed: true,
  points: Float64Array.from(points),
  starts: Uint32Array.of(0),
  curved: Uint8Array.of(0),
});

const SQUARE = loop(0, 0, 10, 0, 10, 10, 0, 10);

describe('windingAt', () => {
  it('is 0 outside, and counts turns with their sense', () => {
    expect(windingAt([SQUARE], 20, 5)).toBe(0);
    expect(windingAt([SQUARE], -1, 5)).toBe(0);
    expect(windingAt([SQUARE], 5, 5)).toBe(1);
    expect(windingAt([loop(0, 10, 10, 10, 10, 0, 0, 0)], 5, 5)).toBe(-1);
    expect(windingAt([SQUARE, SQUARE], 5, 5)).toBe(2);
    expect(windingAt([SQUARE, loop(2, 8, 8, 8, 8, 2, 2, 2)], 5, 5)).toBe(0);
    expect(windingAt([SQUARE, loop(2, 8, 8, 8, 8, 2, 2, 2)], 1, 5)).toBe(1);
  });

  it('counts twice in the heart of a star', () => {
    const tips = [0, 2, 4, 1, 3].flatMap((tip) => {
      const angle = (2 * Math.PI * tip) / 5;
      return [10 * Math.sin(angle), -10 * Math.cos(angle)];
    });
    expect(Math.abs(windingAt([loop(...tips)], 0, 0))).toBe(2);
    expect(Math.abs(windingAt([loop(...tips)], 0, -7))).toBe(1);
  });
});
