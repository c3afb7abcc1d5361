// Corners of runs: turns of 10 degrees or more.
import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { createPathReader } from '../../../src/geometry/path-data.js';
import { measureRuns } from '../../../src/geometry/path-stretch.js';
import { listCorners } from '../../../src/geometry/run-corners.js';

function runOf(d: string) {
  const bytes = new Uint8Array(Buffer.from(d));
  return measureRuns(createPathReader().read(bytes, 0, bytes.length), IDENTITY)[0]!;
}

describe('corners', () => {
  it('are where a line turns by 10 degrees or more', () => {
    expect(listCorners(runOf('M0 0H10V10H0Z'), IDENTITY)).toEqual([0, 10, 20, 30]);
    expect(listCorners(runOf('M0 0H10L20 1.7L30 3.4'), IDENTITY)).toHaveLength(2);
    expect(listCorners(runOf('M0 0H10L20 1.8'), IDENTITY)).toHaveLength(3);
  });

  it('are not where an arc goes on from a line, nor at the start of a circle', () => {
    expect(listCorners(runOf('M0 0H10A5 5 0 0 1 10 10H0Z'), IDENTITY)).toHaveLength(2);
    expect(listCorners(runOf('M5 0A5 5 0 0 1 -5 0A5 5 0 0 1 5 0Z'), IDENTITY)).toEqual([]);
  });

  it('are told where a control point lies on its end', () => {
    expect(listCorners(runOf('M0 0H10C10 0 20 0 20 0'), IDENTITY)).toHaveLength(2);
    expect(listCorners(runOf('M0 0H10C10 0 10 9 10 9'), IDENTITY)).toHaveLength(3);
  });
});
