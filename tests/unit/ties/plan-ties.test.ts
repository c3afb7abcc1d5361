// Ties of whole passes: lines joined to outlines, slits left free, and what is left to cut.
import { describe, expect, it } from 'vitest';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { createPathReader } from '../../../src/geometry/path-data.js';
import { measureRuns } from '../../../src/geometry/path-stretch.js';
import { cutStretches, planTies, type TieSettings } from '../../../src/ties/plan-ties.js';

function runsOf(...paths: readonly string[]) {
  return paths.flatMap((d) => {
    const bytes = new Uint8Array(Buffer.from(d));
    const runs = measureRuns(createPathReader().read(bytes, 0, bytes.length), IDENTITY);
    return runs.map((run) => ({ run, matrix: IDENTITY }));
  });
}

const SETTINGS: TieSettings = {
  mode: 'hold',
  cut: 10,
  tie: 1,
  startsWith: 'cut',
  endsWith: 'cut',
  leastPerPiece: 3,
  free: 100,
  smallHole: 10,
  smallHoleTies: 1,
  cornerClear: 5,
  creaseEndClear: 0,
  leastRadius: 0,
  creaseEnds: new Float64Array(),
};

describe('ties that hold', () => {
  it('are at least as many as asked for a piece, more on long outlines, fewer on small holes', () => {
    const { lines } = planTies(runsOf('M0 0H50V50H0Z', 'M0 0H300V300H0Z', 'M0 0H9V9H0Z'), {
      ...SETTINGS,
      cornerClear: 2,
    });
    expect(lines.map(({ ties, wanted }) => [ties, wanted])).toEqual([
      [3, 3],
      [12, 12],
      [1, 1],
    ]);
  });

  it('are shared by the lines that make an outline, whichever way each runs', () => {
    const runs = runsOf('M0 0H100', 'M100 100V0', 'M100 100H0', 'M0 0V100');
    const { ties, lines } = planTies(runs, { ...SETTINGS, leastPerPiece: 4 });
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ ties: 4, wanted: 4 });
    for (const list of ties) {
      expect(list).toHaveLength(1);
      const [from, to] = list[0]!;
      expect(from).toBeGreaterThanOrEqual(5);
      expect(to).toBeLessThanOrEqual(95);
    }
  });

  it('leave slits free, but not lines that end in others', () => {
    // A frame whose two halves meet where two slits begin.
    const halves = ['M0 0H200V50', 'M0 0V50', 'M200 50V100H0V50'];
    const slits = ['M200 50H150', 'M0 50H50', 'M20 20H40'];
    const { ties } = planTies(runsOf(...halves, ...slits), SETTINGS);
    expect(ties.slice(3).flat()).toEqual([]);
    expect(ties.slice(0, 3).flat().length).toBeGreaterThanOrEqual(6);
  });

  it('are never within the clear distance of a corner', () => {
    const { ties } = planTies(runsOf('M0 0H40V40H0Z'), { ...SETTINGS, cornerClear: 15, leastPerPiece: 4 });
    for (const [from, to] of ties[0]!) {
      const side = Math.floor(from / 40) * 40;
      expect(from - side).toBeGreaterThanOrEqual(15 - 1e-9);
      expect(to - side).toBeLessThanOrEqual(25 + 1e-9);
    }
    expect(ties[0]).toHaveLength(4);
  });
});

describe('a pattern', () => {
  it('is cut round corners, and its lines are planned each alone', () => {
    const { ties, lines } = planTies(runsOf('M0 0H100', 'M0 0H54V54'), { ...SETTINGS, mode: 'pattern' });
    expect(lines.map(({ runs }) => runs)).toEqual([[0], [1]]);
    const near = ties[1]!.filter(([from, to]) => to > 49 + 1e-9 && from < 59 - 1e-9);
    expect(near).toEqual([]);
    expect(ties[1]!.some(([, to]) => Math.abs(to - 49) < 1e-9)).toBe(true);
  });
});

describe('what is left to cut', () => {
  const [{ run: open }, { run: closed }] = runsOf('M0 0H100', 'M0 0H25V25H0Z') as [
    ReturnType<typeof runsOf>[0],
    ReturnType<typeof runsOf>[0],
  ];

  it('is all between the ties', () => {
    expect(
      cutStretches(open, [
        [10, 11],
        [60, 62],
      ]),
    ).toEqual([
      [0, 10],
      [11, 60],
      [62, 100],
    ]);
    expect(
      cutStretches(closed, [
        [10, 11],
        [60, 62],
      ]),
    ).toEqual([
      [11, 60],
      [62, 110],
    ]);
    expect(cutStretches(closed, [[99, 101]])).toEqual([[1, 99]]);
    expect(cutStretches(open, [])).toEqual([[0, 100]]);
  });

  it('holds nothing where a line starts or ends with a tie', () => {
    expect(
      cutStretches(open, [
        [0, 1],
        [99, 100],
      ]),
    ).toEqual([[1, 99]]);
  });
});
