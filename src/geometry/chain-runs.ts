// Lines joined where exactly two of them end.

/** The two ends of a line. */
export interface Ends {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A line in a chain. */
export interface Link {
  /** Index of the line. */
  readonly line: number;
  /** Whether the chain runs along it from its end to its start. */
  readonly reversed: boolean;
}

/** Lines one after the other. */
export interface Chain {
  readonly links: readonly Link[];
  readonly closed: boolean;
}

/** Ends that are one place have one number; an end has the index `2 * line`, or one more for its second. */
function numberEnds(lines: readonly Ends[], tolerance: number): Int32Array {
  const numbers = new Int32Array(2 * lines.length).fill(-1);
  const cells = new Map<string, number[]>();
  const xs = Float64Array.from(lines.flatMap((line) => [line.x0, line.x1]));
  const ys = Float64Array.from(lines.flatMap((line) => [line.y0, line.y1]));
  const cell = (value: number): number => Math.floor(value / tolerance);
  for (let end = 0; end < xs.length; end += 1) {
    const [cx, cy] = [cell(xs[end]!), cell(ys[end]!)];
    for (let i = 0; i < 9 && numbers[end]! < 0; i += 1) {
      const near = cells.get(`${cx - 1 + (i % 3)} ${cy - 1 + Math.floor(i / 3)}`) ?? [];
      const same = near.find((other) => Math.hypot(xs[end]! - xs[other]!, ys[end]! - ys[other]!) <= tolerance);
      if (same !== undefined) numbers[end] = numbers[same]!;
    }
    if (numbers[end]! < 0) numbers[end] = end;
    const key = `${cx} ${cy}`;
    const list = cells.get(key);
    if (list === undefined) cells.set(key, [end]);
    else list.push(end);
  }
  return numbers;
}

/**
 * Chains of lines: each line is in one of them. Where three ends meet, or one ends alone, chains end.
 *
 * @param tolerance - Ends nearer than this are one place.
 * @returns In the order of their first lines, which keep their direction where the chain is closed.
 */
export function chainLines(lines: readonly Ends[], tolerance: number): readonly Chain[] {
  const numbers = numberEnds(lines, tolerance);
  const meeting = new Map<number, number[]>();
  numbers.forEach((number, end) => {
    const ends = meeting.get(number);
    if (ends === undefined) meeting.set(number, [end]);
    else ends.push(end);
  });
  /** The end that a chain goes on from, behind another; -1 where it stops. */
  const goOn = (end: number): number => {
    const ends = meeting.get(numbers[end]!)!;
    if (ends.length !== 2) return -1;
    return ends[0] === end ? ends[1]! : ends[0]!;
  };
  const used = new Uint8Array(lines.length);
  const chains: Chain[] = [];
  for (let line = 0; line < lines.length; line += 1) {
    if (used[line] !== 0) continue;
    // Back to where the chain starts, or once round.
    let start = 2 * line;
    for (let end = goOn(start); end >= 0; end = goOn(start)) {
      start = end ^ 1;
      if (start === 2 * line) break;
    }
    const links: Link[] = [];
    let at = start;
    while (at >= 0 && used[at >> 1] === 0) {
      used[at >> 1] = 1;
      links.push({ line: at >> 1, reversed: (at & 1) === 1 });
      at = goOn(at ^ 1);
    }
    chains.push({ links, closed: at === start && at >= 0 });
  }
  return chains;
}
