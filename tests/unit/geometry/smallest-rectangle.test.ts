// Hulls and smallest rectangles against what trying everything finds.
import { describe, expect, it } from 'vitest';
import { convexHull, smallestRectangle } from '../../../src/geometry/smallest-rectangle.js';
import { seedChance } from './seed-chance.js';

type Point = readonly [x: number, y: number];

function pointsOf(points: Float64Array): readonly Point[] {
  return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!]);
}

/** Twice the area of a triangle, exact for small whole numbers. */
function turn([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** A point is no corner where it lies between two others or within a triangle of three others. */
function isCorner(point: Point, points: readonly Point[]): boolean {
  const others = points.filter(([x, y]) => x !== point[0] || y !== point[1]);
  const isBetween = (p: Point, q: Point): boolean =>
    turn(p, q, point) === 0 && (p[0] - point[0]) * (q[0] - point[0]) <= 0 && (p[1] - point[1]) * (q[1] - point[1]) <= 0;
  for (const p of others) {
    for (const q of others) {
      if (isBetween(p, q)) return false;
      for (const r of others) {
        const turns = [turn(p, q, point), turn(q, r, point), turn(r, p, point)];
        if (turns.every((value) => value > 0)) return false;
      }
    }
  }
  return true;
}

/** Sides of the rectangle about the points that lies along a direction. */
function sidesAlong(points: readonly Point[], dx: number, dy: number): readonly [number, number] {
  const length = Math.hypot(dx, dy);
  const [x0, y0] = points[0]!;
  const along = points.map(([x, y]) => ((x - x0) * dx + (y - y0) * dy) / length);
  const across = points.map(([x, y]) => ((y - y0) * dx - (x - x0) * dy) / length);
  return [Math.max(...along) - Math.min(...along), Math.max(...across) - Math.min(...across)];
}

/** The least area of a rectangle along any line through two of the points: the edges of the hull are among them. */
function leastArea(list: readonly Point[]): number {
  let least = Infinity;
  for (const [px, py] of list) {
    for (const [qx, qy] of list) {
      if (px === qx && py === qy) continue;
      const [along, across] = sidesAlong(list, qx - px, qy - py);
      least = Math.min(least, along * across);
    }
  }
  return least;
}

function expectLeast(points: readonly Point[], least: number): void {
  const [long, short] = smallestRectangle(Float64Array.from(points.flat()));
  expect(Math.abs(long * short - least)).toBeLessThan(1e-9 * least);
  expect(long).toBeGreaterThanOrEqual(short);
}

describe('a convex hull', () => {
  it('is the corners, one after the other, each once', () => {
    // A kite with points within it, on its edges, and one corner twice.
    const kite = Float64Array.of(0, -3, 4, 1, 0, 9, 0, 3, -4, 1, 2, -1, -2, 5, 4, 1, 1, 1);
    const hull = pointsOf(convexHull(kite));
    expect(hull).toHaveLength(4);
    const at = hull.findIndex(([x, y]) => x === 0 && y === -3);
    const around = [...hull.slice(at), ...hull.slice(0, at)];
    expect(around[0]).toEqual([0, -3]);
    expect(around[2]).toEqual([0, 9]);
    expect([around[1]![0], around[3]![0]].sort((p, q) => p - q)).toEqual([-4, 4]);
  });

  it('is the same corners as trying all triangles finds, all turning one way', () => {
    const next = seedChance(3);
    for (let round = 0; round < 60; round++) {
      // A small grid, so that many points are the same or lie on one line.
      const [width, height] = [2 + Math.floor(next() * 9), 2 + Math.floor(next() * 6)];
      const points = Float64Array.from({ length: 2 * (3 + Math.floor(next() * 12)) }, (_, i) =>
        i % 2 === 0 ? Math.floor(next() * width) - 4 : Math.floor(next() * height) - 9,
      );
      const list = pointsOf(points);
      const corners = new Set(list.filter((point) => isCorner(point, list)).map(String));
      const hull = pointsOf(convexHull(points));
      if (corners.size < 3) {
        expect(hull.length).toBeLessThan(3);
        continue;
      }
      expect(new Set(hull.map(String))).toEqual(corners);
      expect(hull).toHaveLength(corners.size);
      const turns = hull.map((point, i) =>
        Math.sign(turn(point, hull[(i + 1) % hull.length]!, hull[(i + 2) % hull.length]!)),
      );
      expect(new Set(turns).size).toBe(1);
      expect(turns[0]).not.toBe(0);
      // One turn in all: what lies on the hull is met once around.
      expect(
        hull.every((point, i) => list.every((p) => turn(point, hull[(i + 1) % hull.length]!, p) * turns[0]! >= 0)),
      ).toBe(true);
    }
  });

  it('has fewer than three corners where all points lie on a line', () => {
    expect(pointsOf(convexHull(Float64Array.of(2, 3, -4, -9, 0, -1, 1, 1)))).toEqual([
      [-4, -9],
      [2, 3],
    ]);
    expect(pointsOf(convexHull(Float64Array.of(7, 4, 7, -2, 7, 1)))).toEqual([
      [7, -2],
      [7, 4],
    ]);
    for (const points of [[], [5, 6], [5, 6, 5, 6], [5, 6, 5, 6, 5, 6, 5, 6]])
      expect(convexHull(Float64Array.from(points)).length).toBeLessThan(6);
  });

  it('leaves the points as they are', () => {
    const points = Float64Array.of(9, 1, 3, 4, 2, -7, 5, 5);
    smallestRectangle(points);
    expect([...points]).toEqual([9, 1, 3, 4, 2, -7, 5, 5]);
  });
});

describe('the smallest rectangle', () => {
  it('of a rectangle is that rectangle, however it lies', () => {
    expect(smallestRectangle(Float64Array.of(-2, 1, 5, 1, 5, 4, -2, 4))).toEqual([7, 3]);
    expect(smallestRectangle(Float64Array.of(-2, 1, 1, 1, 1, 8, -2, 8))).toEqual([7, 3]);
    // 10 along (4, 3) / 5 and 5 along (-3, 4) / 5, and their quarter turns.
    for (const [px, py, qx, qy] of [
      [8, 6, -3, 4],
      [-6, 8, -4, -3],
      [4, 3, -6, 8],
      [8, -6, 3, 4],
    ] as const) {
      const [long, short] = smallestRectangle(
        Float64Array.of(1, -2, 1 + px, py - 2, 1 + px + qx, py + qy - 2, 1 + qx, qy - 2),
      );
      expect(long).toBeCloseTo(10, 12);
      expect(short).toBeCloseTo(5, 12);
    }
  });

  it('of an obtuse triangle lies along its long side, and is as high as twice the area has it', () => {
    // (0,0) (10,0) (12,3): twice the area is 30, the long side is the root of 153.
    const [long, short] = smallestRectangle(Float64Array.of(10, 0, 12, 3, 0, 0));
    expect(long).toBeCloseTo(Math.sqrt(153), 12);
    expect(short).toBeCloseTo(30 / Math.sqrt(153), 12);
  });

  it('of a regular hexagon is as wide as its flats are apart and as long as its corners are', () => {
    const hexagon = Float64Array.from({ length: 12 }, (_, i) =>
      i % 2 === 0
        ? 3 + 2 * Math.cos(0.2 + (i / 2) * (Math.PI / 3))
        : 2 * Math.sin(0.2 + ((i - 1) / 2) * (Math.PI / 3)) - 8,
    );
    const [long, short] = smallestRectangle(hexagon);
    expect(long).toBeCloseTo(4, 12);
    expect(short).toBeCloseTo(2 * Math.sqrt(3), 12);
  });

  it('has the least area of all along two of the points', () => {
    const next = seedChance(17);
    for (let round = 0; round < 150; round++) {
      const flat = 0.05 + next();
      const angle = next() * 7;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const points = Array.from({ length: 3 + Math.floor(next() * 9) }, () => {
        const [x, y] = [next() * 100 - 30, flat * (next() * 100 - 80)];
        return [x * cos - y * sin, x * sin + y * cos] as const;
      });
      expectLeast(points, leastArea(points));
    }
  });

  it('has no less area than any of many directions gives', () => {
    const points = Float64Array.of(0, 0, 9, 2, 11, 7, 6, 12, -3, 10, -4, 3);
    const [long, short] = smallestRectangle(points);
    let least = Infinity;
    for (let step = 0; step < 20_000; step++) {
      const angle = (step / 20_000) * Math.PI;
      const [along, across] = sidesAlong(pointsOf(points), Math.cos(angle), Math.sin(angle));
      least = Math.min(least, along * across);
    }
    expect(long * short).toBeLessThanOrEqual(least);
    expect(long * short).toBeGreaterThan(least * 0.999);
  });

  it('stops at no corner that rounding has put twice', () => {
    const next = seedChance(29);
    for (let round = 0; round < 400; round++) {
      const count = 4 + Math.floor(next() * 6);
      const size = 10 ** ((round % 5) * 3 - 6);
      const points = Array.from({ length: count }, () => [size * (next() - 0.3), size * (next() - 0.8)] as const);
      // The same corner again, some units in the last place off.
      const again = points.flatMap(([x, y]) =>
        Array.from({ length: 3 }, () => [x * (1 + (next() - 0.5) * 1e-15), y * (1 + (next() - 0.5) * 1e-15)] as const),
      );
      expectLeast([...points, ...again], leastArea(points));
    }
  });

  it('is the same far away, to the last digit', () => {
    const near = [0, 0, 9, 2, 11, 7, 6, 12, -3, 10, -4, 3];
    const [dx, dy] = [2 ** 50, -(2 ** 51)];
    const far = near.map((value, i) => value + (i % 2 === 0 ? dx : dy));
    expect(smallestRectangle(Float64Array.from(far))).toEqual(smallestRectangle(Float64Array.from(near)));
  });

  it('has no short side where all points lie on a line, and none where they are one', () => {
    expect(smallestRectangle(Float64Array.of(1, 1, 4, 5))).toEqual([5, 0]);
    expect(smallestRectangle(Float64Array.of(1, 1, 7, 9, 4, 5, 1, 1))).toEqual([10, 0]);
    expect(smallestRectangle(Float64Array.of(3, -2, 3, 5, 3, 1))).toEqual([7, 0]);
    for (const points of [[], [5, 6], [5, 6, 5, 6], [5, 6, 5, 6, 5, 6, 5, 6]])
      expect(smallestRectangle(Float64Array.from(points))).toEqual([0, 0]);
  });
});

describe('rectangles that are alike', () => {
  it('of the three around a triangle, each of twice its area, it is the one with the shortest way round, however the triangle lies', () => {
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      for (const mirror of [1, -1]) {
        const corners: readonly Point[] = [
          [0, 0],
          [30 * mirror, 0],
          [0, 20],
        ];
        for (let first = 0; first < 3; first += 1) {
          const turned = [...corners.slice(first), ...corners.slice(0, first)].flatMap(([x, y]) => [
            x * cos - y * sin + 400,
            x * sin + y * cos - 50,
          ]);
          const [long, short] = smallestRectangle(Float64Array.from(turned));
          expect(long).toBeCloseTo(30, 9);
          expect(short).toBeCloseTo(20, 9);
        }
      }
    }
  });
});
