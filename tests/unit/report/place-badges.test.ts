// Numbers stand beside their places, and none covers another.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeBadges } from '../../../src/report/place-badges.js';

function distance([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number {
  return Math.hypot(ax - bx, ay - by);
}

describe('badges', () => {
  it('stand right and up of their places where nothing is in the way', () => {
    const [badge] = placeBadges([{ number: 7, at: [100, 100] }], 26, 20);
    expect(badge).toMatchObject({ number: 7, at: [100, 100] });
    expect(badge!.centre[0]).toBeCloseTo(100 + 20 * Math.SQRT1_2, 9);
    expect(badge!.centre[1]).toBeCloseTo(100 - 20 * Math.SQRT1_2, 9);
  });

  it('do not cover each other, up to thirty at one place', () => {
    const many = Array.from({ length: 30 }, (_, i) => ({ number: i + 1, at: [50, 50] as const }));
    const placed = placeBadges(many, 26, 20);
    expect(placed.map(({ number }) => number)).toEqual(many.map(({ number }) => number));
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) expect(distance(a.centre, b.centre)).toBeGreaterThanOrEqual(26);
    });
  });

  it('do not cover each other wherever a few dozen places are', () => {
    const place = fc.tuple(fc.double({ min: 0, max: 500, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true }));
    fc.assert(
      fc.property(fc.array(place, { maxLength: 30 }), (places) => {
        const placed = placeBadges(
          places.map((at, i) => ({ number: i, at })),
          26,
          20,
        );
        return placed.every((a, i) => placed.slice(i + 1).every((b) => distance(a.centre, b.centre) >= 26));
      }),
    );
  });

  it('are all placed where there is no room at all', () => {
    const many = Array.from({ length: 400 }, (_, i) => ({ number: i + 1, at: [50, 50] as const }));
    expect(placeBadges(many, 26, 20)).toHaveLength(400);
  });
});
