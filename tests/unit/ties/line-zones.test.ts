// Where along a line no tie may stand.
import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { createPathReader } from '../../../src/geometry/path-data.js';
import { measureRuns } from '../../../src/geometry/path-stretch.js';
import { joinZones, listBends, spreadPlaces } from '../../../src/ties/line-zones.js';

function runOf(d: string) {
  const bytes = new Uint8Array(Buffer.from(d));
  return measureRuns(createPathReader().read(bytes, 0, bytes.length), IDENTITY)[0]!;
}

const FREE = { cornerClear: 0, creaseEndClear: 0, leastRadius: 0, creaseEnds: new Float64Array() };

describe('bends', () => {
  it('are where the radius is less', () => {
    const run = runOf('M0 0H20A5 5 0 0 1 25 5V20');
    expect(listBends(run, IDENTITY, { ...FREE, leastRadius: 4.99 })).toEqual([]);
    const zones = joinZones(listBends(run, IDENTITY, { ...FREE, leastRadius: 5.01 }), run.length, false);
    expect(zones).toEqual([[20, expect.closeTo(20 + 2.5 * Math.PI, 9)]]);
  });

  it('are also within reach of the end of a crease', () => {
    const run = runOf('M0 0H100');
    const settings = { ...FREE, creaseEndClear: 5, creaseEnds: Float64Array.of(40, 3, 70, 30) };
    const [[from, to] = [0, 0], ...others] = joinZones(listBends(run, IDENTITY, settings), run.length, false);
    expect(others).toEqual([]);
    // Exactly 36 to 44, and up to one step more.
    expect(from).toBeLessThanOrEqual(36);
    expect(from).toBeGreaterThanOrEqual(34.5);
    expect(to).toBeGreaterThanOrEqual(44);
    expect(to).toBeLessThanOrEqual(45.5);
  });
});

describe('zones', () => {
  it('are joined, cut to an open line, and go round a closed one', () => {
    expect(
      joinZones(
        [
          [-2, 3],
          [2, 5],
          [8, 12],
        ],
        10,
        false,
      ),
    ).toEqual([
      [0, 5],
      [8, 10],
    ]);
    expect(
      joinZones(
        [
          [-2, 3],
          [5, 6],
        ],
        10,
        true,
      ),
    ).toEqual([
      [0, 3],
      [5, 6],
      [8, 10],
    ]);
    expect(joinZones([[-20, 30]], 10, true)).toEqual([[0, 10]]);
  });

  it('are spread around places', () => {
    expect(spreadPlaces([5, 9], 2)).toEqual([
      [3, 7],
      [7, 11],
    ]);
  });
});
