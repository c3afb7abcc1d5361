// Lines of a pass written from other start points, or backwards, so that the way between them is shorter; read again.
import type { Matrix } from '../geometry/matrix.js';
import { lookAt, type MeasuredRun, parameterAt } from '../geometry/path-stretch.js';
import { reverseRun } from '../geometry/reverse-run.js';
import { listCorners } from '../geometry/run-corners.js';
import { PX_PER_MM } from '../geometry/units.js';
import { type Stretch, writeStretches } from '../geometry/write-stretch.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import type { Stayed } from '../model/sequence.js';
import { shapeRuns } from '../resolve/shape-outline.js';
import { chooseStarts, type StartChoice } from '../sequence/choose-starts.js';
import { entryOf, exitOf, type Spot } from '../sequence/travel.js';
import type { Source } from '../source/source.js';
import { judgeTies, type ShapeClaim } from './judge-ties.js';
import type { WorkList } from './list-work.js';
import { writeLines } from './write-ties.js';

/** Places around a closed line that are tried as its start; fewer where lines are many, and the way from one to the next is short. */
const TRIED = 48;
const TRIED_OF_MANY = 12;
const MANY = 500;
/** A closed line starts no nearer to a corner than this: the knife comes down on a straight stretch. */
const CORNER_CLEAR_PX: number = 1 * PX_PER_MM;

const NOT_SAME = 'style rules would see it otherwise once it is written as a path';

/** A line as it may be written: the run, maybe reversed, and the stretch of it that is the whole. */
interface Writing extends StartChoice {
  readonly run: MeasuredRun;
  readonly stretch: Stretch;
}

/** A line and all the ways to write it; none but the first where it must stay. */
interface Restartable {
  readonly item: number;
  readonly shape: Shape;
  readonly writings: readonly Writing[];
}

/** The pass with other starts. */
export interface RestartedPass {
  readonly bytes: Uint8Array;
  /** Items that are written otherwise. */
  readonly items: readonly number[];
  /** Lines that keep their start whatever would be gained, and why. */
  readonly kept: readonly Stayed[];
}

function spotAt(run: MeasuredRun, matrix: Matrix, length: number): Spot {
  let at = length;
  for (const segment of run.segments) {
    if (at <= segment.length) return lookAt(segment, matrix, parameterAt(segment, matrix, at));
    at -= segment.length;
  }
  return lookAt(run.segments.at(-1)!, matrix, 1);
}

function listWritings(run: MeasuredRun, matrix: Matrix, tried: number): readonly Writing[] {
  const { length } = run;
  const write = (one: MeasuredRun, start: number): Writing => ({
    run: one,
    stretch: [start, start + length],
    entry: spotAt(one, matrix, start),
    exit: spotAt(one, matrix, run.closed ? start : length),
  });
  if (!run.closed) return [write(run, 0), write(reverseRun(run), 0)];
  const corners = listCorners(run, matrix);
  const isClear = (start: number): boolean =>
    corners.every((corner) => {
      const apart = Math.abs(corner - start);
      return Math.min(apart, length - apart) >= CORNER_CLEAR_PX;
    });
  const starts = Array.from({ length: tried }, (_, i) => (i * length) / tried).filter((at) => at > 0 && isClear(at));
  return [write(run, 0), ...starts.map((start) => write(run, start))];
}

/** Why an item must keep its start, or the one line it is: drawn by its own element, in one part, and nothing that goes by its start. */
function findShape(artwork: Artwork, work: WorkList, item: number): Shape | string {
  const [shape, ...others] = work.shapes[item]!;
  // Why such an item stays is told with its place.
  if (shape === undefined || work.items[item]!.fixed) return '';
  if (others.length > 0 || shape.carrier !== shape.element || work.rows[item] !== shape.element)
    return 'it is drawn by a use, or as one with others';
  if (shape.paint.strokeDasharray.length > 0) return 'it is dashed, and dashes go by the start';
  if (artwork.references.has(shape.element)) return 'it has markers or an effect, which may go by the start';
  return shape;
}

