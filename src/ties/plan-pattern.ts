// Cut and tie by turns along a line: a whole number of cut stretches, from end to end.
import type { Stretch } from '../geometry/write-stretch.js';

/** What a pattern is made of. Lengths in px. */
export interface Pattern {
  readonly cut: number;
  readonly tie: number;
  readonly startsWith: 'cut' | 'tie';
  readonly endsWith: 'cut' | 'tie';
}

/** Ties of a line. */
export interface PlannedTies {
  readonly ties: readonly Stretch[];
  /** Factor on cut and tie with the greatest effect; 1 where there is none. */
  readonly factor: number;
}

/** A stretch of a line that takes a pattern of its own, and what it starts and ends with. */
interface Part {
  readonly from: number;
  readonly to: number;
  readonly startTie: boolean;
  readonly endTie: boolean;
}

const NONE: PlannedTies = { ties: [], factor: 1 };

/** How much a factor changes, up or down. */
function weigh(factor: number): number {
  return Math.abs(Math.log(factor));
}

/** The number of cut stretches with which the pattern has to be stretched or pressed least. */
function chooseCount(length: number, { cut, tie }: Pattern, extra: number): number {
  const guess = (length - extra * tie) / (cut + tie);
  const factorOf = (count: number): number => length / (count * cut + (count + extra) * tie);
  const low = Math.max(1, Math.floor(guess));
  return weigh(factorOf(low)) <= weigh(factorOf(low + 1)) ? low : low + 1;
}

function fillPart(part: Part, pattern: Pattern): PlannedTies {
  const { cut, tie } = pattern;
  const length = part.to - part.from;
  const extra = Number(part.startTie) + Number(part.endTie) - 1;
  // Too short for a cut between two ties, but long enough for one: it stands in the middle.
  if (part.startTie && part.endTie && length < tie + (cut + tie) / 2) {
    const middle = (part.from + part.to) / 2;
    return length < tie ? NONE : { ties: [[middle - tie / 2, middle + tie / 2]], factor: 1 };
  }
  const count = chooseCount(length, pattern, extra);
  const ties = count + extra;
  const factor = length / (count * cut + ties * tie);
  // A line that is shorter than one cut and its ties is cut through.
  if (ties <= 0 || factor < 0.5) return NONE;
  const first = part.from + (part.startTie ? 0 : cut * factor);
  const places = Array.from({ length: ties }, (_, i) => first + i * (cut + tie) * factor);
  return { ties: places.map((place) => [place, place + tie * factor]), factor };
}

/** A closed line without corners: its start lies in the middle of a cut. */
function fillRound(length: number, { cut, tie }: Pattern): PlannedTies {
  const low = Math.max(1, Math.floor(length / (cut + tie)));
  const factorOf = (count: number): number => length / (count * (cut + tie));
  const count = weigh(factorOf(low)) <= weigh(factorOf(low + 1)) ? low : low + 1;
  const factor = factorOf(count);
  if (factor < 0.5) return NONE;
  const step = length / count;
  const half = (cut * factor) / 2;
  return { ties: Array.from({ length: count }, (_, i) => [half + i * step, half + i * step + tie * factor]), factor };
}

/** What zones leave of a line. */
function listParts(length: number, closed: boolean, zones: readonly Stretch[], pattern: Pattern): readonly Part[] {
  const parts: Part[] = [];
  let at = 0;
  for (const [from, to] of [...zones, [length, length] as const]) {
    if (from > at) {
      const startTie = at > 0 || pattern.startsWith === 'tie';
      const endTie = from < length || pattern.endsWith === 'tie';
      parts.push({ from: at, to: from, startTie, endTie });
    }
    at = Math.max(at, to);
  }
  if (!closed) return parts;
  // The part over the start of a closed line is one.
  const [first, last] = [parts[0], parts.at(-1)];
  const over = first !== undefined && last !== undefined && first.from === 0 && last.to === length;
  const joined = !over ? parts : [...parts.slice(1, -1), { from: last.from, to: length + first.to }];
  return joined.map(({ from, to }) => ({ from, to, startTie: true, endTie: true }));
}

/**
 * Ties of a pattern along a line.
 *
 * A zone is cut through; the pattern between two zones begins and ends with a tie. At the ends of an open line it begins and ends
 * as asked.
 *
 * @param zones - In order, where no tie may stand.
 * @returns Ties as lengths along the line; on a closed one the last may go on over its start.
 */
export function planPattern(length: number, closed: boolean, zones: readonly Stretch[], pattern: Pattern): PlannedTies {
  if (closed && zones.length === 0) return fillRound(length, pattern);
  const filled = listParts(length, closed, zones, pattern).map((part) => fillPart(part, pattern));
  const factor = filled.reduce((worst, part) => (weigh(part.factor) > weigh(worst) ? part.factor : worst), 1);
  return { ties: filled.flatMap(({ ties }) => ties), factor };
}
