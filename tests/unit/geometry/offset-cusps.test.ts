// Places of a given radius of curvature against closed forms and a fine comb.
import { describe, expect, it } from 'vitest';
import { findOffsetCusps } from '../../../src/geometry/offset-cusps.js';
import { seedChance } from './seed-chance.js';

const STEPS = 4000;

/** Radius of curvature at a parameter, by the derivatives as printed in textbooks. */
function radiusAt(points: Float64Array, t: number): number {
  const s = 1 - t;
  const [first, second] = [0, 1].map((axis) => {
    const [p0 = 0, p1 = 0, p2 = 0, p3 = 0] = [0, 2, 4, 6].map((at) => points[at + axis]!);
    const velocity = 3 * s * s * (p1 - p0) + 6 * s * t * (p2 - p1) + 3 * t * t * (p3 - p2);
    return [velocity, 6 * s * (p2 - 2 * p1 + p0) + 6 * t * (p3 - 2 * p2 + p1)] as const;
  }) as [readonly [number, number], readonly [number, number]];
  const speed = Math.hypot(first[0], second[0]);
  return (speed * speed * speed) / Math.abs(first[0] * second[1] - second[0] * first[1]);
}

/** Between which steps the radius passes the one asked for. */
function combPlaces(points: Float64Array, radius: number): readonly number[] {
  const places: number[] = [];
  let before = radiusAt(points, 0) - radius;
  for (let i = 1; i <= STEPS; i++) {
    const here = radiusAt(points, i / STEPS) - radius;
    if (before * here < 0) places.push((i - 0.5) / STEPS);
    before = here;
  }
  return places;
}

/** Starts of stretches are told besides. */
function isStart(t: number): boolean {
  return Number.isInteger(t * 16);
}

/** y = x x from -2 to 2, raised to a cubic; parameter t is (x + 2) / 4. */
const PARABOLA = Float64Array.of(-2, 4, -2 / 3, -4 / 3, 2 / 3, -4 / 3, 2, 4);

describe('places of a given curvature', () => {
  it('on a parabola are where its formula says', () => {
    // Radius of y = x x: (1 + 4 x x)^(3/2) / 2.
    const x = Math.sqrt((Math.cbrt(4) - 1) / 4);
    const found = findOffsetCusps(PARABOLA, 0, 1).filter((t) => !isStart(t));
    expect(found.map((t) => 4 * t - 2).sort((a, b) => a - b)).toEqual([expect.closeTo(-x, 9), expect.closeTo(x, 9)]);
  });

  it('are none where the curve bends less, or not at all', () => {
    expect(findOffsetCusps(PARABOLA, 0, 0.2)).toEqual([]);
    expect(findOffsetCusps(Float64Array.of(0, 0, 1, 1, 2, 2, 3, 3), 0, 100)).toEqual([]);
    expect(findOffsetCusps(Float64Array.of(5, 5, 5, 5, 5, 5, 5, 5), 0, 1)).toEqual([]);
    expect(findOffsetCusps(new Float64Array(8).fill(Number.NaN), 0, 1)).toEqual([]);
  });

  it('are found from the coordinate asked for, at any size', () => {
    const plain = findOffsetCusps(PARABOLA, 0, 1);
    const moved = Float64Array.from([9, 9, 9, ...[...PARABOLA].map((value) => value * 1000 + 7)]);
    const found = findOffsetCusps(moved, 3, 1000);
    expect(found.length).toBe(plain.length);
    found.forEach((t, i) => {
      expect(t).toBeCloseTo(plain[i]!, 9);
    });
  });

  it('are all that a comb finds, and all have the radius', () => {
    const next = seedChance(11);
    let places = 0;
    for (let round = 0; round < 60; round++) {
      const points = Float64Array.from({ length: 8 }, () => next() * 10 - 5);
      const radius = 0.1 + 3 * next() * next();
      const found = findOffsetCusps(points, 0, radius);
      for (const place of combPlaces(points, radius)) {
        places += 1;
        expect(Math.min(...found.map((t) => Math.abs(t - place)))).toBeLessThan(1 / STEPS);
      }
      for (const t of found.filter((one) => !isStart(one))) {
        expect(t).toBeGreaterThan(0);
        expect(t).toBeLessThan(1);
        expect(Math.abs(radiusAt(points, t) - radius)).toBeLessThan(1e-5 * (1 + radius));
      }
    }
    expect(places).toBeGreaterThan(60);
  });

  it('cost little: few stretches of a gentle curve are looked at closely', () => {
    // Only the four stretches about the vertex bend as tightly as a radius of 0.6.
    expect(findOffsetCusps(PARABOLA, 0, 0.6).filter(isStart).length).toBeLessThanOrEqual(4);
    expect(findOffsetCusps(PARABOLA, 0, 1e6).filter(isStart)).toHaveLength(16);
  });
});
