// Ties of all lines of a pass: the lines joined to outlines, what keeps ties away, and where they come to stand.
import { type Chain, chainLines } from '../geometry/chain-runs.js';
import type { Matrix } from '../geometry/matrix.js';
import { lookAt, type MeasuredRun } from '../geometry/path-stretch.js';
import { listCorners } from '../geometry/run-corners.js';
import type { Stretch } from '../geometry/write-stretch.js';
import { joinZones, listBends, spreadPlaces, type ZoneSettings } from './line-zones.js';
import { longestFree, planHolding } from './plan-holding.js';
import { planPattern } from './plan-pattern.js';

/** One run of the pass with the matrix to the artboard. */
export interface TieRun {
  readonly run: MeasuredRun;
  readonly matrix: Matrix;
}

/** What is asked for. Lengths in px. */
export interface TieSettings extends ZoneSettings {
  readonly mode: 'pattern' | 'hold';
  readonly cut: number;
  readonly tie: number;
  readonly startsWith: 'cut' | 'tie';
  readonly endsWith: 'cut' | 'tie';
  readonly leastPerPiece: number;
  readonly free: number;
  readonly smallHole: number;
  readonly smallHoleTies: number;
}

/** A line of the pattern, or an outline that is held. */
export interface TiedLine {
  /** The runs that make it. */
  readonly runs: readonly number[];
  readonly ties: number;
  /** How many were wanted. */
  readonly wanted: number;
  readonly longestFree: number;
  /** Factor on the pattern. */
  readonly factor: number;
}

/** The ties of a pass. */
export interface TiePlan {
  /** By run: ties as lengths along it, in order. */
  readonly ties: readonly (readonly Stretch[])[];
  readonly lines: readonly TiedLine[];
}

/** Ends of lines that miss each other by less are joined. @unit px */
const SNAP_PX = 0.2;

/** A chain with the place of each of its runs along it. */
interface Contour {
  readonly chain: Chain;
  readonly starts: readonly number[];
  readonly length: number;
}

function endsOf({ run, matrix }: TieRun): { x0: number; y0: number; x1: number; y1: number } {
  const first = lookAt(run.segments[0]!, matrix, 0);
  const last = lookAt(run.segments.at(-1)!, matrix, 1);
  return { x0: first.x, y0: first.y, x1: last.x, y1: last.y };
}

/** How many other ends lie where each end of a line lies. */
function countMeeting(ends: readonly ReturnType<typeof endsOf>[]): readonly (readonly [number, number])[] {
  const all = ends.flatMap(({ x0, y0, x1, y1 }) => [
    [x0, y0],
    [x1, y1],
  ]);
  const count = (x: number, y: number): number =>
    all.filter(([u, v]) => Math.abs(u! - x) <= SNAP_PX && Math.hypot(u! - x, v! - y) <= SNAP_PX).length - 1;
  return ends.map(({ x0, y0, x1, y1 }) => [count(x0, y0), count(x1, y1)]);
}

/** Outlines: closed runs, and open ones joined to closed chains or to chains that end in other lines. Slits are none. */
function listContours(runs: readonly TieRun[]): readonly Contour[] {
  const closed = runs.flatMap(({ run }, i): Chain[] =>
    run.closed ? [{ links: [{ line: i, reversed: false }], closed: true }] : [],
  );
  const open = runs.flatMap(({ run }, i) => (run.closed ? [] : [i]));
  const ends = open.map((i) => endsOf(runs[i]!));
  const meeting = countMeeting(ends);
  const chains = chainLines(ends, SNAP_PX).filter(({ links, closed: isClosed }) => {
    const [first, last] = [links[0]!, links.at(-1)!];
    const isHeld = meeting[first.line]![first.reversed ? 1 : 0]! > 0 && meeting[last.line]![last.reversed ? 0 : 1]! > 0;
    return isClosed || isHeld;
  });
  const joined = chains.map((chain) => ({
    ...chain,
    links: chain.links.map(({ line, reversed }) => ({ line: open[line]!, reversed })),
  }));
  return [...closed, ...joined].map((chain) => {
    const starts: number[] = [];
    let length = 0;
    for (const { line } of chain.links) {
      starts.push(length);
      length += runs[line]!.run.length;
    }
    return { chain, starts, length };
  });
}

/** Zones of a run, corners and bends. */
function zonesOf({ run, matrix }: TieRun, settings: ZoneSettings, cornerClear: number): readonly Stretch[] {
  return [...spreadPlaces(listCorners(run, matrix), cornerClear), ...listBends(run, matrix, settings)];
}

