// Straight pieces against closed forms: triangles of sides 3, 4 and 5, and lines laid out along and across a slanting one.
import { describe, expect, it } from 'vitest';
import {
  crossingParameter,
  distanceToPiece,
  endsOf,
  meetAhead,
  nearestParameter,
  overlapOf,
  type PieceEnds,
  parallelDistance,
} from '../../../src/geometry/segment.js';

/** A point seen from the slanting line through (1, -2) in the direction (0.6, 0.8): so far along it, so far to its side. */
function pointFrom(along: number, aside: number): readonly [number, number] {
  return [1 + 0.6 * along - 0.8 * aside, -2 + 0.8 * along + 0.6 * aside];
}

/** A piece seen from that line. */
function pieceFrom(s0: number, h0: number, s1: number, h1: number): PieceEnds {
  return [...pointFrom(s0, h0), ...pointFrom(s1, h1)];
}

/** The same piece, drawn the other way. */
function turn([x0, y0, x1, y1]: PieceEnds): PieceEnds {
  return [x1, y1, x0, y0];
}

describe('endsOf', () => {
  it('reads the four numbers of a piece out of the column', () => {
    const column = { ends: Float64Array.of(1, 2, 3, 4, 5, -6, 7, 8, 9, 10, 11, 12) };
    expect(endsOf(column, 0)).toEqual([1, 2, 3, 4]);
    expect(endsOf(column, 1)).toEqual([5, -6, 7, 8]);
    expect(endsOf(column, 2)).toEqual([9, 10, 11, 12]);
  });
});

describe('the nearest place on a piece', () => {
  const [ax, ay] = pointFrom(5, 0);
  const [bx, by] = pointFrom(15, 0);

  it.each([
    { along: 7.5, aside: 5, share: 0.25, distance: 5 },
    { along: 12, aside: -3, share: 0.7, distance: 3 },
    { along: 10, aside: 0, share: 0.5, distance: 0 },
    // Past the ends the end is nearest: 3-4-5 again.
    { along: 18, aside: 4, share: 1, distance: 5 },
    { along: 1, aside: -3, share: 0, distance: 5 },
  ])('to a point $along along and $aside aside is at $share', ({ along, aside, share, distance }) => {
    const [x, y] = pointFrom(along, aside);
    expect(nearestParameter(ax, ay, bx, by, x, y)).toBeCloseTo(share, 12);
    expect(nearestParameter(bx, by, ax, ay, x, y)).toBeCloseTo(1 - share, 12);
    expect(distanceToPiece(ax, ay, bx, by, x, y)).toBeCloseTo(distance, 12);
  });

  it('is its start where it has no length', () => {
    expect(nearestParameter(2, 3, 2, 3, 5, 7)).toBe(0);
    expect(distanceToPiece(2, 3, 2, 3, 5, 7)).toBe(5);
  });
});

describe('crossingParameter', () => {
  // (1, 1) + 3/4 (4, 2) = (4, 2.5) = (3, 5.5) + 1/3 (3, -9).
  const first = [1, 1, 5, 3];
  const second = [3, 5.5, 6, -3.5];

  it('is the share of the first at which the lines meet', () => {
    expect(crossingParameter(first, second)).toBeCloseTo(3 / 4, 14);
    expect(crossingParameter(second, first)).toBeCloseTo(1 / 3, 14);
  });

  it('goes beyond the ends of both', () => {
    // (1, 1) + 2 (4, 2) = (9, 5), (1, 1) - 1/2 (4, 2) = (-1, 0).
    expect(crossingParameter(first, [9, 7, 9, 6])).toBe(2);
    expect(crossingParameter(first, [-1, 3, -1, 2])).toBe(-0.5);
  });

  it('is none for parallel lines, whichever way they run', () => {
    expect(crossingParameter(first, [0, 3, 6, 6])).toBeNull();
    expect(crossingParameter(first, [6, 6, 0, 3])).toBeNull();
    expect(crossingParameter(first, first)).toBeNull();
    expect(crossingParameter(first, [7, 7, 7, 7])).toBeNull();
  });
});

