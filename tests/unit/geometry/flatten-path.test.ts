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

describe('points of curves under a matrix that tilts', () => {
  const TILTED: Matrix = [1.5, 0.7, -0.4, 2, 30, -20];

  function map([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly [number, number] {
    return [a * x + c * y + e, b * x + d * y + f];
  }

  function pairsOf({ points }: Outline): readonly (readonly [number, number])[] {
    return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!]);
  }

  it('lie evenly by the parameter of a cubic and a quadratic', () => {
    // Bernstein's form of each, at step / steps.
    const cubic = (t: number): readonly [number, number] => {
      const s = 1 - t;
      const at = (p: number, q: number, r: number, u: number): number =>
        s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * u;
      return [at(3, 10, 25, 40), at(4, -9, 30, 8)];
    };
    const quadratic = (t: number): readonly [number, number] => {
      const s = 1 - t;
      const at = (p: number, q: number, r: number): number => s * s * p + 2 * s * t * q + t * t * r;
      return [at(3, 20, 40), at(4, -30, 8)];
    };
    for (const [d, curve] of [
      ['M3 4C10 -9 25 30 40 8', cubic],
      ['M3 4Q20 -30 40 8', quadratic],
    ] as const) {
      const [outline] = flatten(d, TILTED);
      const pairs = pairsOf(outline!);
      expect(pairs.length).toBeGreaterThan(10);
      for (const [step, [x, y]] of pairs.entries()) {
        const [exactX, exactY] = map(TILTED, ...curve(step / (pairs.length - 1)));
        expect(x).toBeCloseTo(exactX, 9);
        expect(y).toBeCloseTo(exactY, 9);
      }
      // Between two points the curve leaves the chord by the tolerance at most.
      for (let step = 0; step + 1 < pairs.length; step += 1) {
        const [x, y] = map(TILTED, ...curve((step + 0.5) / (pairs.length - 1)));
        const [[px, py], [qx, qy]] = [pairs[step]!, pairs[step + 1]!];
        const away = Math.abs((qx - px) * (y - py) - (qy - py) * (x - px)) / Math.hypot(qx - px, qy - py);
        expect(away).toBeLessThanOrEqual(0.01);
      }
    }
  });

  it.each([
    ['a quarter', 'M20 0A20 11 0 0 1 0 11', [1, 0]],
    ['three quarters the other way', 'M20 0A20 11 0 1 0 0 11', [1, 0]],
    // The same ellipse turned by the angle of 3, 4, 5.
    ['a quarter of a turned one', `M12 16A20 11 ${(Math.atan2(4, 3) * 180) / Math.PI} 0 1 -8.8 6.6`, [0.6, 0.8]],
  ] as const)('lie on an ellipse, and their chords near it: %s', (_, d, [cos, sin]) => {
    const [a, b, c, e, f, g] = TILTED;
    const determinant = a * e - b * c;
    /** How far out from the middle of the ellipse a point on the artboard lies: 1 on it. */
    const ratioAt = (x: number, y: number): number => {
      const [dx, dy] = [x - f, y - g];
      const [px, py] = [(e * dx - c * dy) / determinant, (a * dy - b * dx) / determinant];
      return Math.hypot((px * cos + py * sin) / 20, (py * cos - px * sin) / 11);
    };
    const [outline] = flatten(d, TILTED);
    const pairs = pairsOf(outline!);
    for (const [x, y] of pairs) expect(ratioAt(x, y)).toBeCloseTo(1, 9);
    let farthest = 0;
    for (let step = 0; step + 1 < pairs.length; step += 1) {
      const [[px, py], [qx, qy]] = [pairs[step]!, pairs[step + 1]!];
      // From the middle of a chord straight out to the ellipse: no less than the shortest way there.
      const [x, y] = [(px + qx) / 2, (py + qy) / 2];
      const ratio = ratioAt(x, y);
      expect(ratio).toBeLessThan(1);
      const out = Math.hypot(x - f, y - g) * (1 / ratio - 1);
      // The way out slants where the ellipse is long: at most by the ratio of its axes on the artboard, which is below 3.
      farthest = Math.max(farthest, out);
    }
    expect(farthest).toBeLessThan(3 * 0.01);
    // Nor are there many times more points than that takes.
    expect(farthest).toBeGreaterThan(0.01 / 3);
  });

  it('start and end where the path says, and a curve to the start closes there', () => {
    const [outline] = flatten('M10 20H40Q50 90 10 20Z', TILTED);
    expect(outline!.closed).toBe(true);
    expect([...outline!.starts]).toEqual([0, 1]);
    expect([...outline!.curved]).toEqual([0, 1]);
    const pairs = pairsOf(outline!);
    expect(pairs[0]).toEqual(map(TILTED, 10, 20));
    expect(pairs[1]).toEqual(map(TILTED, 40, 20));
    // The last point of the curve is the first of the run, and stands once.
    expect(Math.hypot(pairs.at(-1)![0] - pairs[0]![0], pairs.at(-1)![1] - pairs[0]![1])).toBeGreaterThan(0.1);
  });

  it('a run of one line, of one curve, and of two lines say what they are', () => {
    expect(flatten('M0 0H5').map(({ starts, curved }) => [[...starts], [...curved]])).toEqual([[[0], [0]]]);
    // A curve so flat that it is one chord.
    expect(flatten('M0 0Q5 0.001 10 0').map(({ points, curved }) => [points.length, [...curved]])).toEqual([[4, [1]]]);
    expect(flatten('M0 0H5V5M7 7H9').map(({ starts }) => [...starts])).toEqual([[0, 1], [0]]);
    expect(flatten('M0 0H5H0Z').map(({ starts, points }) => [[...starts], points.length])).toEqual([[[0, 1], 4]]);
  });
});
