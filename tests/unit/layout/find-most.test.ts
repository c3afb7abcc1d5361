// The most copies: answers that are known, and never fewer than plain rows of rectangles.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fillRings, intersectRegions, type Region, regionArea, toGrid } from '../../../src/geometry/region.js';
import { layOut } from '../../../src/layout/lay-out.js';
import type { Layout, LayoutPiece, SheetRequest } from '../../../src/model/layout.js';
import { makePiece, makeRectangle, makeSheet } from './make-piece.js';

function layMost(piece: LayoutPiece, sheet: SheetRequest, reach = 0): Layout {
  const { layout, findings } = layOut(piece, sheet, reach);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return layout!;
}

/** Each blank where its matrix puts it. */
function placeRims({ matricesMm }: Layout, piece: LayoutPiece): readonly Region[] {
  const grid = { x: 0, y: 0, scale: 10_000 };
  return matricesMm.map(([a, b, c, d, e, f]) =>
    fillRings(
      piece.rimsMm.map((rim) =>
        toGrid(grid, Float64Array.from(rim.flatMap(([x, y]) => [a * x + c * y + e, b * x + d * y + f]))),
      ),
      'nonzero',
    ),
  );
}

/** The most that two blanks share, square mm. */
function worstOverlap(layout: Layout, piece: LayoutPiece): number {
  const rims = placeRims(layout, piece);
  let worst = 0;
  rims.forEach((one, i) => {
    for (const other of rims.slice(i + 1)) worst = Math.max(worst, regionArea(intersectRegions(one, other)) / 1e8);
  });
  return worst;
}

/** Whether all boxes of blanks lie within what is free. */
function liesWithin({ boxesMm, freeMm }: Layout): boolean {
  const within = 1e-3;
  return boxesMm.every(
    ({ x0, y0, x1, y1 }) =>
      x0 >= freeMm.x0 - within && y0 >= freeMm.y0 - within && x1 <= freeMm.x1 + within && y1 <= freeMm.y1 + within,
  );
}

function checkSound(layout: Layout, piece: LayoutPiece): void {
  expect(worstOverlap(layout, piece)).toBeLessThan(0.01);
  expect(liesWithin(layout)).toBe(true);
  expect(layout.copies).toBeGreaterThanOrEqual(layout.rectangle.copies);
}

const L_SHAPE = makePiece([
  [0, 0],
  [40, 0],
  [40, 20],
  [20, 20],
  [20, 40],
  [0, 40],
]);

describe('answers that are known', () => {
  it('squares fill a square', () => {
    const square = makeRectangle(20, 20);
    const layout = layMost(square, makeSheet(100, 100));
    expect(layout.copies).toBe(25);
    expect(layout.yieldShare).toBeCloseTo(1, 9);
    checkSound(layout, square);
  });

  it('rectangles go round a middle where rows leave room: 3 x 2 on 5 x 5', () => {
    const piece = makeRectangle(30, 20);
    const layout = layMost(piece, makeSheet(50, 50));
    // Four of six square units in twenty-five: one unit is left, which no further one can use.
    expect(layout.copies).toBe(4);
    expect(layout.rectangle.copies).toBe(2);
    expect(layout.method).toBe('blocks');
    checkSound(layout, piece);
  });

  it('L shapes of three squares interlock to full rectangles', () => {
    const layout = layMost(L_SHAPE, makeSheet(120, 80));
    expect(layout.copies).toBe(8);
    expect(layout.rectangle.copies).toBe(6);
    expect(layout.yieldShare).toBeCloseTo(1, 9);
    checkSound(layout, L_SHAPE);
  });

  it('right triangles pair up to rectangles', () => {
    const triangle = makePiece([
      [0, 0],
      [50, 0],
      [0, 30],
    ]);
    const layout = layMost(triangle, makeSheet(150, 90));
    expect(layout.copies).toBe(18);
    expect(layout.yieldShare).toBeCloseTo(1, 9);
    checkSound(layout, triangle);
  });

  it('trapezoids lie head to tail: 2 at top and 4 at bottom, pairs of 6', () => {
    const trapezoid = makePiece([
      [10, 0],
      [30, 0],
      [40, 20],
      [0, 20],
    ]);
    // A row of n takes 30 n + 10: five in 160, four rows; upright boxes: four in a row.
    const layout = layMost(trapezoid, makeSheet(160, 80, { turn: 'head-to-tail' }));
    expect(layout.copies).toBe(20);
    expect(layout.rectangle.copies).toBe(16);
    checkSound(layout, trapezoid);
  });

  it('a turn that is asked for is kept', () => {
    expect(layMost(L_SHAPE, makeSheet(120, 80, { turn: 0 })).matricesMm.every(([a]) => a === 1)).toBe(true);
    const turned = layMost(L_SHAPE, makeSheet(120, 80, { turn: 'head-to-tail' }));
    expect(turned.copies).toBe(8);
    expect(turned.matricesMm.every(([a]) => Math.abs(a) === 1)).toBe(true);
  });
});