describe('overlapOf', () => {
  const piece: PieceEnds = [3, 2, 13, 2];

  it.each([
    { name: 'within it', other: [5, 2, 11, 2], stretch: [2, 8] },
    { name: 'past its end', other: [5, 2, 20, 2], stretch: [2, 10] },
    { name: 'past its start', other: [-4, 2, 6, 2], stretch: [0, 3] },
    { name: 'past both', other: [-4, 2, 20, 2], stretch: [0, 10] },
  ] as const)('is the stretch covered by one that lies $name', ({ other, stretch }) => {
    expect(overlapOf(piece, other, 0)).toEqual(stretch);
    expect(overlapOf(piece, turn(other), 0)).toEqual(stretch);
  });

  it('allows the tolerance itself and no more, on both sides', () => {
    for (const y of [2.5, 1.5]) {
      expect(overlapOf(piece, [5, y, 20, y], 0.5)).toEqual([2, 10]);
      expect(overlapOf(piece, [5, y, 20, y], 0.4999)).toBeNull();
    }
  });

  it('asks for the tolerance at both ends of the stretch', () => {
    // Rises by 1 in 8: at the ends of the piece it is 1 below and 1/4 above.
    const rising: PieceEnds = [-5, 0, 19, 3];
    expect(overlapOf(piece, rising, 1)).toEqual([0, 10]);
    expect(overlapOf(piece, turn(rising), 1)).toEqual([0, 10]);
    expect(overlapOf(piece, rising, 0.9999)).toBeNull();
    const mirrored: PieceEnds = [21, 0, -3, 3];
    expect(overlapOf(piece, mirrored, 1)).toEqual([0, 10]);
    expect(overlapOf(piece, mirrored, 0.9999)).toBeNull();
    // Far off beyond the ends of the piece is no matter: 1 in 8 again, 1/2 at the start of the piece, 1/4 where it ends itself.
    expect(overlapOf(piece, [-29, 6.5, 5, 2.25], 0.5)).toEqual([0, 2]);
  });

  it('is none where they only touch, stand across, or have no length', () => {
    expect(overlapOf(piece, [13, 2, 20, 2], 1)).toBeNull();
    expect(overlapOf(piece, [14, 2, 20, 2], 1)).toBeNull();
    expect(overlapOf(piece, [-4, 2, 3, 2], 1)).toBeNull();
    expect(overlapOf(piece, [-4, 2, 1, 2], 1)).toBeNull();
    expect(overlapOf(piece, [7, 1, 7, 3], 5)).toBeNull();
    expect(overlapOf(piece, [7, 2, 7, 2], 5)).toBeNull();
    expect(overlapOf([7, 2, 7, 2], piece, 5)).toBeNull();
  });

  it('is the same along a slanting piece', () => {
    const found = overlapOf(pieceFrom(0, 0, 20, 0), pieceFrom(5, 0.5, 30, -0.25), 0.51);
    expect(found![0]).toBeCloseTo(5, 12);
    expect(found![1]).toBeCloseTo(20, 12);
    expect(overlapOf(pieceFrom(0, 0, 20, 0), pieceFrom(5, 0.5, 30, -0.25), 0.49)).toBeNull();
  });
});

