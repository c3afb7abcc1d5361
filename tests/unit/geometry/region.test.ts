// Areas on the grid, held against closed forms and against a sweep that shares nothing with the library.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closeRegion,
  cutLines,
  fillRings,
  fromGrid,
  type GridLine,
  growRegion,
  intersectRegions,
  outlineLength,
  type Region,
  regionArea,
  regionBox,
  simplifyRegion,
  splitRegion,
  splitTriangles,
  splitWithin,
  strokeLines,
  subtractRegion,
  toGrid,
  uniteRegions,
} from '../../../src/geometry/region.js';
import { areaBySweep } from './area-by-sweep.js';

const GRID = { x: 0, y: 0, scale: 1 };

function ring(...numbers: readonly number[]): GridLine {
  return toGrid(GRID, Float64Array.from(numbers));
}

function square(x: number, y: number, side: number): Region {
  return [ring(x, y, x + side, y, x + side, y + side, x, y + side)];
}

const point = fc.tuple(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 0, max: 100_000 }));
const polygon = fc
  .array(point, { minLength: 3, maxLength: 9 })
  .map((points): GridLine => ring(...points.flat()))
  .filter((line) => line.length > 2);

describe('toGrid', () => {
  it('rounds to the nearest point, drops repeats and never prints a negative zero', () => {
    const grid = { x: 10, y: 20, scale: 10 };
    expect(toGrid(grid, Float64Array.of(10.04, 20.06, 10.04, 20.06, 9.99, 19.99))).toEqual([
      { x: 0, y: 1 },
      { x: 0, y: 0 },
    ]);
    expect(fromGrid(grid, { x: 5, y: -20 })).toEqual([10.5, 18]);
    expect(toGrid({ x: 2, y: -3, scale: 100 }, Float64Array.of(2.5, -1, 7))).toEqual([{ x: 50, y: 200 }]);
  });
});

describe('fillRings', () => {
  it('fills a convex ring whichever way it runs', () => {
    expect(regionArea(fillRings([ring(0, 0, 10, 0, 10, 10, 0, 10)], 'nonzero'))).toBe(100);
    expect(regionArea(fillRings([ring(0, 10, 10, 10, 10, 0, 0, 0)], 'evenodd'))).toBe(100);
  });

  it('leaves a convex ring that runs clockwise as it is, however it lies and wherever it begins', () => {
    const turns = [0, 0.3, 1, 2, 3, 4.5, 6];
    for (const corners of [3, 4, 5, 9, 64]) {
      for (const turn of turns) {
        const points = Array.from({ length: corners }, (_, i) => {
          const angle = turn + (2 * Math.PI * i) / corners;
          return [90_000 * Math.cos(angle) - 30_000, 70_000 * Math.sin(angle) + 50_000];
        });
        const clockwise = ring(...points.flat());
        expect(fillRings([clockwise], 'nonzero')[0], `${corners} ${turn}`).toBe(clockwise);
        expect(fillRings([clockwise.toReversed()], 'evenodd')).toEqual([clockwise]);
      }
    }
    const upright = ring(10, 20, 50, 20, 50, 90, 10, 90);
    expect(fillRings([upright], 'nonzero')[0]).toBe(upright);
  });

  it('works a ring out anew that is not convex, has corners on a line, or has many of them', () => {
    const notched = ring(0, 0, 40, 0, 20, 10, 40, 40, 0, 40);
    const straight = ring(0, 0, 20, 0, 40, 0, 40, 40, 0, 40);
    const many = ring(
      ...Array.from({ length: 65 }, (_, i) => {
        const angle = (2 * Math.PI * i) / 65;
        return [90_000 * Math.cos(angle), 90_000 * Math.sin(angle)];
      }).flat(),
    );
    for (const one of [notched, straight, many]) {
      const [filled] = fillRings([one], 'nonzero');
      expect(filled).not.toBe(one);
      expect(regionArea([filled!])).toBe(regionArea([one]));
    }
    expect(fillRings([], 'nonzero')).toEqual([]);
    // Two rounds of a square turn one way too, and wind twice.
    const twice = ring(0, 0, 40, 0, 40, 40, 0, 40, 1, 1, 41, 1, 41, 41, 1, 41);
    expect(regionArea(fillRings([twice], 'nonzero'))).toBeLessThan(2000);
  });

  it('unites convex rings that run in opposite ways', () => {
    const one = fillRings([ring(0, 0, 10, 0, 10, 10, 0, 10)], 'nonzero');
    const other = fillRings([ring(5, 10, 15, 10, 15, 0, 5, 0)], 'nonzero');
    expect(regionArea(uniteRegions([one, other]))).toBe(150);
  });

  it('knows a five-pointed star for no convex ring', () => {
    // Corners of a regular pentagon, two on each time: the middle winds twice.
    const corner = (i: number): readonly number[] => [
      1000 * Math.cos((4 * Math.PI * i) / 5) + 1000,
      1000 * Math.sin((4 * Math.PI * i) / 5) + 1000,
    ];
    const star = ring(...[0, 1, 2, 3, 4].flatMap(corner));
    const solid = regionArea(fillRings([star], 'nonzero'));
    const hollow = regionArea(fillRings([star], 'evenodd'));
    // The middle is a pentagon whose corners lie at cos 72 / cos 36 of the radius.
    const inner = 1000 * (Math.cos((2 * Math.PI) / 5) / Math.cos(Math.PI / 5));
    expect(solid - hollow).toBeCloseTo(2.5 * inner * inner * Math.sin((2 * Math.PI) / 5), -4);
    expect(solid - hollow).toBeGreaterThan(300_000);
  });

  it('leaves a ring out of another under the even-odd rule alone', () => {
    const rings = [ring(0, 0, 100, 0, 100, 100, 0, 100), ring(25, 25, 75, 25, 75, 75, 25, 75)];
    expect(regionArea(fillRings(rings, 'evenodd'))).toBe(7500);
    expect(regionArea(fillRings(rings, 'nonzero'))).toBe(10_000);
  });
});

