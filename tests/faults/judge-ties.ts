// A judge of ties that knows the drawing by closed forms and the files by their text alone; no code of the program is used here.
import { distance, lengthOf, type Point, readPath } from '../unit/run/recompute-pass.js';

/** What the manifest says of the ties of a pass. */
export interface ToldTies {
  readonly pass: string;
  readonly ties: number;
  readonly lineMm: number;
  readonly tiesMm: number;
  readonly longestFreeMm: number;
  readonly stretch: number;
}

/** A written stretch. */
interface Piece {
  readonly length: number;
  readonly points: readonly Point[];
}

const NEAR = 1e-3;

function near(a: number, b: number, by: number = NEAR): boolean {
  return Math.abs(a - b) <= by;
}

function readPieces(text: string, id: string): readonly Piece[] {
  const d = new RegExp(`<(?:path|circle) id="${id}"[^>]*? d="([^"]*)"|d="([^"]*)"[^>]*? id="${id}"`).exec(text);
  if (d === null) return [];
  return readPath(d[1] ?? d[2]!).map(({ segments }) => ({
    length: segments.reduce((sum, segment) => sum + lengthOf(segment), 0),
    points: segments.flat(),
  }));
}

function leastDistance(pieces: readonly Piece[], places: readonly Point[]): number {
  return Math.min(
    Infinity,
    ...pieces.flatMap(({ points }) => points.flatMap((p) => places.map((q) => distance(p, q)))),
  );
}

/** Every end of a tie is the end of a cut, and the other way round but for the ends of an open line. */
function meets(cuts: readonly Piece[], ties: readonly Piece[]): boolean {
  const ends = (pieces: readonly Piece[]): readonly Point[] =>
    pieces.flatMap(({ points }) => [points[0]!, points.at(-1)!]);
  return ends(ties).every((p) => ends(cuts).some((q) => distance(p, q) < NEAR));
}

/** Length of a quadratic curve by Simpson's rule over its speed. */
function quadraticLength([a, b, c]: readonly [Point, Point, Point]): number {
  const speed = (t: number): number =>
    Math.hypot(...([0, 1] as const).map((k) => 2 * (1 - t) * (b[k] - a[k]) + 2 * t * (c[k] - b[k])));
  const n = 2000;
  let sum = speed(0) + speed(1);
  for (let i = 1; i < n; i += 1) sum += (i % 2 === 1 ? 4 : 2) * speed(i / n);
  return sum / (3 * n);
}

/** What is held: lengths by closed form, corners, the number of ties and the most that one free stretch may be longer than the mean. */
const HELD: readonly {
  readonly ids: readonly string[];
  readonly length: number;
  readonly corners: readonly Point[];
  readonly ties: number;
  readonly slack: number;
}[] = [
  {
    ids: ['board'],
    length: 680,
    corners: [
      [30, 30],
      [230, 30],
      [230, 170],
      [30, 170],
    ],
    ties: 12,
    slack: 1.15,
  },
  { ids: ['small'], length: 12 * Math.PI, corners: [], ties: 1, slack: 1.01 },
  { ids: ['large'], length: 60 * Math.PI, corners: [], ties: 4, slack: 1.01 },
  // Its corners are arcs of 2 mm, where it bends too much.
  { ids: ['soft'], length: 84 + 4 * Math.PI, corners: [], ties: 3, slack: 1.2 },
  {
    ids: ['square'],
    length: 76,
    corners: [
      [200, 130],
      [219, 130],
      [219, 149],
      [200, 149],
    ],
    ties: 3,
    slack: 1.1,
  },
  // It starts in the middle of a side, where its tie belongs.
  {
    ids: ['wedge'],
    length: 14 + 2 * Math.hypot(7, 12),
    corners: [
      [60, 152],
      [74, 152],
      [67, 164],
    ],
    ties: 3,
    slack: 1.02,
  },
  { ids: ['slit'], length: 10, corners: [], ties: 0, slack: 1.01 },
  {
    ids: ['part-one', 'part-two'],
    length: 20 + 48 + Math.hypot(48, 8) + 12,
    corners: [
      [70, 84],
      [70, 104],
      [118, 104],
      [118, 92],
    ],
    ties: 3,
    slack: 1.01,
  },
];

const CREASE_ENDS: readonly Point[] = [
  [30, 72],
  [120, 72],
];

/** Numbers of the ticket that the judge knows, mm. */
export const HOLD = {
  tieMm: 0.5,
  freeMm: 60,
  leastPerPiece: 3,
  cornerClearMm: 3,
  creaseEndClearMm: 3,
  smallHoleMm: 13,
} as const;
/** Of the pattern. */
export const PATTERN = { cutMm: 6, tieMm: 1 } as const;