describe('parallelDistance', () => {
  const piece: PieceEnds = [0, 0, 8, 0];

  it('measures straight across between parallel pieces', () => {
    const slanting = parallelDistance(pieceFrom(0, 0, 20, 0), pieceFrom(25, -3, 5, -3), 0.001)!;
    expect(slanting.from).toBeCloseTo(5, 12);
    expect(slanting.to).toBeCloseTo(20, 12);
    expect(slanting.distance).toBeCloseTo(3, 12);
  });

  it('allows the slope itself and no more', () => {
    const rising: PieceEnds = [-4, 1, 12, 3];
    expect(parallelDistance(piece, rising, 0.125)).not.toBeNull();
    expect(parallelDistance(piece, turn(rising), 0.125)).not.toBeNull();
    expect(parallelDistance(piece, rising, 0.1249)).toBeNull();
    expect(parallelDistance(piece, [-4, 3, 12, 1], 0.125)).not.toBeNull();
    expect(parallelDistance(piece, [-4, 3, 12, 1], 0.1249)).toBeNull();
  });

  it('takes the foot on the other piece, not the height over the first', () => {
    // The line 3x - 4y + 20 = 0 stands 5 over (0, 0) and is 4 away from it, with the foot at (-2.4, 3.2).
    expect(parallelDistance(piece, [-8, -1, 16, 17], 0.75)).toEqual({
      from: 0,
      to: 8,
      distance: expect.closeTo(4, 12),
    });
    // Cut off at (0, 5), that end is nearest.
    expect(parallelDistance(piece, [0, 5, 16, 17], 0.75)).toEqual({ from: 0, to: 8, distance: 5 });
    // Mirrored: nearest at the far end, and below.
    expect(parallelDistance(piece, [16, 1, -8, -17], 0.75)!.distance).toBeCloseTo(4, 12);
  });

  it('measures where the stretch begins and ends, not where the piece does', () => {
    // Stands over 4 to 6 alone, 3 high at 4 and 3.5 at 6.
    expect(parallelDistance(piece, [4, 3, 6, 3.5], 0.25)).toEqual({ from: 4, to: 6, distance: 3 });
    const turned = parallelDistance(pieceFrom(0, 0, 20, 0), pieceFrom(9, 4, 4, 3), 0.21)!;
    expect(turned.from).toBeCloseTo(4, 12);
    expect(turned.to).toBeCloseTo(9, 12);
    // The end of the other is 3 over the stretch; the stretch is nearer to its line still only before that end.
    expect(turned.distance).toBeCloseTo(3, 12);
  });

  it('is nothing where they cross or touch', () => {
    expect(parallelDistance(piece, [-2, -1, 10, 2], 0.25)).toEqual({ from: 0, to: 8, distance: 0 });
    expect(parallelDistance(piece, [-2, 1, 10, -2], 0.25)).toEqual({ from: 0, to: 8, distance: 0 });
    expect(parallelDistance(piece, [3, 0, 10, 1], 0.25)).toEqual({ from: 3, to: 8, distance: 0 });
  });

  it('is none where neither passes the other', () => {
    expect(parallelDistance(piece, [8, 1, 12, 1], 1)).toBeNull();
    expect(parallelDistance(piece, [-5, 1, 0, 1], 1)).toBeNull();
    expect(parallelDistance(piece, [4, 1, 4, 3], 9)).toBeNull();
    expect(parallelDistance([4, 1, 4, 1], piece, 9)).toBeNull();
  });
});