/** The lines of an order, each with all the ways to write it, or why there is but one. */
function findLines(
  source: Source,
  artwork: Artwork,
  work: WorkList,
  items: readonly number[],
): readonly (Restartable | string)[] {
  const shared = new Set(
    artwork.shapes.filter(({ carrier, element }) => carrier !== element).map(({ element }) => element),
  );
  const tried = work.items.length > MANY ? TRIED_OF_MANY : TRIED;
  return items.map((item) => {
    const shape = findShape(artwork, work, item);
    if (typeof shape === 'string') return shape;
    if (shared.has(shape.element)) return 'a use draws it once more';
    const runs = shapeRuns(source, artwork, shape);
    if (runs.length !== 1) return 'it has several parts';
    return { item, shape, writings: listWritings(runs[0]!, shape.matrix, tried) };
  });
}

/** Reasons with how often each was given. */
function countReasons(reasons: readonly string[]): readonly Stayed[] {
  return [...new Set(reasons)].map((why) => ({ why, count: reasons.filter((reason) => reason === why).length }));
}

interface Change {
  readonly line: Restartable;
  readonly writing: Writing;
}

function claimAll(artwork: Artwork, changes: readonly Change[]): readonly ShapeClaim[] {
  const byShape = new Map(changes.map((change) => [change.line.shape, change.writing]));
  return artwork.shapes.map((shape) => {
    const writing = byShape.get(shape);
    return writing === undefined
      ? { shape, runs: [], stretches: null }
      : { shape, runs: [writing.run], stretches: [[writing.stretch]], keepsPaint: true };
  });
}

/**
 * Chooses and writes other start points for the lines of an order.
 *
 * @param order - Items in the order in which they are run.
 * @returns The pass as it was where nothing is gained, or where it does not read back as the same lines.
 */
export function restartLines(
  source: Source,
  artwork: Artwork,
  work: WorkList,
  ordered: { readonly order: readonly number[]; readonly origin: Spot },
  options: RoadOptions,
): RestartedPass {
  const run = ordered.order.filter((item) => work.items[item]!.runs.length > 0);
  const found = findLines(source, artwork, work, run);
  const lines = found.map((line) => (typeof line === 'string' ? null : line));
  const reasons = found.flatMap((line) => (typeof line === 'string' && line !== '' ? [line] : []));
  const choices = lines.map(
    (line, place) =>
      line?.writings ?? [{ entry: entryOf(work.items[run[place]!]!)!, exit: exitOf(work.items[run[place]!]!)! }],
  );
  const chosen = chooseStarts(choices, ordered.origin);
  let changes = lines.flatMap((line, place): Change[] =>
    line === null || chosen[place] === 0 ? [] : [{ line, writing: line.writings[chosen[place]!]! }],
  );
  while (changes.length > 0) {
    const written = changes.map(({ line: { shape }, writing }) => ({
      shape,
      d: writeStretches(writing.run, shape.matrix, [writing.stretch]),
      keepsPaint: true,
    }));
    const bytes = writeLines(source, written);
    const { broken } = judgeTies(bytes, claimAll(artwork, changes), options);
    if (broken.length === 0) return { bytes, items: changes.map(({ line }) => line.item), kept: countReasons(reasons) };
    const guilty = new Set(broken.map((index) => artwork.shapes[index]));
    const kept = changes.filter(({ line }) => !guilty.has(line.shape));
    // Where a line that was left alone is seen otherwise, rules look at neighbours: then all stay.
    const next = kept.length < changes.length ? kept : [];
    reasons.push(...Array.from({ length: changes.length - next.length }, () => NOT_SAME));
    changes = next;
  }
  return { bytes: source.text, items: [], kept: countReasons(reasons) };
}
