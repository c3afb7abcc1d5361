// Bounds of pieces of a stroke, against extents worked by hand: a disc mapped by (a, b, c, d) reaches as far as its rows are long.
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import {
  includeAcross,
  includeDisc,
  includePoint,
  isCovered,
  openFrame,
  type StrokeFrame,
} from '../../../src/geometry/stroke-frame.js';

/** x' = 3 x + 4 y + 100, y' = -5 x + 12 y - 1000: rows of length 5 and 13. */
const SKEW: Matrix = [3, -5, 4, 12, 100, -1000];

function boundsOf(frame: StrokeFrame): readonly number[] {
  return [...frame.bounds];
}

/** A frame that knows some bounds. */
function knowing(bounds: readonly [number, number, number, number], matrix: Matrix = SKEW, radius = 2): StrokeFrame {
  const frame = openFrame(matrix, radius);
  frame.bounds.set(bounds);
  return frame;
}

describe('an open frame', () => {
  it('has seen nothing and keeps the matrix', () => {
    const frame = openFrame(SKEW, 2);
    expect(boundsOf(frame)).toEqual([Infinity, Infinity, -Infinity, -Infinity]);
    expect([frame.a, frame.b, frame.c, frame.d, frame.e, frame.f, frame.radius]).toEqual([...SKEW, 2]);
  });

  it('knows how far a disc reaches', () => {
    const { reachX, reachY } = openFrame(SKEW, 2);
    expect([reachX, reachY]).toEqual([10, 26]);
    // The farthest of many points of the rim.
    const rim = Array.from({ length: 3600 }, (_, step) => (step * Math.PI) / 1800);
    expect(Math.max(...rim.map((t) => 6 * Math.cos(t) + 8 * Math.sin(t)))).toBeCloseTo(reachX, 4);
    expect(Math.max(...rim.map((t) => -10 * Math.cos(t) + 24 * Math.sin(t)))).toBeCloseTo(reachY, 4);
  });
});

describe('a point', () => {
  it('is taken in where the matrix has it', () => {
    const frame = openFrame(SKEW, 2);
    // (1, 2) is at (111, -981), (-3, 5) at (111, -925), (-4, -1) at (84, -992).
    includePoint(frame, 1, 2);
    expect(boundsOf(frame)).toEqual([111, -981, 111, -981]);
    includePoint(frame, -3, 5);
    expect(boundsOf(frame)).toEqual([111, -981, 111, -925]);
    includePoint(frame, -4, -1);
    expect(boundsOf(frame)).toEqual([84, -992, 111, -925]);
  });

  it('within the bounds moves none of them', () => {
    const frame = knowing([50, -1100, 150, -900]);
    includePoint(frame, 1, 2);
    expect(boundsOf(frame)).toEqual([50, -1100, 150, -900]);
  });
});

describe('a line across', () => {
  it('is as long as the stroke is wide, at right angles to the path', () => {
    const level = openFrame(IDENTITY, 2);
    includeAcross(level, 7, -3, 9, 0);
    expect(boundsOf(level)).toEqual([7, -5, 7, -1]);
    const upright = openFrame(IDENTITY, 2);
    includeAcross(upright, 7, -3, 0, -9);
    expect(boundsOf(upright)).toEqual([5, -3, 9, -3]);
    // Along (3, 4) / 5 the line runs along (-4, 3) / 5.
    for (const [dx, dy] of [
      [3, 4],
      [-6, -8],
      [0.75, 1],
    ] as const) {
      const slanted = openFrame(IDENTITY, 10);
      includeAcross(slanted, 7, -3, dx, dy);
      const found = boundsOf(slanted);
      for (const [i, bound] of [-1, -9, 15, 3].entries()) expect(found[i]).toBeCloseTo(bound, 12);
    }
  });

  it('has its ends where the matrix has them', () => {
    // At (1, 2) along (-3, 4), radius 5: from (-3, -1) to (5, 5), that is from (87, -997) to (135, -965).
    const frame = openFrame(SKEW, 5);
    includeAcross(frame, 1, 2, -3, 4);
    expect(boundsOf(frame)).toEqual([87, -997, 135, -965]);
    // Along (4, 3) from (-2, 6) to (4, -2): (118, -918) and (104, -1044).
    const other = openFrame(SKEW, 5);
    includeAcross(other, 1, 2, 4, 3);
    expect(boundsOf(other)).toEqual([104, -1044, 118, -918]);
  });

  it('moves only the bounds that it passes', () => {
    const known = [90, -1100, 120, -970] as const;
    const frame = knowing(known, SKEW, 5);
    includeAcross(frame, 1, 2, -3, 4);
    expect(boundsOf(frame)).toEqual([87, -1100, 135, -965]);
    const other = knowing([80, -990, 140, -900], SKEW, 5);
    includeAcross(other, 1, 2, -3, 4);
    expect(boundsOf(other)).toEqual([80, -997, 140, -900]);
  });
});

