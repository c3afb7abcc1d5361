// Cartons with known faults: what the checks of lines should find follows from how they are built.
import fc from 'fast-check';
import type { CheckSettings } from '../../src/model/check-settings.js';
import type { LineKind } from '../../src/model/faces.js';

export type Point = readonly [number, number];

/** A line of a die, mm. */
export interface DieLine {
  readonly kind: LineKind;
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Lengths of dashes and gaps. */
  readonly dashes?: readonly number[];
  /** What it tells hangs on where it starts and how it runs: it is neither parted nor reversed. */
  readonly fixed?: boolean;
}

/** What a check should find in one place: how often, and the measured value; null where it measures nothing. */
export interface Expected {
  readonly code: string;
  readonly count: number;
  readonly value: number | null;
}

/** A carton, and what the checks should find, by code. */
export interface FaultyCarton {
  readonly lines: readonly DieLine[];
  readonly expected: readonly Expected[];
}

/** One panel of the row: its bottom runs from left to right. */
interface Cell {
  readonly x0: number;
  readonly x1: number;
  readonly height: number;
}

/** What a fault does to its panel. */
interface Faulty {
  readonly lines?: readonly DieLine[];
  /** Points on the way along the bottom; a null is an opening. */
  readonly bottom?: readonly (Point | null)[];
  /** By how much the crease on its right stops short of the bottom (below zero: runs over it). */
  readonly short?: number;
  readonly expected: readonly Expected[];
}

/** Settings under which each fault is one. */
export const FAULT_SETTINGS: Partial<CheckSettings> = { knifeOffsetMm: 0.25, caliperMm: 0.4, cutOrder: 'sorted' };

/** How values of several places add up: summed, or the worst. */
const MEASURES: Readonly<Record<string, (p: number, q: number) => number>> = {
  'line-doubled': (p, q) => p + q,
  'line-on-line': (p, q) => p + q,
  'loose-piece': (p, q) => p + q,
  'points-needless': (p, q) => p + q,
  'crease-near-cut': Math.min,
  'crease-pair-narrow': Math.min,
  'segment-short': Math.min,
  'turn-sharp': Math.min,
  'ties-few': Math.min,
};

const one = (code: string, value: number | null, count: number = 1): Expected => ({ code, count, value });
const open = (kind: LineKind, ...points: readonly Point[]): DieLine => ({ kind, points, closed: false });
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) }).map((value) => value / 1000);

type Fault = (cell: Cell) => Faulty;

/** A rectangle in the middle of a panel. */
function windowIn({ x0, height }: Cell, width: number, high: number): readonly Point[] {
  const [x, y] = [x0 + 10, height / 2 - 5];
  return [
    [x, y],
    [x + width, y],
    [x + width, y + high],
    [x, y + high],
  ];
}

const doubled = between(0.6, 20).map(
  (length): Fault =>
    ({ x0, height }) => ({
      lines: [open('cut', [x0 + 8 + length, height], [x0 + 8, height])],
      expected: [one('line-doubled', length)],
    }),
);

const onLine = between(0.6, 20).map(
  (length): Fault =>
    ({ x0, height }) => ({
      lines: [open('crease', [x0 + 8, height], [x0 + 8 + length, height])],
      expected: [one('line-on-line', length)],
    }),
);

const opened = between(0.06, 0.95).map(
  (gap): Fault =>
    ({ x0, height }) => ({
      bottom: [[x0 + 12, height], null, [x0 + 12 + gap, height]],
      expected: [one('outline-open', gap)],
    }),
);

const creaseShort = between(0.51, 1.98).map(
  (short): Fault =>
    () => ({
      short,
      expected: [one('crease-short', short)],
    }),
);

const creaseOver = between(0.51, 12).map(
  (over): Fault =>
    () => ({
      short: -over,
      expected: [one('crease-over-cut', over)],
    }),
);