describe('with nothing', () => {
  it('regions are what they were', () => {
    const area = square(0, 0, 100);
    expect([subtractRegion(area, []), subtractRegion([], area)]).toEqual([area, []]);
    expect(subtractRegion(area, [])).toBe(area);
    expect([intersectRegions(area, []), intersectRegions([], area)]).toEqual([[], []]);
    expect(uniteRegions([[], area, []])).toBe(area);
    expect([uniteRegions([]), uniteRegions([[], []])]).toEqual([[], []]);
    expect(growRegion(area, 0)).toBe(area);
    expect([growRegion([], 5), closeRegion([], 5), simplifyRegion([], 5)]).toEqual([[], [], []]);
    expect([splitRegion([]), splitWithin([], area), splitWithin(area, [])]).toEqual([[], [], []]);
    expect([cutLines([], area, 'inside'), cutLines([], area, 'outside')]).toEqual([[], []]);
    expect(strokeLines([], false, { half: 5, cap: 'butt', join: 'miter', miterLimit: 4 })).toEqual([]);
    expect([regionArea([]), outlineLength([])]).toEqual([0, 0]);
  });
});

describe('outlineLength', () => {
  it('is the sum of all sides, the one that closes included', () => {
    expect(outlineLength([ring(-10, -20, 20, 20, 20, -20), ring(100, 7, 100, 12)])).toBe(50 + 40 + 30 + 10);
  });
});

describe('splitWithin', () => {
  it('gives the parts that hang together of what lies in both, each with its holes', () => {
    const comb = fillRings([ring(0, 0, 100, 0, 100, 100, 70, 100, 70, 30, 30, 30, 30, 100, 0, 100)], 'nonzero');
    const parts = splitWithin(comb, [ring(-50, 50, 150, 50, 150, 80, -50, 80)]);
    expect(parts.map(regionArea)).toEqual([900, 900]);
    expect(splitWithin(comb, null).map(regionArea)).toEqual([regionArea(comb)]);
    const frame = [...square(0, 0, 100), ring(20, 20, 20, 80, 80, 80, 80, 20)];
    expect(splitWithin(frame, square(-10, -10, 200)).map((part) => part.length)).toEqual([2]);
  });
});

describe('splitTriangles', () => {
  it('covers the area, holes left out, each clockwise as seen', () => {
    const frame = [...square(0, 0, 100), ring(20, 20, 20, 80, 80, 80, 80, 20)];
    const triangles = splitTriangles(frame)!;
    expect(triangles.every((triangle) => triangle.length === 3)).toBe(true);
    expect(triangles.reduce((sum, triangle) => sum + regionArea([triangle]), 0)).toBe(6400);
    for (const [a, b, c] of triangles) {
      expect((b!.x - a!.x) * (c!.y - a!.y) - (b!.y - a!.y) * (c!.x - a!.x)).toBeGreaterThan(0);
    }
  });
});

describe('simplifyRegion', () => {
  it('leaves out corners nearer to the line than a distance, and rings of which nothing is left', () => {
    const bulged = ring(0, 0, 50, -3, 100, 0, 100, 100, 0, 100);
    expect(simplifyRegion([bulged], 4)[0]).toHaveLength(4);
    expect(simplifyRegion([bulged], 2)[0]).toHaveLength(5);
    expect(simplifyRegion([bulged, ring(0, 0, 50, 1, 100, 0, 50, -1)], 4)).toHaveLength(1);
  });
});

describe('closeRegion', () => {
  it('fills what is narrower than twice the distance, and nothing wider', () => {
    const slit = (width: number): Region => [
      ring(0, 0, 1000, 0, 1000, 1000, 500 + width, 1000, 500 + width, 400, 500, 400, 500, 1000, 0, 1000),
    ];
    expect(regionArea(closeRegion(slit(18), 10))).toBe(1_000_000);
    expect(regionArea(closeRegion(slit(22), 10))).toBe(1_000_000 - 22 * 600);
  });
});

