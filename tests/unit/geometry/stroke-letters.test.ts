// Letters stay in their cell and are open strokes.
import { describe, expect, it } from 'vitest';
import { drawLetters, measureLetters } from '../../../src/geometry/stroke-letters.js';

const ALL = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-./()>';

describe('drawLetters', () => {
  it.each([...ALL])('draws %s inside its cell', (letter) => {
    const strokes = drawLetters(letter, 10, 20, 6);
    expect(strokes.length).toBeGreaterThan(0);
    for (const [x, y] of strokes.flat()) {
      expect(x).toBeGreaterThanOrEqual(10);
      expect(x).toBeLessThanOrEqual(14);
      expect(y).toBeGreaterThanOrEqual(20);
      expect(y).toBeLessThanOrEqual(26);
    }
  });

  it('draws every letter differently', () => {
    const shapes = [...ALL].map((letter) => JSON.stringify(drawLetters(letter, 0, 0, 6)));
    expect(new Set(shapes).size).toBe(ALL.length);
  });

  it('is as wide as measured', () => {
    const xs = drawLetters('MMM', 0, 0, 3).flatMap((stroke) => stroke.map(([x]) => x));
    expect(Math.max(...xs)).toBeCloseTo(measureLetters('MMM', 3), 12);
  });
});
