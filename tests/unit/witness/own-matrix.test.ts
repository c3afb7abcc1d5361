// The second judge's own arithmetic: product, lengths, viewports.
import { describe, expect, it } from 'vitest';
import { compose, fitViewBox, readOwnLength, readViewBox } from '../../../src/witness/own-matrix.js';

describe('compose', () => {
  it('applies the second matrix first', () => {
    expect(compose([2, 0, 0, 3, 0, 0], [1, 0, 0, 1, 5, 7])).toEqual([2, 0, 0, 3, 10, 21]);
    expect(compose([1, 0, 0, 1, 5, 7], [2, 0, 0, 3, 0, 0])).toEqual([2, 0, 0, 3, 5, 7]);
    expect(compose([0, 1, -1, 0, 1, 2], [1, 2, 3, 4, 5, 6])).toEqual([-2, 1, -4, 3, -5, 7]);
  });
});

describe('fitViewBox', () => {
  // Closed forms of SVG 2, section 8.2: a box of 30 x 40 in viewports of 50 x 30 and 30 x 60.
  it('meets, slices and stretches', () => {
    const box = [0, 0, 30, 40] as const;
    const wide = { width: 50, height: 30 };
    expect(fitViewBox(box, wide, 'xMinYMid meet')).toEqual([0.75, 0, 0, 0.75, 0, 0]);
    expect(fitViewBox(box, wide, 'xMaxYMid')).toEqual([0.75, 0, 0, 0.75, 27.5, 0]);
    expect(fitViewBox(box, wide, null)[4]).toBe(13.75);
    expect(fitViewBox(box, { width: 30, height: 60 }, 'xMidYMax')[5]).toBe(20);
    expect(fitViewBox(box, { width: 30, height: 60 }, 'xMaxYMid slice')).toEqual([1.5, 0, 0, 1.5, -15, 0]);
    expect(fitViewBox([10, 20, 30, 40], wide, 'none')).toEqual([50 / 30, 0, 0, 0.75, (-10 * 50) / 30, -15]);
  });
});

describe('lengths', () => {
  it('reads units, percentages and nothing else', () => {
    expect(
      ['1in', '25.4mm', '2.54cm', '72pt', '6pc', '101.6Q', '96', '.96e2px'].map((text) => readOwnLength(text, 0)),
    ).toEqual(Array.from({ length: 8 }, () => expect.closeTo(96, 10)));
    expect(readOwnLength('25%', 80)).toBe(20);
    expect(['', 'a', '1 2', '1furlong', null].map((text) => readOwnLength(text, 0))).toEqual(Array(5).fill(null));
  });

  it('refuses a viewBox without a size', () => {
    expect(readViewBox(' 1,2  3 , 4 ')).toEqual([1, 2, 3, 4]);
    expect(['0 0 0 1', '0 0 1', '0 0 1 -1', 'a b c d', null].map(readViewBox)).toEqual(Array(5).fill(null));
  });
});
