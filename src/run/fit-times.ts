// Acceleration, lift and start of a machine from runs that somebody timed.
import type { LikeStretches, TimedRun } from '../model/profile.js';
import { type Demand, movingTime } from './motion-time.js';

/** Fewest runs that settle three figures. */
export const LEAST_RUNS = 3;

/** What the runs say of a machine. */
export interface TimeFit {
  readonly accelerationMmS2: number;
  readonly liftS: number;
  readonly startS: number;
  readonly runs: number;
  /** Root of the mean square of what is left, s; null where three runs leave nothing to judge by. */
  readonly residualS: number | null;
}

/** Bounds of the search, mm/s²: slower than a snail, faster than any head. */
const SLOWEST = 1;
const FASTEST = 1e6;
/** Places that are looked at before the search closes in: one valley may hide another. */
const LOOKS = 120;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const HALVINGS = 90;

/** Lift and start that leave least, for one acceleration. */
export interface LineFit {
  readonly liftS: number;
  readonly startS: number;
  readonly squares: number;
}

/**
 * Least squares of `seconds = start + lifts * lift`, neither of them below zero. Where all runs lift alike only the start is told apart.
 *
 * @param left - Seconds of each run that moving does not explain.
 */
export function fitLine(lifts: readonly number[], left: readonly number[]): LineFit {
  const count = left.length;
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / count;
  const [x, y] = [mean(lifts), mean(left)];
  let xx = 0;
  let xy = 0;
  for (const [i, lift] of lifts.entries()) {
    xx += (lift - x) * (lift - x);
    xy += (lift - x) * (left[i]! - y);
  }
  const squaresOf = (liftS: number, startS: number): LineFit => {
    let squares = 0;
    for (const [i, lift] of lifts.entries()) {
      const rest = left[i]! - startS - lift * liftS;
      squares += rest * rest;
    }
    return { liftS, startS, squares };
  };
  const slope = xx > 0 ? xy / xx : 0;
  const start = y - slope * x;
  if (slope >= 0 && start >= 0) return squaresOf(slope, start);
  const through = lifts.reduce((sum, lift) => sum + lift * lift, 0);
  const product = lifts.reduce((sum, lift, i) => sum + lift * left[i]!, 0);
  const flat = squaresOf(0, Math.max(0, y));
  const steep = squaresOf(through > 0 ? Math.max(0, product / through) : 0, 0);
  return flat.squares <= steep.squares ? flat : steep;
}

function spread(list: readonly LikeStretches[]): {
  readonly lengthsMm: readonly number[];
  readonly counts: readonly number[];
} {
  return { lengthsMm: list.map((item) => item.lengthMm), counts: list.map((item) => item.count) };
}

/** Moving time of a timed run; like stretches are reckoned once. */
function movingTimeOf(run: TimedRun, travelMmS: number, accelerationMmS2: number): number {
  const each = (list: readonly LikeStretches[], toDemand: (lengthMm: number) => Demand): number => {
    const { lengthsMm, counts } = spread(list);
    const motion = { speedMmS: run.speedCmS * 10, travelMmS, accelerationMmS2 };
    return lengthsMm.reduce((sum, length, i) => sum + counts[i]! * movingTime(toDemand(length), motion), 0);
  };
  return (
    each(run.stretches, (length) => ({ stretchesMm: [length], travelsMm: [], lifts: 0 })) +
    each(run.travels, (length) => ({ stretchesMm: [], travelsMm: [length], lifts: 0 }))
  );
}

/**
 * Fits a machine to its timed runs: for each acceleration lift and start follow by linear least squares, and the acceleration that
 * leaves least is searched for.
 *
 * @returns Null for fewer than three runs.
 */
export function fitTimes(runs: readonly TimedRun[], travelMmS: number): TimeFit | null {
  if (runs.length < LEAST_RUNS) return null;
  const lifts = runs.map((run) => run.lifts);
  const fitAt = (logarithm: number): LineFit => {
    const acceleration = Math.exp(logarithm);
    return fitLine(
      lifts,
      runs.map((run) => run.seconds - movingTimeOf(run, travelMmS, acceleration)),
    );
  };
  const [low, high] = [Math.log(SLOWEST), Math.log(FASTEST)];
  const step = (high - low) / LOOKS;
  let best = low;
  let least = Number.POSITIVE_INFINITY;
  for (let look = 0; look <= LOOKS; look += 1) {
    const { squares } = fitAt(low + look * step);
    if (squares < least) {
      least = squares;
      best = low + look * step;
    }
  }
  let [from, to] = [Math.max(low, best - step), Math.min(high, best + step)];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const [a, b] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
    if (fitAt(a).squares <= fitAt(b).squares) to = b;
    else from = a;
  }
  const logarithm = (from + to) / 2;
  const { liftS, startS, squares } = fitAt(logarithm);
  return {
    accelerationMmS2: Math.exp(logarithm),
    liftS,
    startS,
    runs: runs.length,
    residualS: runs.length > LEAST_RUNS ? Math.sqrt(squares / runs.length) : null,
  };
}
