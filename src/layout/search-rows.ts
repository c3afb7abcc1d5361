// Interlocked rows: copies of one turn in a row, the rows of one turn or of two in turn, as near to each other as outlines let them.
import type { Box } from '../geometry/box.js';
import { firstFree, isForbidden, type Moves, type Stretch, stretchesAt } from './moves.js';

/** What rows are made of; positions are of box's top lefts. Grid units. */
export interface RowTask {
  /** Forbidden moves of a copy in the same row, first against first; of the second turn against the first; of the first against the second. */
  readonly same: Moves;
  readonly next: Moves;
  readonly back: Moves;
  /** Forbidden moves, second turn against itself. */
  readonly other: Moves;
  /** Where top lefts of either turn may lie. */
  readonly rooms: readonly [Box, Box];
}

/** A copy in rows: which of the two turns, and its top left. */
export interface RowCopy {
  readonly kind: 0 | 1;
  readonly x: number;
  readonly y: number;
}

/** Pitches and shifts that are tried at most. */
const MOST_TRIED = 300;
const MOST_PITCHES = 24;
const MOST_SHIFTS = 48;
/** Steps to the next row that are put together at most. */
const MOST_STEPS = 10;

/** A step from a row to the next: aside and down. */
interface Step {
  readonly shift: number;
  readonly down: number;
}

/** Whether copies of one turn can lie at all multiples of a pitch. */
function isPitch(same: Moves, pitch: number): boolean {
  for (let x = pitch; x < same.high; x += pitch) if (isForbidden(same, x, 0)) return false;
  return true;
}

/** A few of many numbers, first and last among them. */
function thin(values: readonly number[], most: number): readonly number[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, i) => values[Math.round((i * (values.length - 1)) / (most - 1))]!);
}

function sortUnique(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** Pitches worth a try: the smallest, and those at which corners come to lie on each other. */
function listPitches({ same, next, other }: RowTask): readonly number[] {
  const corners = [...same.corners, ...next.corners, ...other.corners].map(Math.abs);
  const width = Math.max(same.high, other.high);
  const doubled = corners.map((x) => Math.ceil(x / 2));
  const all = sortUnique([...corners, ...doubled, width]).filter((x) => x > width / 4 && x <= 2 * width);
  const tried = thin(all, MOST_TRIED);
  const fitting = tried.filter((x) => isPitch(same, x) && isPitch(other, x));
  return fitting.length <= MOST_PITCHES
    ? fitting
    : [...fitting.slice(0, MOST_PITCHES / 2), ...thin(fitting.slice(MOST_PITCHES / 2), MOST_PITCHES / 2)];
}

/** What a row one step down must not come into, copy by copy. */
function rowStretches(moves: Moves, shift: number, pitch: number): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const first = Math.ceil((moves.low - shift) / pitch);
  for (let k = first; shift + k * pitch < moves.high; k += 1) stretches.push(...stretchesAt(moves, shift + k * pitch));
  return stretches;
}

/** Steps to the next row: each shift with the least way down, and with the way below all. */
function listSteps(moves: Moves, pitch: number): readonly Step[] {
  const shifts = sortUnique(
    [0, Math.floor(pitch / 2), ...moves.corners].map((x) => ((Math.round(x) % pitch) + pitch) % pitch),
  );
  const steps = thin(shifts, MOST_SHIFTS).flatMap((shift): readonly Step[] => {
    const stretches = rowStretches(moves, shift, pitch);
    const down = firstFree(stretches, 1);
    const below = Math.max(down, ...stretches.map(([, high]) => high));
    return below === down
      ? [{ shift, down }]
      : [
          { shift, down },
          { shift, down: below },
        ];
  });
  return steps.toSorted((a, b) => a.down - b.down || a.shift - b.shift).slice(0, MOST_STEPS);
}

/** Whether rows that lie a step apart keep clear, all along. */
function keepsClear(moves: Moves, pitch: number, step: Step): boolean {
  const stretches = rowStretches(moves, step.shift, pitch);
  return firstFree(stretches, step.down) === step.down;
}

/** A pattern of rows: every second one a step further, of the other turn where there are two. */
interface Pattern {
  readonly pitch: number;
  readonly steps: readonly [Step, Step];
  readonly kinds: readonly [0 | 1, 0 | 1];
}