describe('a disc', () => {
  it('is covered where it adds nothing, up to the bounds', () => {
    // About (-2, 3), that is (106, -954), with radius 2.
    const exact = [96, -980, 116, -928] as const;
    expect(isCovered(knowing(exact), -2, 3, 1)).toBe(true);
    for (const [i, inwards] of [1, 1, -1, -1].entries()) {
      const less = exact.map((bound, at) => bound + (at === i ? inwards * 1e-9 : 0));
      expect(isCovered(knowing(less as unknown as typeof exact), -2, 3, 1), `bound ${i}`).toBe(false);
      const far = exact.map((bound, at) => bound - (at === i ? 0 : [9, 9, -9, -9][at]!));
      expect(isCovered(knowing(far as unknown as typeof exact), -2, 3, 1), `bound ${i} exact`).toBe(true);
    }
    expect(isCovered(openFrame(SKEW, 2), -2, 3, 1)).toBe(false);
  });

  it('is covered by the factor asked for', () => {
    // Three times the radius reaches from (76, -1032) to (136, -876).
    const exact = [76, -1032, 136, -876] as const;
    expect(isCovered(knowing(exact), -2, 3, 3)).toBe(true);
    for (const [i, inwards] of [1, 1, -1, -1].entries()) {
      const less = exact.map((bound, at) => bound + (at === i ? inwards * 1e-9 : 0));
      expect(isCovered(knowing(less as unknown as typeof exact), -2, 3, 3), `bound ${i}`).toBe(false);
    }
  });

  it('is taken in whole where all of it is let through', () => {
    const frame = openFrame(SKEW, 2);
    includeDisc(frame, 1, 2, () => true);
    expect(boundsOf(frame)).toEqual([101, -1007, 121, -955]);
    includeDisc(frame, 1, 2, () => true);
    expect(boundsOf(frame)).toEqual([101, -1007, 121, -955]);
    const known = knowing([100, -1010, 130, -950]);
    includeDisc(known, 1, 2, () => true);
    expect(boundsOf(known)).toEqual([100, -1010, 130, -950]);
  });

  it('is taken in not at all where nothing is let through', () => {
    const frame = openFrame(SKEW, 2);
    includeDisc(frame, 1, 2, () => false);
    expect(boundsOf(frame)).toEqual([Infinity, Infinity, -Infinity, -Infinity]);
  });

  it('is asked for the places of its rim that lie farthest, one for each bound', () => {
    // Where the rim is asked for, the bound is that of the point there: no other point of the rim lies farther.
    for (const bound of [0, 1, 2, 3]) {
      const asked: (readonly [number, number])[] = [];
      const frame = openFrame(SKEW, 2);
      includeDisc(frame, 1, 2, (dx, dy) => {
        asked.push([dx, dy]);
        return asked.length === bound + 1;
      });
      expect(asked).toHaveLength(4);
      const [dx, dy] = asked[bound]!;
      const scale = 2 / Math.hypot(dx, dy);
      const onRim = openFrame(SKEW, 2);
      includePoint(onRim, 1 + scale * dx, 2 + scale * dy);
      const found = boundsOf(frame);
      expect(found[bound]).toBeCloseTo([101, -1007, 121, -955][bound]!, 9);
      expect(onRim.bounds[bound]).toBeCloseTo([101, -1007, 121, -955][bound]!, 9);
      expect(found.filter(Number.isFinite)).toHaveLength(1);
    }
  });

  it('gives the bounds of the half that is let through', () => {
    // The half of the circle about (1, -2) that faces (2, 1) has its extreme points to the right and below, none to the left or above.
    const frame = openFrame(IDENTITY, 3);
    includeDisc(frame, 1, -2, (dx, dy) => 2 * dx + dy >= 0);
    expect(boundsOf(frame)).toEqual([Infinity, Infinity, 4, 1]);
    const turned = openFrame([0, 2, -1, 0, 10, 20], 3);
    // x' = 10 - y, y' = 20 + 2 x: what lay below lies to the left, what lay to the right below.
    includeDisc(turned, 1, -2, (dx, dy) => 2 * dx + dy >= 0);
    expect(boundsOf(turned)).toEqual([9, Infinity, -Infinity, 28]);
  });
});
