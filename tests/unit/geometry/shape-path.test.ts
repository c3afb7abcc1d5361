// Basic shapes as paths.
import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { pathBox } from '../../../src/geometry/path-box.js';
import { pathLength } from '../../../src/geometry/path-length.js';
import { ellipsePath, linePath, rectPath } from '../../../src/geometry/shape-path.js';
import { printPath } from './read-path.js';

describe('a rectangle', () => {
  it('has straight corners without radii', () => {
    expect(printPath(rectPath(1, 2, 30, 40, 0, 0))).toBe('M 1 2 L 31 2 L 31 42 L 1 42 Z');
    expect(printPath(rectPath(1, 2, 30, 40, 5, 0))).toBe('M 1 2 L 31 2 L 31 42 L 1 42 Z');
  });

  // SVG 2, section 10.2: from (x + rx, y), clockwise.
  it('has quarter ellipses at its corners', () => {
    expect(printPath(rectPath(1, 2, 30, 40, 5, 6))).toBe(
      'M 6 2 L 26 2 A 5 6 0 0 1 31 8 L 31 36 A 5 6 0 0 1 26 42 L 6 42 A 5 6 0 0 1 1 36 L 1 8 A 5 6 0 0 1 6 2 Z',
    );
  });

  it('cuts radii to half its sides', () => {
    const path = rectPath(0, 0, 20, 10, 99, 99);
    expect(printPath(path)).toContain('A 10 5 0 0 1');
    expect(pathBox(path, IDENTITY)).toEqual({ x0: 0, y0: 0, x1: 20, y1: 10 });
  });

  it('is not drawn without size', () => {
    for (const [width, height] of [
      [0, 5],
      [5, 0],
      [-5, 5],
      [5, -5],
      [Number.NaN, 5],
    ] as const) {
      expect(rectPath(1, 2, width, height, 0, 0).opCount).toBe(0);
    }
  });
});

describe('an ellipse', () => {
  it('starts at three o’clock and goes through all quarters', () => {
    expect(printPath(ellipsePath(1, 2, 30, 40))).toBe(
      'M 31 2 A 30 40 0 0 1 1 42 A 30 40 0 0 1 -29 2 A 30 40 0 0 1 1 -38 A 30 40 0 0 1 31 2 Z',
    );
  });

  it('has the box and length of a circle', () => {
    const path = ellipsePath(5, 6, 10, 10);
    expect(pathBox(path, IDENTITY)).toEqual({ x0: -5, y0: -4, x1: 15, y1: 16 });
    expect(pathLength(path, IDENTITY)).toBeCloseTo(20 * Math.PI, 12);
  });

  it('is not drawn without radii', () => {
    expect(ellipsePath(1, 2, 0, 5).opCount).toBe(0);
    expect(ellipsePath(1, 2, 5, -1).opCount).toBe(0);
  });
});

it('a line is two points, even without length', () => {
  expect(printPath(linePath(1, 2, 3, 4))).toBe('M 1 2 L 3 4');
  expect(printPath(linePath(1, 2, 1, 2))).toBe('M 1 2 L 1 2');
});