/** Rows further away than the next must keep clear too: the heights of two or three steps are looked at. */
function isClear(task: RowTask, { pitch, steps, kinds }: Pattern): boolean {
  const movesOf = (from: 0 | 1, to: 0 | 1): Moves => {
    if (from === to) return from === 0 ? task.same : task.other;
    return from === 0 ? task.next : task.back;
  };
  for (const start of [0, 1] as const) {
    let shift = 0;
    let down = 0;
    for (let row = 1; row <= 4; row += 1) {
      const step = steps[(start + row - 1) % 2]!;
      shift += step.shift;
      down += step.down;
      if (!keepsClear(movesOf(kinds[start]!, kinds[(start + row) % 2]!), pitch, { shift, down })) return false;
    }
  }
  return true;
}

/** How many positions a pitch apart lie in a room, from an offset; and the first of them. */
function fitRow(room: Box, offset: number, pitch: number): readonly [number, number] {
  const first = offset + Math.ceil((room.x0 - offset) / pitch) * pitch;
  return first > room.x1 ? [0, first] : [Math.floor((room.x1 - first) / pitch) + 1, first];
}

/** The rows of a pattern that fit, one of them with its first copy hard against the left. */
function layRows({ rooms }: RowTask, pattern: Pattern, flush: number, startWith: 0 | 1): readonly RowCopy[] {
  const { pitch, steps, kinds } = pattern;
  const rows: { readonly kind: 0 | 1; readonly y: number; readonly shift: number }[] = [];
  let y = rooms[kinds[startWith]!]!.y0;
  let shift = 0;
  // The room of the second turn may start lower; then all start lower.
  for (let row = 0; rows.length < 1000; row += 1) {
    const kind = kinds[(startWith + row) % 2]!;
    const room = rooms[kind];
    if (y > room.y1) break;
    if (y >= room.y0) rows.push({ kind, y, shift });
    const step = steps[(startWith + row) % 2]!;
    y += step.down;
    shift += step.shift;
  }
  const hard = rows[flush % Math.max(1, rows.length)];
  if (hard === undefined) return [];
  const base = rooms[hard.kind].x0 - hard.shift;
  return rows.flatMap(({ kind, y: top, shift: aside }) => {
    const [count, first] = fitRow(rooms[kind], base + aside, pitch);
    return Array.from({ length: count }, (_, i): RowCopy => ({ kind, x: first + i * pitch, y: top }));
  });
}

function boundingArea(copies: readonly RowCopy[]): number {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of copies) {
    x0 = Math.min(x0, x);
    x1 = Math.max(x1, x);
    y0 = Math.min(y0, y);
    y1 = Math.max(y1, y);
  }
  return (x1 - x0) * (y1 - y0);
}

/** Patterns at one pitch: rows of one turn, and rows of two turns. */
function listPatterns(task: RowTask, pitch: number, turns: 1 | 2): readonly Pattern[] {
  if (turns === 1)
    return listSteps(task.same, pitch).map((step) => ({ pitch, steps: [step, step], kinds: [0, 0] }) as const);
  const downs = listSteps(task.next, pitch);
  const backs = listSteps(task.back, pitch);
  return downs.flatMap((down) => {
    // Straight back to where the row before lies, which no corner needs to tell: every other row then stands in one column.
    const shift = (pitch - down.shift) % pitch;
    const home = { shift, down: firstFree(rowStretches(task.back, shift, pitch), 1) };
    return [home, ...backs].map((back) => ({ pitch, steps: [down, back], kinds: [0, 1] }) as const);
  });
}

/**
 * The most copies in interlocked rows; of equal numbers the one that takes least room.
 *
 * @param turns - Whether rows take turns: 1 for none, 2 for every other row of the second turn.
 */
export function searchRows(task: RowTask, turns: 1 | 2): readonly RowCopy[] {
  let best: readonly RowCopy[] = [];
  let bestArea = Infinity;
  for (const pitch of listPitches(task)) {
    for (const pattern of listPatterns(task, pitch, turns)) {
      let clear: boolean | null = null;
      for (const [flush, start] of [
        [0, 0],
        [1, 0],
        [0, 1],
        [1, 1],
      ] as const) {
        const copies = layRows(task, pattern, flush, start);
        if (copies.length < best.length) continue;
        const area = boundingArea(copies);
        if (copies.length === best.length && area >= bestArea) continue;
        clear ??= isClear(task, pattern);
        if (!clear) break;
        best = copies;
        bestArea = area;
      }
    }
  }
  return best;
}