/** Greatest extent of an outline either way. */
function extentOf(runs: readonly TieRun[], { chain }: Contour): number {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { line } of chain.links) {
    const { run, matrix } = runs[line]!;
    for (const segment of run.segments) {
      for (let step = 0; step <= 16; step += 1) {
        const { x, y } = lookAt(segment, matrix, step / 16);
        [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
      }
    }
  }
  return Math.max(x1 - x0, y1 - y0);
}

/** Ties of an outline as ties of its runs. */
function shareTies(runs: readonly TieRun[], contour: Contour, ties: readonly Stretch[], out: Stretch[][]): void {
  const { chain, starts, length } = contour;
  if (chain.links.length === 1 && chain.closed) {
    const { line } = chain.links[0]!;
    out[line]!.push(...ties.map(([from, to]): Stretch => (from < 0 ? [from + length, to + length] : [from, to])));
    return;
  }
  for (const [from, to] of ties) {
    const middle = ((((from + to) / 2) % length) + length) % length;
    const at = starts.findLastIndex((start) => start <= middle);
    const { line, reversed } = chain.links[at]!;
    const local = middle - starts[at]!;
    const place = reversed ? runs[line]!.run.length - local : local;
    out[line]!.push([place - (to - from) / 2, place + (to - from) / 2]);
  }
}

function planHeld(runs: readonly TieRun[], settings: TieSettings, out: Stretch[][]): readonly TiedLine[] {
  return listContours(runs).map((contour) => {
    const { chain, starts, length } = contour;
    const zones = chain.links.flatMap(({ line, reversed }, i) =>
      zonesOf(runs[line]!, settings, settings.cornerClear).map(([from, to]): Stretch => {
        const own = runs[line]!.run.length;
        const [a, b] = reversed ? [own - to, own - from] : [from, to];
        return [starts[i]! + a, starts[i]! + b];
      }),
    );
    const isSmall = extentOf(runs, contour) <= settings.smallHole;
    const wanted = isSmall
      ? settings.smallHoleTies
      : Math.max(settings.leastPerPiece, Math.ceil(length / (settings.free + settings.tie)));
    const { closed } = chain;
    const joined = joinZones(zones, length, closed);
    const ties = planHolding({ length, closed, zones: joined, tie: settings.tie, count: wanted });
    shareTies(runs, contour, ties, out);
    const lines = chain.links.map(({ line }) => line);
    return { runs: lines, ties: ties.length, wanted, longestFree: longestFree(length, closed, ties), factor: 1 };
  });
}

function planPatterns(runs: readonly TieRun[], settings: TieSettings, out: Stretch[][]): readonly TiedLine[] {
  return runs.map((tied, i) => {
    const { run } = tied;
    const clear = Math.max(settings.cornerClear, settings.cut / 2);
    // The ends of an open line are no corners: there the pattern starts and ends as asked.
    const corners = listCorners(run, tied.matrix).filter((at) => run.closed || (at > 0 && at < run.length));
    const near = { ...settings, creaseEndClear: settings.creaseEndClear };
    const zones = joinZones(
      [...spreadPlaces(corners, clear), ...listBends(run, tied.matrix, near)],
      run.length,
      run.closed,
    );
    const { ties, factor } = planPattern(run.length, run.closed, zones, settings);
    out[i]!.push(...ties);
    return {
      runs: [i],
      ties: ties.length,
      wanted: 1,
      longestFree: longestFree(run.length, run.closed, ties),
      factor,
    };
  });
}

/** Plans the ties of a pass. */
export function planTies(runs: readonly TieRun[], settings: TieSettings): TiePlan {
  const ties: Stretch[][] = runs.map(() => []);
  const lines = settings.mode === 'hold' ? planHeld(runs, settings, ties) : planPatterns(runs, settings, ties);
  return { ties: ties.map((list) => list.sort((a, b) => a[0] - b[0])), lines };
}

/** What ties leave of a run. */
export function cutStretches(run: MeasuredRun, ties: readonly Stretch[]): readonly Stretch[] {
  if (ties.length === 0) return [[0, run.length]];
  const cuts = ties.slice(1).map(([from], i): Stretch => [ties[i]![1], from]);
  const [first, last] = [ties[0]!, ties.at(-1)!];
  if (run.closed) cuts.push([last[1], first[0] + run.length]);
  else {
    cuts.unshift([0, first[0]]);
    cuts.push([last[1], run.length]);
  }
  return cuts
    .map(([from, to]): Stretch => (from >= run.length ? [from - run.length, to - run.length] : [from, to]))
    .filter(([from, to]) => to - from > 1e-9);
}
