// Timed runs settle acceleration, lift and start: known figures come back, and the linear part agrees with a library.
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { TimedRun } from '../../../src/model/profile.js';
import { fitLine, fitTimes } from '../../../src/run/fit-times.js';
import { motionTime } from '../../../src/run/motion-time.js';

const TRAVEL = 300;

/** A run as a machine with known figures would take it. */
function run(speedCmS: number, lengths: readonly number[], travels: readonly number[], late = 0): TimedRun {
  const truth = { speedMmS: speedCmS * 10, travelMmS: TRAVEL, accelerationMmS2: 850, liftS: 0.35 };
  const lifts = travels.length + 1;
  const seconds = 4 + late + motionTime({ stretchesMm: lengths, travelsMm: travels, lifts }, truth);
  const like = (list: readonly number[]) => list.map((lengthMm) => ({ lengthMm, count: 1 }));
  return {
    name: 'a',
    on: '2026-02-03',
    by: 'R. O.',
    speedCmS,
    lifts,
    stretches: like(lengths),
    travels: like(travels),
    seconds,
  };
}

const RUNS = [
  run(10, [100, 80, 60, 4, 3], [20]),
  run(5, Array<number>(30).fill(12), Array<number>(29).fill(15)),
  run(20, Array<number>(80).fill(2.5), [40, 50, 60]),
  run(10, [400, 400], [100, 30, 20, 10, 5]),
];

describe('fitTimes', () => {
  it('finds the figures that made three runs, and says that nothing is left to judge by', () => {
    const fit = fitTimes(RUNS.slice(0, 3), TRAVEL)!;
    expect(fit.accelerationMmS2).toBeCloseTo(850, 3);
    expect(fit.liftS).toBeCloseTo(0.35, 6);
    expect(fit.startS).toBeCloseTo(4, 5);
    expect(fit.residualS).toBeNull();
  });

  it('leaves a residual where runs do not agree', () => {
    const late = [0.2, -0.2, 0.1, -0.1];
    const fit = fitTimes(
      RUNS.map((item, i) => ({ ...item, seconds: item.seconds + late[i]! })),
      TRAVEL,
    )!;
    expect(fit.residualS).toBeGreaterThan(0.01);
    expect(fit.residualS).toBeLessThan(0.2);
    expect(fit.accelerationMmS2).toBeGreaterThan(600);
    expect(fit.accelerationMmS2).toBeLessThan(1200);
  });

  it('counts like stretches as often as they are there', () => {
    const twelves = { ...RUNS[1]!, stretches: [{ lengthMm: 12, count: 30 }] };
    const gathered = [RUNS[0]!, twelves, RUNS[2]!];
    expect(fitTimes(gathered, TRAVEL)!.accelerationMmS2).toBeCloseTo(
      fitTimes(RUNS.slice(0, 3), TRAVEL)!.accelerationMmS2,
      3,
    );
  });

  it('is not asked of fewer than three runs', () => {
    expect(fitTimes(RUNS.slice(0, 2), TRAVEL)).toBeNull();
  });
});

describe('fitLine', () => {
  it('agrees with the least squares of a library', () => {
    let seed = 7;
    const chance = (): number => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    for (let round = 0; round < 200; round += 1) {
      const lifts = Array.from({ length: 3 + (round % 6) }, () => Math.floor(chance() * 50));
      const left = lifts.map((lift) => 6 + 0.4 * lift + chance());
      if (new Set(lifts).size === 1) continue;
      const answer = solve(new Matrix(lifts.map((lift) => [1, lift])), Matrix.columnVector(left), true).to1DArray();
      const { startS, liftS } = fitLine(lifts, left);
      expect(startS).toBeCloseTo(answer[0]!, 8);
      expect(liftS).toBeCloseTo(answer[1]!, 8);
    }
  });

  it('gives no time below zero', () => {
    expect(fitLine([1, 2, 3], [6, 4, 2])).toMatchObject({ liftS: 0, startS: 4 });
    const steep = fitLine([1, 2, 3], [1, 4, 7]);
    expect(steep.startS).toBe(0);
    expect(steep.liftS).toBeCloseTo(30 / 14, 12);
  });

  it('takes all for start where every run lifts alike', () => {
    expect(fitLine([4, 4, 4], [3, 5, 4])).toMatchObject({ liftS: 0, startS: 4 });
  });
});
