// The bounds of print whose areas are worked out: at each, and one past it; the cost of a shape by counting.
import { describe, expect, it } from 'vitest';
import { measureCrowd, measurePrint, type PrintOutlines } from '../../../src/check/measure-print.js';
import type { Outline } from '../../../src/geometry/outline.js';

function line(points: readonly number[], closed = false): Outline {
  const count = points.length / 2 - (closed ? 0 : 1);
  return {
    closed,
    points: Float64Array.from(points),
    starts: Uint32Array.from({ length: count }, (_, i) => i),
    curved: new Uint8Array(count),
  };
}

/** Shapes of one line each across a square: as many along x as along y. */
function weave(count: number): readonly PrintOutlines[] {
  return Array.from({ length: count }, (_, i) => [line([0, i, count, i]), line([i, 0, i, count])])
    .flat()
    .map((outline) => ({ outlines: [outline], isStroked: false }));
}

/** One line that goes up and down, every turn at a height of its own. */
function zigzag(turns: number): Outline {
  return line(Array.from({ length: turns + 1 }, (_, i) => [i, i % 2 === 0 ? -i : i]).flat());
}

describe('measureCrowd', () => {
  it('counts the pieces across each height at which one ends', () => {
    // Heights 0, 5 and 10: a square has two uprights and two level sides, of which one lies at each end; the line in it ends at 5.
    expect(measureCrowd([line([0, 0, 10, 0, 10, 10, 0, 10], true)])).toBe(3 + 3);
    expect(measureCrowd([line([0, 0, 10, 0, 10, 10, 0, 10], true), line([2, 0, 2, 5])])).toBe(4 + 3 + 3);
  });

  it('is about half the square of the turns of a line whose turns have heights of their own', () => {
    // At the height of turn i all later pieces cross, and one earlier one ends: the sum of what is left, above and below.
    const turns = 200;
    const counted = Array.from({ length: turns + 1 }, (_, i) => Math.min(turns, turns - i + 1)).reduce((a, b) => a + b);
    expect(measureCrowd([zigzag(turns)])).toBe(counted);
  });

  it('is nothing where there is nothing', () => {
    expect(measureCrowd([])).toBe(0);
  });
});

describe('measurePrint', () => {
  const none = { pieces: Infinity, meetings: Infinity, crowd: Infinity };

  it('keeps to the very number of pieces and of meetings allowed', () => {
    expect(measurePrint(weave(30), { ...none, pieces: 60 })).toBe(null);
    expect(measurePrint(weave(30), { ...none, pieces: 59 })).toBe('pieces');
    // Thirty more for each of the sixty pieces.
    expect(measurePrint(weave(300), { ...none, meetings: 90_000 - 30 * 600 })).toBe(null);
    expect(measurePrint(weave(300), { ...none, meetings: 90_000 - 30 * 600 - 1 })).toBe('meetings');
  });

  it('keeps to the very crowd allowed, sixteen times as much for a stroke', () => {
    const outlines = [zigzag(1000)];
    const crowd = measureCrowd(outlines);
    expect(measurePrint([{ outlines, isStroked: false }], { ...none, crowd })).toBe(null);
    expect(measurePrint([{ outlines, isStroked: false }], { ...none, crowd: crowd - 1 })).toBe('crowd');
    expect(measurePrint([{ outlines, isStroked: true }], { ...none, crowd: 16 * crowd })).toBe(null);
    expect(measurePrint([{ outlines, isStroked: true }], { ...none, crowd: 16 * crowd - 1 })).toBe('crowd');
  });

  it('takes no shape of few points for a crowd', () => {
    expect(measurePrint([{ outlines: [zigzag(998)], isStroked: true }], { ...none, crowd: 0 })).toBe(null);
    expect(measurePrint([{ outlines: [zigzag(999)], isStroked: true }], { ...none, crowd: 0 })).toBe('crowd');
  });

  it('lets pass what art draws', () => {
    expect(measurePrint(weave(300))).toBe(null);
  });
});
