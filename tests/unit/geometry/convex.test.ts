// Convex polygons: parts of an area, and their sums.
import { describe, expect, it } from 'vitest';
import { joinTriangles, sumConvex } from '../../../src/geometry/convex.js';
import { fillRings, regionArea, splitTriangles, subtractRegion, uniteRegions } from '../../../src/geometry/region.js';

const point = (x: number, y: number) => ({ x, y });
const SQUARE = [point(0, 0), point(10, 0), point(10, 10), point(0, 10)];

describe('parts of an area', () => {
  it('are two for an L, and together the L', () => {
    const l = fillRings(
      [[point(0, 0), point(40, 0), point(40, 20), point(20, 20), point(20, 40), point(0, 40)]],
      'nonzero',
    );
    const parts = joinTriangles(splitTriangles(l)!);
    expect(parts).toHaveLength(2);
    expect(parts.reduce((sum, part) => sum + regionArea([part]), 0)).toBe(1200);
    expect(regionArea(subtractRegion(l, uniteRegions(parts.map((part) => [part]))))).toBe(0);
  });

  it('are one for what is convex already', () => {
    expect(joinTriangles(splitTriangles(fillRings([SQUARE], 'nonzero'))!)).toHaveLength(1);
  });
});

describe('sums', () => {
  it('of squares are squares', () => {
    const sum = sumConvex(SQUARE, [point(1, 2), point(6, 2), point(6, 7), point(1, 7)]);
    expect(sum).toEqual([point(1, 2), point(16, 2), point(16, 17), point(1, 17)]);
  });

  it('of a square and a triangle have the edges of both: area a + b and the mixed part', () => {
    const triangle = [point(0, 0), point(6, 0), point(0, 6)];
    const sum = sumConvex(SQUARE, triangle);
    expect(sum).toHaveLength(5);
    // 100 + 18 + 10 * 6 + 10 * 6: what the square sweeps along both legs.
    expect(regionArea([sum])).toBe(238);
  });

  it('do not depend on the order, nor on where the rings start', () => {
    const turned = [...SQUARE.slice(2), ...SQUARE.slice(0, 2)];
    const triangle = [point(0, 0), point(6, 1), point(1, 6)];
    expect(regionArea([sumConvex(triangle, turned)])).toBe(regionArea([sumConvex(SQUARE, triangle)]));
  });
});
