// A judge of the order within a pass that knows the drawing and the text of the file alone; no code of the program is used here.
import { distance, lengthOf, type Point, readPath } from '../unit/run/recompute-pass.js';

/** What the manifest says of the order. */
export interface ToldOrder {
  readonly lineMm: number;
  readonly travelBeforeMm: number;
  readonly travelAfterMm: number;
  readonly liftsAfter: number;
}

interface Line {
  readonly id: string;
  readonly text: string;
  readonly start: Point;
  readonly end: Point;
  readonly length: number;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

const NEAR = 1e-3;

/** The first comes before the second: what is inside before what is around it, creases before cuts. */
const RULES: readonly (readonly [string, string])[] = [
  ['inside', 'window'],
  ...['window', 'hole', 'slit'].flatMap(
    (inner) =>
      [
        [inner, 'left'],
        [inner, 'right'],
      ] as const,
  ),
  ...['left', 'right', 'window', 'inside', 'hole', 'slit'].map((cut) => ['fold', cut] as const),
];

function readLines(text: string): readonly Line[] {
  return [...text.matchAll(/<path id="([\w-]+)"[^>]*? d="([^"]*)"[^>]*\/>/g)].map(([whole, id, d]) => {
    const [{ segments, closed }, ...more] = readPath(d!) as [ReturnType<typeof readPath>[number]];
    if (more.length > 0) throw new Error(`${id} has several parts`);
    const points = segments.flat();
    const start = points[0]!;
    const length = segments.reduce((sum, segment) => sum + lengthOf(segment), 0);
    return { id: id!, text: whole, start, end: closed ? start : points.at(-1)!, length, points, closed };
  });
}

/** The way of the lifted tool from the top left. */
function travel(lines: readonly Line[]): number {
  return lines.reduce((sum, { start }, i) => sum + distance(i === 0 ? [0, 0] : lines[i - 1]!.end, start), 0);
}

function keepsRules(lines: readonly Line[]): boolean {
  const place = new Map(lines.map(({ id }, i) => [id, i]));
  return RULES.every(([first, then]) => place.get(first)! < place.get(then)!);
}

/** Every order of some lines. */
function permute(lines: readonly Line[]): readonly (readonly Line[])[] {
  if (lines.length < 2) return [lines];
  return lines.flatMap((line) => permute(lines.filter((other) => other !== line)).map((rest) => [line, ...rest]));
}

/** The way of the best order there is, by trying all of them. */
function shortest(lines: readonly Line[]): number {
  return Math.min(...permute(lines).filter(keepsRules).map(travel));
}

/** Where a line may be entered and left: an open one at either end, a closed one anywhere but near a corner. */
function listEntries(line: Line): readonly (readonly [Point, Point])[] {
  const [first, last] = [line.points[0]!, line.points.at(-1)!];
  if (!line.closed) {
    return [
      [first, last],
      [last, first],
    ];
  }
  return line.points.slice(1).flatMap((to, i) => {
    const from = line.points[i]!;
    const length = distance(from, to);
    const steps = Math.floor((length - 2) / 0.25);
    return Array.from({ length: Math.max(0, steps + 1) }, (_, step): readonly [Point, Point] => {
      const t = (1 + step * 0.25) / length;
      const place: Point = [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
      return [place, place];
    });
  });
}

/** The shortest way through lines in their order, each started as is best. */
function shortestStarts(lines: readonly Line[]): number {
  let ways: readonly { readonly at: Point; readonly way: number }[] = [{ at: [0, 0], way: 0 }];
  for (const line of lines) {
    ways = listEntries(line).map(([entry, exit]) => ({
      at: exit,
      way: Math.min(...ways.map(({ at, way }) => way + distance(at, entry))),
    }));
  }
  return Math.min(...ways.map(({ way }) => way));
}

/** The greatest distance of the points of one line from the chords of another. */
function leave(one: Line, other: Line): number {
  const chords = other.closed ? [...other.points, other.points[0]!] : other.points;
  return Math.max(
    ...one.points.map(([x, y]) =>
      Math.min(
        ...chords.slice(1).map(([bx, by], i) => {
          const [ax, ay] = chords[i]!;
          const square = (bx - ax) ** 2 + (by - ay) ** 2;
          const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square)) : 0;
          return Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y);
        }),
      ),
    ),
  );
}

function judgeRestarts(before: readonly Line[], after: readonly Line[]): readonly string[] {
  const faults: string[] = [];
  for (const line of after) {
    const plain = before.find(({ id }) => id === line.id)!;
    if (line.text === plain.text) continue;
    if (line.closed !== plain.closed || Math.abs(line.length - plain.length) > NEAR)
      faults.push(`${line.id}: another length`);
    if (leave(line, plain) > NEAR || leave(plain, line) > NEAR) faults.push(`${line.id}: another line`);
    if (line.closed && plain.points.some((corner) => distance(corner, line.start) < 1 - NEAR))
      faults.push(`${line.id}: starts at a corner`);
  }
  return faults;
}

/** What is wrong with the order of a pass, in words; `plain` is the pass as it was drawn. */
export function judgeOrder(plain: string, written: string, told: ToldOrder, mayRestart: boolean): readonly string[] {
  const [before, after] = [readLines(plain), readLines(written)];
  const faults: string[] = [];
  const names = (lines: readonly Line[]): string =>
    lines
      .map(({ id }) => id)
      .sort()
      .join(' ');
  if (names(before) !== names(after)) return [`${names(after)} instead of ${names(before)}`];
  if (!keepsRules(after)) faults.push(`out of order: ${after.map(({ id }) => id).join(' ')}`);
  if (mayRestart) faults.push(...judgeRestarts(before, after));
  else if (before.some(({ text }) => !after.some((line) => line.text === text))) faults.push('an element changed');
  const [was, is] = [travel(before), travel(after)];
  const plainLines = after.map(({ id }) => before.find((line) => line.id === id)!);
  // Starts are tried every 4 mm or so.
  const best = mayRestart ? shortestStarts(plainLines) + 2 : shortest(before);
  if (is > best + NEAR) faults.push(`a way of ${is} mm, where ${best} would do`);
  if (Math.abs(told.travelBeforeMm - was) > NEAR) faults.push(`told ${told.travelBeforeMm} mm before of ${was}`);
  if (Math.abs(told.travelAfterMm - is) > NEAR) faults.push(`told ${told.travelAfterMm} mm after of ${is}`);
  const length = before.reduce((sum, line) => sum + line.length, 0);
  if (Math.abs(told.lineMm - length) > 0.01) faults.push(`told ${told.lineMm} mm of lines of ${length}`);
  const lifts = after.filter((line, i) => i === 0 || distance(after[i - 1]!.end, line.start) > NEAR).length;
  if (told.liftsAfter !== lifts) faults.push(`told ${told.liftsAfter} lifts of ${lifts}`);
  return faults;
}
