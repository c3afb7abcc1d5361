// Whether the measured sheet lies turned or flipped, or the names of its marks are mixed up.
import { type Finding, finding } from '../model/finding.js';
import type { PointMm } from '../model/marks.js';
import type { MarkReading } from '../model/register.js';
import { fitMarks } from './fit-marks.js';

/** A way a sheet can lie: the four quarter turns, and each of them face down. */
interface Lie {
  readonly words: string;
  readonly linear: readonly [number, number, number, number];
}

const LIES: readonly Lie[] = [
  { words: 'as drawn', linear: [1, 0, 0, 1] },
  { words: 'turned by 90 degrees clockwise', linear: [0, 1, -1, 0] },
  { words: 'turned by 180 degrees', linear: [-1, 0, 0, -1] },
  { words: 'turned by 90 degrees counter-clockwise', linear: [0, -1, 1, 0] },
  { words: 'flipped left to right', linear: [-1, 0, 0, 1] },
  { words: 'flipped top to bottom', linear: [1, 0, 0, -1] },
  { words: 'flipped about its diagonal', linear: [0, 1, 1, 0] },
  { words: 'flipped about its other diagonal', linear: [0, -1, -1, 0] },
];

/** Other names must fit this many times better before they are believed. */
const FAR_BETTER = 4;
/** Fewer marks than this do not tell a turned sheet from mixed-up names, nor one that is flipped. */
const LEAST_MARKS = 3;
/** Register that is out by less is no mix-up of names, mm. */
const MIX_UP_MM = 1;

function centre(points: readonly PointMm[]): readonly PointMm[] {
  const x = points.reduce((sum, point) => sum + point[0], 0) / points.length;
  const y = points.reduce((sum, point) => sum + point[1], 0) / points.length;
  return points.map((point) => [point[0] - x, point[1] - y]);
}

function nearestTo(points: readonly PointMm[], [x, y]: PointMm): number {
  const distances = points.map((point) => Math.hypot(point[0] - x, point[1] - y));
  return distances.indexOf(Math.min(...distances));
}

/** Which measured mark each drawn one is, if the sheet lies so; null where two would be the same. */
function pairUp(readings: readonly MarkReading[], { linear }: Lie): readonly number[] | null {
  const [a, b, c, d] = linear;
  const measured = centre(readings.map((reading) => reading.measuredMm));
  const pairs = centre(readings.map((reading) => reading.drawnMm)).map(([x, y]) =>
    nearestTo(measured, [a * x + c * y, b * x + d * y]),
  );
  return new Set(pairs).size === pairs.length ? pairs : null;
}

interface Guess {
  readonly lie: Lie;
  readonly pairs: readonly number[];
  readonly rmsMm: number;
}

/** How well the marks fit if the sheet lies one way and the names are put right for it. */
function guess(readings: readonly MarkReading[], lie: Lie): Guess | null {
  const pairs = pairUp(readings, lie);
  if (pairs === null) return null;
  const isFlipped = lie.linear[0] * lie.linear[3] - lie.linear[1] * lie.linear[2] < 0;
  // A flipped sheet is laid back on its face first, since no fit mirrors.
  const renamed = readings.map(({ name, drawnMm }, i): MarkReading => {
    const [x, y] = readings[pairs[i]!]!.measuredMm;
    return { name, drawnMm, measuredMm: isFlipped ? [-x, y] : [x, y] };
  });
  const fit = fitMarks(renamed, 'turn');
  return fit === null ? null : { lie, pairs, rmsMm: fit.rmsMm };
}

function mirrored(readings: readonly MarkReading[]): readonly MarkReading[] {
  return readings.map((reading) => ({ ...reading, measuredMm: [-reading.measuredMm[0], reading.measuredMm[1]] }));
}

function sayFlipped(): Finding {
  return finding('register/flipped', {
    message:
      'The measured marks are a mirror image of the drawn ones: the sheet lies on its face, or one axis was read backwards.',
    remedy: 'Lay the sheet face up and measure from its top left: x to the right, y down.',
  });
}

function sayTurned(angleDeg: number, count: number): Finding {
  const quarters = Math.round(angleDeg / 90) * 90;
  return finding('register/turned', {
    message: `The measured sheet lies turned by ${Math.abs(quarters)} degrees${Math.abs(quarters) === 180 ? '' : quarters > 0 ? ' clockwise' : ' counter-clockwise'}${count < LEAST_MARKS ? ', or the names of its two marks are mixed up' : ''}.`,
    remedy: 'Lay the other passes the same way, or turn the sheet and measure again.',
    data: { angleDeg: Math.round(angleDeg * 1000) / 1000 },
  });
}

function sayMixed(readings: readonly MarkReading[], { lie, pairs }: Guess): Finding {
  const wrong = pairs.map((to, from) => ({ from, to })).filter(({ from, to }) => from !== to);
  const swaps = wrong.map(
    ({ from, to }) => `what was measured as "${readings[to]!.name}" is "${readings[from]!.name}"`,
  );
  return finding('register/names-mixed', {
    message: `The marks fit if the sheet lies ${lie.words} and ${swaps.slice(0, 5).join(', ')}.`,
    remedy: 'Look for the odd mark, lay the sheet as it is drawn, and put the names right.',
    data: { lies: lie.words, marks: wrong.map(({ to }) => readings[to]!.name) },
  });
}

/**
 * Tells a turned or flipped sheet, or names that are mixed up, by the marks alone.
 *
 * Four marks at the corners look the same on a turned sheet; the odd one tells it.
 *
 * @returns At most one finding; none where the marks lie as drawn, or too few are measured to tell.
 */
export function recogniseSheet(readings: readonly MarkReading[]): readonly Finding[] {
  const named = fitMarks(readings, 'turn');
  if (named === null) return [];
  const turned = Math.abs(named.angleDeg) > 45 ? [sayTurned(named.angleDeg, readings.length)] : [];
  if (readings.length < LEAST_MARKS) return turned;
  const back = fitMarks(mirrored(readings), 'turn');
  const guesses = LIES.map((lie) => guess(readings, lie)).filter((item) => item !== null);
  const best = guesses.toSorted((a, b) => a.rmsMm - b.rmsMm)[0];
  const flippedMm = back?.rmsMm ?? Infinity;
  const bestMm = best?.rmsMm ?? Infinity;
  if (named.rmsMm > MIX_UP_MM && Math.min(flippedMm, bestMm) * FAR_BETTER < named.rmsMm) {
    return flippedMm <= bestMm * (1 + 1e-9) ? [sayFlipped()] : [sayMixed(readings, best!)];
  }
  return turned;
}