const nearCut = fc.tuple(between(0.03, 1.99), between(2.01, 20)).map(
  ([distance, length]): Fault =>
    ({ x1 }) => ({
      lines: [open('cut', [x1 - distance, 12], [x1 - distance, 12 + length])],
      expected: [one('crease-near-cut', distance)],
    }),
);

const pairNarrow = between(0.05, 1.29).map(
  (distance): Fault =>
    ({ x1, height }) => ({
      lines: [open('crease', [x1 - distance, 0], [x1 - distance, height])],
      // Either crease has the other beside it.
      expected: [one('crease-pair-narrow', distance, 2)],
    }),
);

const sharp = between(0.03, 0.245).map(
  (width): Fault =>
    ({ x0, height }) => ({
      bottom: [
        [x0 + 12, height],
        [x0 + 12, height - 4],
        [x0 + 12 + width, height - 4],
        [x0 + 12 + width, height],
      ],
      expected: [one('turn-sharp', width)],
    }),
);

const short = between(0.003, 0.009).map(
  (length): Fault =>
    ({ x0, height }) => ({
      bottom: [
        [x0 + 12, height],
        [x0 + 12 + length, height],
      ],
      expected: [one('segment-short', length)],
    }),
);

const needless = fc.integer({ min: 51, max: 90 }).map(
  (count): Fault =>
    ({ x0, height }) => ({
      lines: [
        {
          ...open(
            'perforation',
            [x0 + 8, 0],
            ...Array.from({ length: count }, (_, i): Point => [x0 + 8, (height * (i + 1)) / (count + 1)]),
            [x0 + 8, height],
          ),
        },
      ],
      // The two ends stay.
      expected: [one('points-needless', 2)],
    }),
);

const crossing = fc.tuple(fc.integer({ min: 4, max: 12 }), fc.integer({ min: 0, max: 3 })).map(
  ([size, knots]): Fault =>
    ({ x0, height }) => {
      const [x, y] = [x0 + 9, height / 2 - 7];
      const knot: Point = [x + size / 2, y + size / 2];
      const at = (bit: number): readonly Point[] => ((knots & bit) === 0 ? [] : [knot]);
      return {
        lines: [
          {
            kind: 'cut',
            closed: true,
            points: [[x, y], ...at(1), [x + size, y + size], [x + size, y], ...at(2), [x, y + size]],
          },
        ],
        expected: [one('outline-crosses-itself', null), one('loose-piece', (size * size) / 2, 2)],
      };
    },
);

const loose = fc.tuple(between(3, 18), between(3, 10)).map(
  ([width, high]): Fault =>
    (cell) => ({
      lines: [{ kind: 'cut', closed: true, points: windowIn(cell, width, high) }],
      expected: [one('loose-piece', width * high)],
    }),
);

const tied = fc.tuple(between(4, 18), between(4, 10)).map(
  ([width, high]): Fault =>
    (cell) => ({
      // One tie of half a millimetre in the first side.
      lines: [
        {
          kind: 'cut',
          closed: true,
          fixed: true,
          points: windowIn(cell, width, high),
          dashes: [width / 2, 0.5, 2 * (width + high) - 0.5 - width / 2, 0],
        },
      ],
      expected: [one('ties-few', 1)],
    }),
);

const tiedAtCorner = fc.tuple(between(4, 18), between(4, 10)).map(
  ([width, high]): Fault =>
    (cell) => ({
      // Two ties of half a millimetre, around the second corner and around the fourth.
      lines: [
        {
          kind: 'cut',
          closed: true,
          fixed: true,
          points: windowIn(cell, width, high),
          dashes: [width - 0.25, 0.5, width + high - 0.5, 0.5, high - 0.25, 0],
        },
      ],
      expected: [one('tie-at-corner', null, 2)],
    }),
);

const idle = between(2.05, 18).map(
  (length): Fault =>
    ({ x0, height }) => ({
      lines: [open('crease', [x0 + 10, height / 2], [x0 + 10 + length, height / 2])],
      expected: [one('crease-idle', length)],
    }),
);