/** What is wrong with the held pass, in words; empty where nothing is. */
export function judgeHeld(cut: string, tied: string, told: ToldTies): readonly string[] {
  const faults: string[] = [];
  let [ties, free, sum] = [0, 0, 0];
  for (const held of HELD) {
    const own = held.ids.flatMap((id) => readPieces(tied, id));
    const cuts = held.ids.flatMap((id) => readPieces(cut, id));
    const name = held.ids.join(' and ');
    const all = [...cuts, ...own].reduce((total, { length }) => total + length, 0);
    if (!near(all, held.length)) faults.push(`${name}: ${all} mm are left of ${held.length}`);
    if (own.length !== held.ties) faults.push(`${name}: ${own.length} ties, not ${held.ties}`);
    if (!own.every(({ length }) => near(length, HOLD.tieMm))) faults.push(`${name}: a tie of another length`);
    if (leastDistance(own, held.corners) < HOLD.cornerClearMm - NEAR) faults.push(`${name}: a tie at a corner`);
    if (leastDistance(own, CREASE_ENDS) < HOLD.creaseEndClearMm - NEAR)
      faults.push(`${name}: a tie at the end of a crease`);
    if (!meets(cuts, own)) faults.push(`${name}: a tie that is not between two cuts`);
    if (
      held.ids[0] === 'soft' &&
      own.some(({ points }) => !near(distance(points[0]!, points.at(-1)!), HOLD.tieMm, 1e-6))
    )
      faults.push(`${name}: a tie in a bend`);
    ties += own.length;
    sum += own.reduce((total, { length }) => total + length, 0);
    if (held.ties > 0) {
      const longest = held.corners.length > 0 ? longestGap(own, held.corners) : Math.max(...cuts.map(joinOver(cuts)));
      const mean = held.length / held.ties - HOLD.tieMm;
      if (longest > mean * held.slack) faults.push(`${name}: ${longest} mm free, ${mean} in the mean`);
      free = Math.max(free, longest);
    }
  }
  if (told.ties !== ties) faults.push(`told ${told.ties} ties of ${ties}`);
  if (!near(told.tiesMm, sum, 0.01)) faults.push(`told ${told.tiesMm} mm of ties of ${sum}`);
  const length = HELD.reduce((total, held) => total + held.length, 0);
  if (!near(told.lineMm, length, 0.01)) faults.push(`told ${told.lineMm} mm of lines of ${length}`);
  if (!near(told.longestFreeMm, free, 0.01)) faults.push(`told ${told.longestFreeMm} mm free of ${free}`);
  return faults;
}

/** The longest way between two ties around an outline of straight sides, by where their middles lie along it. */
function longestGap(ties: readonly Piece[], corners: readonly Point[]): number {
  let length = 0;
  const places: number[] = [];
  corners.forEach((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    const side = distance(corner, next);
    for (const { points } of ties) {
      const middle: Point = [(points[0]![0] + points.at(-1)![0]) / 2, (points[0]![1] + points.at(-1)![1]) / 2];
      const along = distance(corner, middle);
      if (Math.abs(along + distance(middle, next) - side) < NEAR) places.push(length + along);
    }
    length += side;
  });
  places.sort((a, b) => a - b);
  return Math.max(...places.map((place, i) => (places[i + 1] ?? places[0]! + length) - place)) - HOLD.tieMm;
}

/** The length of a cut with the one that goes on where it ends. */
function joinOver(cuts: readonly Piece[]): (cut: Piece) => number {
  return (cut) => {
    const next = cuts.find((other) => other !== cut && distance(cut.points.at(-1)!, other.points[0]!) < NEAR);
    return cut.length + (next?.length ?? 0);
  };
}

/** Lines of the pattern without corners, by closed form. */
const LINES: readonly { readonly id: string; readonly length: number }[] = [
  { id: 'straight', length: 71.5 },
  { id: 'half', length: 40 * Math.PI },
  {
    id: 'bowed',
    length: quadraticLength([
      [150, 140],
      [190, 110],
      [215, 160],
    ]),
  },
];

/** The number of cuts, one more than ties, with which the pattern changes least. */
function countCuts(length: number): number {
  const weigh = (n: number): number => Math.abs(Math.log(length / (n * PATTERN.cutMm + (n - 1) * PATTERN.tieMm)));
  return Array.from({ length: 40 }, (_, i) => i + 1).reduce((best, n) => (weigh(n) < weigh(best) ? n : best));
}

/** What is wrong with the pass in a pattern, in words. */
export function judgePattern(cut: string, tied: string, told: ToldTies): readonly string[] {
  const faults: string[] = [];
  let worst = 0;
  let [count, free] = [0, 0];
  for (const { id, length } of LINES) {
    const [cuts, ties] = [readPieces(cut, id), readPieces(tied, id)];
    const n = countCuts(length);
    const factor = length / (n * PATTERN.cutMm + (n - 1) * PATTERN.tieMm);
    if (Math.abs(Math.log(factor)) > Math.abs(Math.log(1 + worst))) worst = factor - 1;
    if (cuts.length !== n || ties.length !== n - 1)
      faults.push(`${id}: ${cuts.length} cuts and ${ties.length} ties, not ${n}`);
    if (!cuts.every((piece) => near(piece.length, PATTERN.cutMm * factor)))
      faults.push(`${id}: a cut of another length`);
    if (!ties.every((piece) => near(piece.length, PATTERN.tieMm * factor)))
      faults.push(`${id}: a tie of another length`);
    if (!meets(cuts, ties)) faults.push(`${id}: a tie that is not between two cuts`);
    count += ties.length;
    free = Math.max(free, ...cuts.map((piece) => piece.length));
  }
  // 30 mm to a corner, 7 beyond: the corner is cut through by at least half a cut to either side.
  const bent = readPieces(tied, 'bent');
  if (leastDistance(bent, [[45, 150]]) < PATTERN.cutMm / 2 - NEAR) faults.push('bent: a tie at the corner');
  const rest = [...readPieces(cut, 'bent'), ...bent];
  if (
    !near(
      rest.reduce((sum, piece) => sum + piece.length, 0),
      37,
    )
  )
    faults.push('bent: a part is lost');
  count += bent.length;
  free = Math.max(free, ...readPieces(cut, 'bent').map((piece) => piece.length));
  if (told.ties !== count) faults.push(`told ${told.ties} ties of ${count}`);
  if (Math.abs(told.stretch) < Math.abs(worst) - 1e-6)
    faults.push(`told a stretch of ${told.stretch}, there is ${worst}`);
  if (!near(told.longestFreeMm, free, 0.01)) faults.push(`told ${told.longestFreeMm} mm free of ${free}`);
  return faults;
}
