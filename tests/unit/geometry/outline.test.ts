// What a run of points measures, against closed forms.
import { describe, expect, it } from 'vitest';
import {
  boundPoints,
  countPieces,
  FLATTEN_PX,
  type Outline,
  outlineLength,
  signedArea,
} from '../../../src/geometry/outline.js';

function outlineOf(points: readonly number[], closed: boolean): Outline {
  return { closed, points: Float64Array.from(points), starts: Uint32Array.of(0), curved: Uint8Array.of(0) };
}

/** Legs of 3 and 4, the long side of 5 from the last point to the first. */
const LEGS = [-2, 7, 1, 7, 1, 3];

/** A regular polygon, clockwise as seen. */
function polygon(corners: number, radius: number, x: number, y: number): Float64Array {
  return Float64Array.from({ length: 2 * corners }, (_, at) => {
    const angle = (2 * Math.PI * (at >> 1)) / corners;
    return at % 2 === 0 ? x + radius * Math.cos(angle) : y + radius * Math.sin(angle);
  });
}

describe('the allowance for flattening', () => {
  it('is 0.005 mm: of 96 px an inch of 25.4 mm', () => {
    expect(FLATTEN_PX).toBeCloseTo(0.48 / 25.4, 15);
  });
});

describe('the pieces of an outline', () => {
  it('are as many as points where it is closed, one less where it is open', () => {
    expect(countPieces(outlineOf(LEGS, true))).toBe(3);
    expect(countPieces(outlineOf(LEGS, false))).toBe(2);
    expect(countPieces(outlineOf([0, 0, 1, 1], true))).toBe(2);
    expect(countPieces(outlineOf([0, 0, 1, 1], false))).toBe(1);
  });

  it('are none where there is one point, or none', () => {
    for (const closed of [true, false]) {
      expect(countPieces(outlineOf([3, 4], closed))).toBe(0);
      expect(countPieces(outlineOf([], closed))).toBe(0);
    }
  });
});

describe('the length of an outline', () => {
  it('has the closing line in it where there is one', () => {
    expect(outlineLength(outlineOf(LEGS, false))).toBe(7);
    expect(outlineLength(outlineOf(LEGS, true))).toBe(12);
    expect(outlineLength(outlineOf([5, -1, 13, 14], false))).toBe(17);
    expect(outlineLength(outlineOf([5, -1, 13, 14], true))).toBe(34);
  });

  it('is zero for points without pieces', () => {
    expect(outlineLength(outlineOf([3, 4], true))).toBe(0);
    expect(outlineLength(outlineOf([3, 4], false))).toBe(0);
    expect(outlineLength(outlineOf([], false))).toBe(0);
  });

  // Chords of a circle: n of 2 r sin(pi / n).
  it('is that of the chords of a circle', () => {
    const points = [...polygon(12, 5, -3, 40)];
    expect(outlineLength(outlineOf(points, true))).toBeCloseTo(120 * Math.sin(Math.PI / 12), 12);
    expect(outlineLength(outlineOf(points, false))).toBeCloseTo(110 * Math.sin(Math.PI / 12), 12);
  });
});

describe('the area of an outline', () => {
  it('is positive clockwise as seen, negative the other way', () => {
    // A rectangle of 7 by 3 with a corner of 2 by 1 cut out: 19.
    const shape = [-4, 1, 3, 1, 3, 4, -2, 4, -2, 3, -4, 3];
    expect(signedArea(Float64Array.from(shape))).toBe(19);
    const points = Array.from({ length: 6 }, (_, at) => shape.slice(10 - 2 * at, 12 - 2 * at)).flat();
    expect(signedArea(Float64Array.from(points))).toBe(-19);
    expect(signedArea(Float64Array.from(LEGS))).toBe(-6);
  });

  // n / 2 r^2 sin(2 pi / n).
  it('is that of a regular polygon', () => {
    expect(signedArea(polygon(12, 5, -3, 40))).toBeCloseTo(150 * Math.sin(Math.PI / 6), 11);
  });

  it('cancels where the loops of an eight are of a size, and counts a stretch run twice for nothing', () => {
    expect(signedArea(Float64Array.of(0, 0, 4, 4, 4, 0, 0, 4))).toBe(0);
    expect(signedArea(Float64Array.of(1, 2, 9, 5, 1, 2, 9, 5))).toBe(0);
  });

  it('loses no digits to a far origin', () => {
    const far = 2 ** 40;
    expect(signedArea(Float64Array.of(far, -far, far + 3, -far, far + 3, 2 - far, far, 2 - far))).toBe(6);
  });

  it('is zero for fewer than three points', () => {
    expect(signedArea(Float64Array.of())).toBe(0);
    expect(signedArea(Float64Array.of(3, 4))).toBe(0);
    expect(signedArea(Float64Array.of(3, 4, 5, 9))).toBe(0);
  });
});

describe('the box around points', () => {
  it('has the least and the greatest of each', () => {
    expect(boundPoints(Float64Array.of(3, -8, -5, 2, 1, 9, 2, 0))).toEqual([-5, -8, 3, 9]);
    expect(boundPoints(Float64Array.of(-7, 4))).toEqual([-7, 4, -7, 4]);
    expect(boundPoints(Float64Array.of(-7, -4, -9, -6))).toEqual([-9, -6, -7, -4]);
  });

  it('is the box of nothing without points', () => {
    expect(boundPoints(Float64Array.of())).toEqual([Infinity, Infinity, -Infinity, -Infinity]);
  });
});
