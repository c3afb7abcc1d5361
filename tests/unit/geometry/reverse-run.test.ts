// Runs the other way round are the same line.
import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { createPathReader } from '../../../src/geometry/path-data.js';
import { lookAt, measureRuns } from '../../../src/geometry/path-stretch.js';
import { reverseRun } from '../../../src/geometry/reverse-run.js';
import { writeStretches } from '../../../src/geometry/write-stretch.js';

function runOf(d: string) {
  const bytes = new Uint8Array(Buffer.from(d));
  return measureRuns(createPathReader().read(bytes, 0, bytes.length), IDENTITY)[0]!;
}

describe('a run the other way round', () => {
  it('starts where it ended, and passes the same places', () => {
    const run = runOf('M0 0L10 5A20 8 30 0 1 40 20Q50 60 30 70C10 70 0 60 -5 50');
    const reversed = reverseRun(run);
    expect(reversed.length).toBe(run.length);
    run.segments.forEach((segment, i) => {
      const other = reversed.segments[run.segments.length - 1 - i]!;
      for (const t of [0, 0.25, 0.5, 1]) {
        const [one, two] = [lookAt(segment, IDENTITY, t), lookAt(other, IDENTITY, 1 - t)];
        expect(two.x).toBeCloseTo(one.x, 9);
        expect(two.y).toBeCloseTo(one.y, 9);
        expect(two.dx).toBeCloseTo(-one.dx, 9);
      }
    });
  });

  it('is written so, arcs with their other sweep', () => {
    const run = reverseRun(runOf('M0 0A10 10 0 0 1 10 10H20'));
    expect(writeStretches(run, IDENTITY, [[0, run.length]])).toBe('M20 10L10 10A10 10 0 0 0 0 0');
    expect(reverseRun(run)).toEqual(runOf('M0 0A10 10 0 0 1 10 10H20'));
  });
});