describe('growRegion', () => {
  it('grows a square by its sides and four quarter circles', () => {
    const grown = growRegion(square(0, 0, 100_000), 30_000);
    const exact = 100_000 ** 2 + 4 * 100_000 * 30_000 + Math.PI * 30_000 ** 2;
    expect(regionArea(grown)).toBeLessThanOrEqual(exact);
    // Round corners stay within 10 units of the circle: less than a ring of that width.
    expect(exact - regionArea(grown)).toBeLessThan(2 * Math.PI * 30_000 * 10);
    expect(regionBox(grown)).toEqual({ x0: -30_000, y0: -30_000, x1: 130_000, y1: 130_000 });
  });

  it('shrinks a square to a smaller one, and a thin one to nothing', () => {
    expect(regionArea(growRegion(square(0, 0, 100_000), -30_000))).toBe(40_000 ** 2);
    expect(growRegion(square(0, 0, 100), -51)).toEqual([]);
  });
});

describe('strokeLines', () => {
  const pen = { half: 1000, cap: 'butt', join: 'miter', miterLimit: 4 } as const;
  const line = [ring(0, 0, 50_000, 0)];

  it('covers length times width, with a half circle or a half square at each end', () => {
    expect(regionArea(strokeLines(line, false, pen))).toBe(50_000 * 2000);
    expect(regionArea(strokeLines(line, false, { ...pen, cap: 'square' }))).toBe(52_000 * 2000);
    const round = regionArea(strokeLines(line, false, { ...pen, cap: 'round' }));
    expect(Math.abs(round - (50_000 * 2000 + Math.PI * 1000 ** 2))).toBeLessThan(2 * Math.PI * 1000 * 10);
  });

  it('covers a frame along a closed line', () => {
    const frame = strokeLines(square(0, 0, 50_000), true, pen);
    expect(regionArea(frame)).toBe(52_000 ** 2 - 48_000 ** 2);
  });

  it('covers nothing without a width', () => {
    expect(strokeLines(line, false, { ...pen, half: 0 })).toEqual([]);
  });
});

describe('cutLines', () => {
  it('parts a line where it enters and leaves an area', () => {
    const lines = [ring(-50, 5, 150, 5)];
    const inside = cutLines(lines, square(0, 0, 100), 'inside');
    const outside = cutLines(lines, square(0, 0, 100), 'outside');
    const spans = (pieces: readonly GridLine[]): readonly string[] =>
      pieces.map((piece) => [piece[0]!.x, piece.at(-1)!.x].sort((a, b) => a - b).join(' to ')).sort();
    expect(spans(inside)).toEqual(['0 to 100']);
    expect(spans(outside)).toEqual(['-50 to 0', '100 to 150']);
  });

  it('leaves all of a line outside of nothing', () => {
    const lines = [ring(0, 0, 10, 0)];
    expect(cutLines(lines, [], 'outside')).toBe(lines);
    expect(cutLines(lines, [], 'inside')).toEqual([]);
  });
});

describe('splitRegion', () => {
  it('gives each part that hangs together, islands in holes too', () => {
    const rings = [...square(0, 0, 100), ring(20, 20, 80, 20, 80, 80, 20, 80), ring(40, 40, 60, 40, 60, 60, 40, 60)];
    const parts = splitRegion(fillRings([...rings, ...square(200, 0, 10)], 'evenodd'));
    expect(parts.map(regionArea).sort((a, b) => a - b)).toEqual([100, 400, 10_000 - 3600]);
  });
});

describe('against a sweep that counts windings', () => {
  const close = (got: number, exact: number, corners: number): void => {
    // Crossings are rounded to whole units; for each corner that may cost a hundredth of the longest side that fits in.
    expect(Math.abs(got - exact)).toBeLessThan(corners * 1_420);
  };

  it('unites, cuts out and intersects random polygons', () => {
    fc.assert(
      fc.property(polygon, polygon, (a, b) => {
        const [one, other] = [fillRings([a], 'nonzero'), fillRings([b], 'evenodd')];
        const inOne = (windings: readonly number[]): boolean => windings[0] !== 0;
        const inOther = (windings: readonly number[]): boolean => windings[1]! % 2 !== 0;
        const exact = (holds: (windings: readonly number[]) => boolean): number => areaBySweep([a, b], holds);
        close(regionArea(one), exact(inOne), 80);
        close(regionArea(other), exact(inOther), 80);
        close(
          regionArea(uniteRegions([one, other])),
          exact((w) => inOne(w) || inOther(w)),
          160,
        );
        close(
          regionArea(intersectRegions(one, other)),
          exact((w) => inOne(w) && inOther(w)),
          160,
        );
        close(
          regionArea(subtractRegion(one, other)),
          exact((w) => inOne(w) && !inOther(w)),
          160,
        );
      }),
      { numRuns: 1000, seed: 11 },
    );
  });
});
