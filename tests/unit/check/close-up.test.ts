// Lines that end where they start.
import { describe, expect, it } from 'vitest';
import { closeUp } from '../../../src/check/close-up.js';
import type { Outline } from '../../../src/geometry/outline.js';

const run = (...points: readonly number[]): Outline => ({
  closed: false,
  points: Float64Array.from(points),
  starts: Uint32Array.from({ length: points.length / 2 - 1 }, (_, i) => i),
  curved: new Uint8Array(points.length / 2 - 1),
});

describe('closeUp', () => {
  it('closes within a hundredth of a millimetre, without the point that is there twice', () => {
    const closed = closeUp(run(0, 0, 10, 0, 10, 10, 0.009, 0), 1);
    expect([closed.closed, [...closed.points], [...closed.starts]]).toEqual([true, [0, 0, 10, 0, 10, 10], [0, 1, 2]]);
    expect(closeUp(run(0, 0, 10, 0, 10, 10, 0.011, 0), 1).closed).toBe(false);
    // 0.02 px are 0.005 mm.
    expect(closeUp(run(0, 0, 10, 0, 10, 10, 0.02, 0), 0.25).closed).toBe(true);
  });

  it('leaves what is closed, and what goes there and back', () => {
    const closed = { ...run(0, 0, 10, 0, 10, 10), closed: true };
    expect(closeUp(closed, 1)).toBe(closed);
    expect(closeUp(run(0, 0, 10, 0, 0, 0), 1).closed).toBe(false);
  });
});