const clean = fc.constant<Fault>(() => ({ expected: [] }));

/** Faults of the crease on a panel's right: the last panel has none. */
const CREASE_FAULTS = [creaseShort, creaseOver, nearCut, pairNarrow];

const FAULTS = [
  ...[clean, doubled, onLine, opened, sharp, short, needless],
  ...[crossing, loose, tied, tiedAtCorner, idle],
];

/** What several places should give, by code. */
function addUp(list: readonly Expected[]): readonly Expected[] {
  const sums = new Map<string, Expected>();
  for (const item of list) {
    const { code, count, value } = item;
    const known = sums.get(code);
    const measure = MEASURES[code] ?? Math.max;
    const both = known === undefined || value === null ? value : measure(known.value!, value);
    sums.set(code, { code, count: count + (known?.count ?? 0), value: both });
  }
  return [...sums.values()].sort((p, q) => (p.code < q.code ? -1 : 1));
}

/** A row of panels, each with its fault. */
function buildCarton(widths: readonly number[], height: number, faults: readonly Fault[]): FaultyCarton {
  const lines: DieLine[] = [];
  const expected: Expected[] = [];
  const bottom: (Point | null)[] = [];
  let x0 = 0;
  for (const [place, width] of widths.entries()) {
    const x1 = x0 + width;
    const faulty = faults[place]!({ x0, x1, height });
    lines.push(...(faulty.lines ?? []));
    expected.push(...faulty.expected);
    bottom.push(...(faulty.bottom ?? []));
    if (place < widths.length - 1) lines.push(open('crease', [x1, 0], [x1, height - (faulty.short ?? 0)]));
    x0 = x1;
  }
  // From the top right corner over the top left one along the bottom, and up again.
  let run: Point[] = [
    [x0, 0],
    [0, 0],
    [0, height],
  ];
  const runs: Point[][] = [run];
  for (const point of bottom) {
    if (point !== null) run.push(point);
    else {
      run = [];
      runs.push(run);
    }
  }
  run.push([x0, height]);
  const outline = runs.map((points): DieLine => ({ kind: 'cut', points, closed: runs.length === 1 }));
  if (runs.length > 1) outline.push(open('cut', [x0, height], [x0, 0]));
  return { lines: [...lines, ...outline], expected: addUp(expected) };
}

/** Cartons of two to five panels, each with a fault or clean. */
export const faultyCarton: fc.Arbitrary<FaultyCarton> = fc
  .integer({ min: 2, max: 5 })
  .chain((count) =>
    fc.tuple(
      fc.array(fc.integer({ min: 40, max: 90 }), { minLength: count, maxLength: count }),
      fc.integer({ min: 50, max: 120 }),
      fc.tuple(
        ...Array.from({ length: count }, (_, place) =>
          fc.oneof(...FAULTS, ...(place < count - 1 ? CREASE_FAULTS : [])),
        ),
      ),
    ),
  )
  .map(([widths, height, faults]) => buildCarton(widths, height, faults));

/** Every kind of fault by itself, in the first of three panels. */
export const SINGLE_FAULTS: Readonly<Record<string, fc.Arbitrary<FaultyCarton>>> = Object.fromEntries(
  Object.entries({
    ...{ doubled, onLine, opened, creaseShort, creaseOver, nearCut, pairNarrow, sharp, short },
    ...{ needless, crossing, loose, tied, tiedAtCorner, idle, clean },
  }).map(([name, fault]) => [
    name,
    fc
      .tuple(fault, fc.integer({ min: 40, max: 90 }), fc.integer({ min: 50, max: 120 }))
      .map(([own, width, height]) =>
        buildCarton([width, 50, 60], height, [own, () => ({ expected: [] }), () => ({ expected: [] })]),
      ),
  ]),
);