describe('gutters', () => {
  it('are kept between outlines: L shapes with 4 mm', () => {
    const layout = layMost(L_SHAPE, makeSheet(200, 136, { gutterMm: 4 }));
    expect(layout.copies).toBeGreaterThan(layout.rectangle.copies);
    const grid = { x: 0, y: 0, scale: 10_000 };
    const rims = placeRims(layout, L_SHAPE);
    // Every corner of a blank is at least 4 mm from every edge of the others, but for rounding at corners.
    const distance = (x: number, y: number, ring: readonly { x: number; y: number }[]): number =>
      Math.min(
        ...ring.map((p, i) => {
          const q = ring[(i + 1) % ring.length]!;
          const along = ((x - p.x) * (q.x - p.x) + (y - p.y) * (q.y - p.y)) / ((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
          const t = Math.max(0, Math.min(1, along));
          return Math.hypot(x - p.x - t * (q.x - p.x), y - p.y - t * (q.y - p.y));
        }),
      );
    for (const [i, one] of rims.entries()) {
      for (const [k, other] of rims.entries()) {
        if (i === k) continue;
        for (const at of one[0]!) expect(distance(at.x, at.y, other[0]!) / grid.scale).toBeGreaterThan(3.97);
      }
    }
  });

  it('keep print out of the notch of a neighbour', () => {
    // Printed all over its box: nothing may come into the notch, though the outlines would let it.
    const printed = { ...L_SHAPE, printedMm: L_SHAPE.boxMm };
    const layout = layMost(printed, makeSheet(120, 80));
    expect(layout.copies).toBe(6);
  });
});

describe('any outline on any sheet', () => {
  const outline = fc
    .array(fc.tuple(fc.integer({ min: 20, max: 60 }), fc.integer({ min: 0, max: 100 })), { minLength: 4, maxLength: 9 })
    .map((spokes) =>
      spokes.map(([radius], i): readonly [number, number] => {
        const angle = (2 * Math.PI * i) / spokes.length;
        return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
      }),
    );

  it('has at least the copies of plain rows, apart from each other and within what is free', () => {
    fc.assert(
      fc.property(
        outline,
        fc.integer({ min: 100, max: 400 }),
        fc.integer({ min: 100, max: 400 }),
        fc.constantFrom(0, 3),
        (ring, width, height, gutterMm) => {
          const piece = makePiece(ring);
          const sheet = makeSheet(width, height, { gutterMm, gripperMm: 10 });
          const { layout } = layOut(piece, sheet, 0);
          if (layout !== null) checkSound(layout, piece);
        },
      ),
      { numRuns: 12, seed: 3 },
    );
  });
});

describe('much of anything', () => {
  it('outlines of thousands of corners are looked at more coarsely, and kept apart all the same', () => {
    const ring = Array.from({ length: 3000 }, (_, i): readonly [number, number] => {
      const angle = (2 * Math.PI * i) / 3000;
      const radius = 40 + 4 * Math.sin(40 * angle);
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
    const piece = makePiece(ring);
    checkSound(layMost(piece, makeSheet(300, 300, { turn: 0 })), piece);
  });

  it('thousands of small pieces are laid in rows', () => {
    const layout = layMost(makeRectangle(10, 10), makeSheet(700, 500));
    expect(layout.copies).toBe(3500);
  });
});
