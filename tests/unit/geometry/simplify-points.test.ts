// Points that a run needs, against the bound that is promised and against the method written down as it was published.
import { describe, expect, it } from 'vitest';
import { markNeeded } from '../../../src/geometry/simplify-points.js';
import { seedChance } from './seed-chance.js';

type Point = readonly [x: number, y: number];

function marksOf(points: readonly number[], tolerance: number): readonly number[] {
  return [...markNeeded(Float64Array.from(points), tolerance)];
}

/** Distance of a point from a piece, by the three cases: before it, beyond it, beside it. */
function distanceFrom([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  const fromStart = Math.hypot(x - ax, y - ay);
  const fromEnd = Math.hypot(x - bx, y - by);
  const length = Math.hypot(bx - ax, by - ay);
  if (length === 0) return fromStart;
  if ((x - ax) * (bx - ax) + (y - ay) * (by - ay) <= 0) return fromStart;
  if ((x - bx) * (ax - bx) + (y - by) * (ay - by) <= 0) return fromEnd;
  return Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
}

/** The published method, by recursion: the points kept between the first and the last one. */
function keepBetween(points: readonly Point[], tolerance: number): readonly Point[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const distances = points.slice(1, -1).map((point) => distanceFrom(first, last, point));
  const most = Math.max(...distances);
  if (!(most > tolerance)) return [];
  const at = distances.indexOf(most) + 1;
  return [...keepBetween(points.slice(0, at + 1), tolerance), points[at]!, ...keepBetween(points.slice(at), tolerance)];
}

/** A walk with few sharp turns, so that many points can go. */
function walk(next: () => number): readonly Point[] {
  let [x, y, angle] = [next() * 100 - 50, next() * 20 - 90, next() * 6];
  return Array.from({ length: 2 + Math.floor(next() * 40) }, (): Point => {
    angle += next() < 0.2 ? next() * 5 - 2.5 : next() * 0.2 - 0.1;
    x += (1 + 3 * next()) * Math.cos(angle);
    y += (1 + 3 * next()) * Math.sin(angle);
    return [x, y];
  });
}

describe('the points that a run needs', () => {
  it('are its ends, whatever lies between on a line', () => {
    expect(marksOf([-3, 7, -1, 11, 0, 13, 2, 17], 1e-9)).toEqual([1, 0, 0, 1]);
    expect(marksOf([-3, 7, 2, 17], 1e-9)).toEqual([1, 1]);
    expect(marksOf([-3, 7], 1e-9)).toEqual([1]);
    expect(marksOf([], 1e-9)).toEqual([]);
  });

  it('are those farther off than the tolerance, not those just as far', () => {
    // A point 3 beside the middle of a level, an upright and a slanted piece of length 10.
    for (const points of [
      [-2, 1, 3, 4, 8, 1],
      [1, -2, -2, 3, 1, 8],
      [0, 0, 3 + 2.4, 4 - 1.8, 6, 8],
    ]) {
      expect(marksOf(points, 3 + 1e-12)).toEqual([1, 0, 1]);
      expect(marksOf(points, 3 - 1e-12)).toEqual([1, 1, 1]);
    }
    expect(marksOf([-2, 1, 3, 4, 8, 1], 3)).toEqual([1, 0, 1]);
  });

  it('are at a tolerance of nothing all that leave the line at all', () => {
    expect(marksOf([0, 0, 1, 0, 2, 1e-12, 3, 0], 0)).toEqual([1, 1, 1, 1]);
    expect(marksOf([0, 0, 1, 0, 2, 0, 3, 0], 0)).toEqual([1, 0, 0, 1]);
  });

  it('are the tips of a run that goes back on its line', () => {
    expect(marksOf([0, 0, 20, 0, 10, 0], 9.9)).toEqual([1, 1, 1]);
    expect(marksOf([0, 0, 20, 0, 10, 0], 10)).toEqual([1, 0, 1]);
    expect(marksOf([0, 0, -4, 0, 10, 0], 3)).toEqual([1, 1, 1]);
  });

  it('are counted from the one point where a run ends as it starts', () => {
    expect(marksOf([1, 2, 4, 6, 1, 2], 4.9)).toEqual([1, 1, 1]);
    expect(marksOf([1, 2, 4, 6, 1, 2], 5)).toEqual([1, 0, 1]);
    expect(marksOf([0, 0, 5, 0, 10, 0, 10, 5, 10, 10, 5, 10, 0, 10, 0, 5, 0, 0], 0.1)).toEqual([
      1, 0, 1, 0, 1, 0, 1, 0, 1,
    ]);
  });

  it('are the farthest first, and of those that are as far the first', () => {
    // The highest is kept first; from there the one before it is 5 / sqrt(31.25) = 0.894 off.
    expect(marksOf([0, 0, 2, 2, 5, 2.5, 10, 0], 0.9)).toEqual([1, 0, 1, 1]);
    expect(marksOf([0, 0, 2, 2, 5, 2.5, 10, 0], 0.89)).toEqual([1, 1, 1, 1]);
    // Both are 2 off; with the first kept, the second is 8 / sqrt(40) = 1.265 off the rest.
    expect(marksOf([0, 0, 2, 2, 6, 2, 8, 0], 1.9)).toEqual([1, 1, 0, 1]);
  });

  it('are those that the published method keeps, and leave none farther off than the tolerance', () => {
    const next = seedChance(41);
    let left = 0;
    for (let round = 0; round < 200; round++) {
      const points = walk(next);
      const tolerance = 0.05 + 2 * next() * next();
      const marks = marksOf(points.flat(), tolerance);
      const kept = points.filter((_, i) => marks[i] === 1);
      expect(kept).toEqual([points[0], ...keepBetween(points, tolerance), points.at(-1)]);
      points.forEach((point, i) => {
        if (marks[i] === 1) return;
        left += 1;
        const from = marks.lastIndexOf(1, i);
        const to = marks.indexOf(1, i);
        expect(distanceFrom(points[from]!, points[to]!, point)).toBeLessThanOrEqual(tolerance * (1 + 1e-12));
      });
    }
    expect(left).toBeGreaterThan(1000);
  });
});
