// What lines ask of a head: how often the tool comes down, and how far it goes lifted.
import { describe, expect, it } from 'vitest';
import { measureLines, type RunLine } from '../../../src/run/measure-lines.js';

/** A line through points, stops at each of them. */
function makeLine(closed: boolean, points: readonly number[], lengthMm: number): RunLine {
  const count = points.length / 2;
  const pieces = closed ? count : count - 1;
  return {
    outline: {
      points: Float64Array.from(points),
      closed,
      starts: Uint32Array.from({ length: pieces }, (_, i) => i),
      curved: new Uint8Array(pieces),
    },
    lengthMm,
  };
}

const SQUARE = makeLine(true, [0, 0, 27.5, 0, 27.5, 27.5, 0, 27.5], 110);
const STRAIGHT = makeLine(false, [50, 0, 104, 0], 54);
const LIFTED = { mmPerPx: 1, stopDegrees: 180, ties: { cutMm: 10, tieMm: 1, lifted: true } };

describe('a head that is lifted over ties', () => {
  it('comes down once per cut, on open lines and on closed ones', () => {
    expect(measureLines([STRAIGHT], LIFTED)).toMatchObject({ ties: 4, lifts: 5, tieLengthMm: 4 });
    const closed = measureLines([SQUARE], LIFTED);
    expect(closed).toMatchObject({ ties: 10, lifts: 10, tieLengthMm: 10 });
    expect(closed.stretchesMm).toHaveLength(10);
    expect(measureLines([SQUARE, STRAIGHT], LIFTED)).toMatchObject({ lines: 2, ties: 14, lifts: 15 });
  });

  it('goes on without a lift where a line starts on the end of the one before', () => {
    const next = makeLine(false, [104, 0, 104, 30], 30);
    const whole = { mmPerPx: 1, stopDegrees: 180, ties: null };
    expect(measureLines([STRAIGHT, next], whole)).toMatchObject({ lines: 2, lifts: 1, travelsMm: [0] });
    expect(measureLines([next, STRAIGHT], whole)).toMatchObject({ lines: 2, lifts: 2 });
  });

  it('stays down over ties that are scored', () => {
    const scored = { ...LIFTED, ties: { ...LIFTED.ties, lifted: false } };
    expect(measureLines([SQUARE, STRAIGHT], scored)).toMatchObject({ ties: 14, lifts: 2, travelsMm: [50] });
  });
});