describe('meetAhead', () => {
  const slanting = { x: 1, y: -2, dx: 0.6, dy: 0.8 };
  const level = { x: 2, y: 3, dx: 1, dy: 0 };
  const allowed = { beside: 0.5, weld: 0.25 };

  /** Holds that the slanting ray meets a piece, drawn either way, at a place seen from it. */
  function expectMeeting(piece: PieceEnds, [along, aside]: readonly [number, number], inLine: boolean): void {
    const [x, y] = pointFrom(along, aside);
    for (const drawn of [piece, turn(piece)]) {
      expect(meetAhead(slanting, drawn, allowed)).toEqual({
        along: expect.closeTo(along, 10),
        x: expect.closeTo(x, 10),
        y: expect.closeTo(y, 10),
        inLine,
      });
    }
  }

  /** Holds that a ray meets a piece, drawn either way, nowhere. */
  function expectMiss(ray: typeof level, piece: PieceEnds): void {
    expect(meetAhead(ray, piece, allowed)).toBeNull();
    expect(meetAhead(ray, turn(piece), allowed)).toBeNull();
  }

  it('meets what lies across, where it crosses', () => {
    expectMeeting(pieceFrom(10, -1, 10, 3), [10, 0], false);
    expectMeeting(pieceFrom(4, -1, 8, 3), [5, 0], false);
    expectMeeting(pieceFrom(9, -3, 3, 1), [4.5, 0], false);
    expectMeeting(pieceFrom(-3, -2, 5, 2), [1, 0], false);
  });

  it('misses what ends before the line of the ray, and what lies behind', () => {
    expectMiss(slanting, pieceFrom(10, 1, 10, 3));
    expectMiss(slanting, pieceFrom(10, -3, 10, -1));
    expectMiss(slanting, pieceFrom(-10, -1, -10, 3));
    expectMiss(slanting, pieceFrom(-8, -3, 6, 11));
    // Through the start itself, or from there on, is not ahead.
    expectMiss(level, [2, 1, 2, 9]);
    expectMiss(level, [2, 3, 9, 3]);
  });

  it('meets an end that only touches, from either side', () => {
    for (const y of [9, -9]) {
      const ahead = { along: 5, x: 7, y: 3, inLine: false };
      expect(meetAhead(level, [7, 3, 7, y], allowed)).toEqual(ahead);
      expect(meetAhead(level, [7, y, 7, 3], allowed)).toEqual(ahead);
    }
  });

  it('meets what runs along it at the near end', () => {
    expectMeeting(pieceFrom(10, -0.25, 30, 0.75), [10, -0.25], true);
    expectMeeting(pieceFrom(10, 0.25, 30, -0.75), [10, 0.25], true);
    expectMeeting(pieceFrom(10, 0.125, 30, 0.125), [10, 0.125], true);
    // Of no length, and on the ray.
    expect(meetAhead(level, [7, 3, 7, 3], allowed)).toEqual({ along: 5, x: 7, y: 3, inLine: true });
  });

  it('tells along from across at 5 degrees', () => {
    for (const side of [1, -1]) {
      const flat = Math.tan((4.98 / 180) * Math.PI);
      expectMeeting(pieceFrom(10, -0.25 * side, 30, (20 * flat - 0.25) * side), [10, -0.25 * side], true);
      const steep = Math.tan((5.02 / 180) * Math.PI);
      expectMeeting(pieceFrom(10, -0.25 * side, 30, (20 * steep - 0.25) * side), [10 + 0.25 / steep, 0], false);
    }
  });

  it('asks a near end in line to lie no farther beside the ray than is allowed', () => {
    for (const y of [3.5, 2.5]) {
      const ahead = { along: 3, x: 5, y, inLine: true };
      expect(meetAhead(level, [5, y, 9, y], allowed)).toEqual(ahead);
      expect(meetAhead(level, [9, y, 5, y], allowed)).toEqual(ahead);
    }
    expectMiss(level, [5, 3.5001, 9, 3.5001]);
    expectMiss(level, [5, 2.4999, 9, 2.4999]);
    // Too far beside, but it crosses the ray farther on: 0.6 of 1.5 along 20.
    expectMeeting(pieceFrom(10, -0.6, 30, 0.9), [18, 0], false);
  });

  it('takes what runs along it and ends within the weld for what lies behind', () => {
    expectMiss(level, [2.125, 3, 2.25, 3]);
    expect(meetAhead(level, [2.125, 3, 2.2501, 3], allowed)).toEqual({ along: 0.125, x: 2.125, y: 3, inLine: true });
    // Both cross the ray just ahead of its start; one ends at the weld, the other past it, 50 of 51 parts along 4.32.
    expectMiss(slanting, pieceFrom(-4, -0.102, 0.25, 0.002));
    expectMeeting(pieceFrom(-4, -0.1, 0.32, 0.002), [-4 + (4.32 * 50) / 51, 0], false);
    // What lies across is met however near.
    expectMeeting(pieceFrom(0.125, -1, 0.125, 1), [0.125, 0], false);
    expectMiss(slanting, pieceFrom(-4, 0, 9, 0));
  });
});
