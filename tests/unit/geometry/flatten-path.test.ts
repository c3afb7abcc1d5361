// Flattening: closed forms, the same points both ways, tolerance kept.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { countPieces, type Outline, outlineLength, signedArea } from '../../../src/geometry/outline.js';
import { readPath } from './read-path.js';

function flatten(d: string, matrix: Matrix = IDENTITY, tolerance = 0.01): readonly Outline[] {
  return flattenPath(readPath(d), matrix, tolerance);
}

describe('runs of a path', () => {
  it('a closed square has four points and four segments, however it is closed', () => {
    for (const d of ['M0 0H10V10H0Z', 'M0 0H10V10H0V0Z', 'M0 0h10v10h-10L0 1e-9Z']) {
      const [outline, ...rest] = flatten(d);
      expect(rest).toEqual([]);
      expect(outline?.closed).toBe(true);
      expect(outline?.points).toHaveLength(8);
      expect([...(outline?.starts ?? [])]).toEqual([0, 1, 2, 3]);
      expect([...(outline?.curved ?? [])]).toEqual([0, 0, 0, 0]);
      expect(signedArea(outline!.points)).toBeCloseTo(100, 6);
      expect(outlineLength(outline!)).toBeCloseTo(40, 6);
      expect(countPieces(outline!)).toBe(4);
    }
  });

  it('an open run keeps its ends, a lone move gives none, a broken number none', () => {
    const [open] = flatten('M1 2L3 4');
    expect([open?.closed, [...open!.points], [...open!.starts]]).toEqual([false, [1, 2, 3, 4], [0]]);
    expect(countPieces(open!)).toBe(1);
    expect(flatten('M1 2')).toEqual([]);
    expect(flatten('M1 2Z')).toEqual([]);
    expect(flatten('M0 0L1e300 0', [1e300, 0, 0, 1, 0, 0])).toEqual([]);
    expect(flatten('M0 0L1 0M5 5L6 6Z').map((outline) => outline.closed)).toEqual([false, true]);
  });

  it('says which written segments are curves and where they start', () => {
    const [outline] = flatten('M0 0H10A5 5 0 0 1 10 10Q5 15 0 10Z');
    expect([...outline!.curved]).toEqual([0, 1, 1, 0]);
    const at = [...outline!.starts].map((start) => [outline!.points[2 * start], outline!.points[2 * start + 1]]);
    expect(at).toEqual([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]);
  });

  it('follows a matrix that mirrors and moves', () => {
    const [outline] = flatten('M0 0H2V1Z', [-1, 0, 0, 2, 100, 0]);
    expect([...outline!.points]).toEqual([100, 0, 98, 0, 98, 2]);
  });
});

describe('flattened curves', () => {
  it('keep a circle of radius 100 within 0.01: area and length by closed form', () => {
    const [outline] = flatten('M100 0A100 100 0 0 1-100 0A100 100 0 0 1 100 0Z');
    const count = outline!.points.length / 2;
    for (let at = 0; at < count; at += 1) {
      const next = (at + 1) % count;
      const x = (outline!.points[2 * at]! + outline!.points[2 * next]!) / 2;
      const y = (outline!.points[2 * at + 1]! + outline!.points[2 * next + 1]!) / 2;
      expect(100 - Math.hypot(x, y)).toBeLessThanOrEqual(0.01);
    }
    // A regular polygon of n corners: n sin(pi/n) in place of pi.
    expect(outlineLength(outline!)).toBeCloseTo(200 * count * Math.sin(Math.PI / count), 8);
    expect(Math.abs(signedArea(outline!.points))).toBeCloseTo(5000 * count * Math.sin((2 * Math.PI) / count), 6);
    expect(count).toBeLessThan(300);
  });

  it('a reversed curve has the very same points', () => {
    const coordinate = fc.integer({ min: -500, max: 500 });
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 8, maxLength: 8 }), (p) => {
        const [a, b, c, d, e, f, g, h] = p;
        const there = flatten(`M${a} ${b}C${c} ${d} ${e} ${f} ${g} ${h}`);
        const back = flatten(`M${g} ${h}C${e} ${f} ${c} ${d} ${a} ${b}`);
        const pairs = (list: readonly Outline[]): string[] =>
          list.flatMap(({ points }) =>
            Array.from({ length: points.length / 2 }, (_, at) => `${points[2 * at]! + 0},${points[2 * at + 1]! + 0}`),
          );
        expect(pairs(back).reverse()).toEqual(pairs(there));
      }),
    );
  });

  it('a cubic stays within the tolerance of its chords', () => {
    const [outline] = flatten('M0 0C0 100 100 100 100 0', IDENTITY, 0.05);
    const count = outline!.points.length / 2;
    const at = (t: number): [number, number] => [
      300 * t * t * (1 - t) + 100 * t * t * t,
      300 * t * (1 - t) * (1 - t) + 300 * t * t * (1 - t),
    ];
    for (let step = 0; step + 1 < count; step += 1) {
      const [x, y] = at((step + 0.5) / (count - 1));
      const [ax, ay, bx, by] = outline!.points.subarray(2 * step, 2 * step + 4);
      const distance = Math.abs((bx! - ax!) * (y - ay!) - (by! - ay!) * (x - ax!)) / Math.hypot(bx! - ax!, by! - ay!);
      expect(distance).toBeLessThanOrEqual(0.05);
    }
    expect(count).toBeGreaterThan(10);
  });
});
