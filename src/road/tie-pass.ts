// A pass with ties: its lines written as separate stretches, the ties as a pass of their own where asked, both read again.
import { hasFill } from '../classify/suggest.js';
import type { MeasuredRun } from '../geometry/path-stretch.js';
import { pointOnRun } from '../geometry/point-on-run.js';
import { type Stretch, writeStretches } from '../geometry/write-stretch.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { RoadOptions } from '../model/job.js';
import type { TieReport, TieRequest } from '../model/ties.js';
import { shapeRuns } from '../resolve/shape-outline.js';
import type { Source } from '../source/source.js';
import { cutStretches, planTies, type TiePlan, type TieSettings } from '../ties/plan-ties.js';
import { judgeTies, type ShapeClaim } from './judge-ties.js';
import { type LeftWhole, noteTies } from './note-ties.js';
import { resolveSource, scanBytes } from './read-artwork.js';
import type { PassBytes } from './sequence-pass.js';
import { writeLines } from './write-ties.js';

/** A pass with ties. */
export interface TiedPass {
  readonly bytes: Uint8Array;
  /** The ties alone; null where they were not asked for or there are none. */
  readonly ties: Uint8Array | null;
  readonly report: TieReport;
  readonly findings: readonly Finding[];
}

/** A line that may get ties. */
interface Candidate {
  /** Place among the shapes of the pass. */
  readonly index: number;
  readonly shape: Shape;
  readonly runs: readonly MeasuredRun[];
}

const NOT_KEPT = 'style rules would see it otherwise once it is written as stretches';

/** Why a line must stay as it is, or ''. */
function whyWhole(shape: Shape, shared: ReadonlySet<number>): string {
  if (hasFill(shape)) return 'it is filled';
  if (shape.carrier !== shape.element || shared.has(shape.element)) return 'a use draws it';
  return '';
}

function isLine(shape: Shape): boolean {
  return shape.draws && !shape.hidden && !['text', 'image', 'foreignObject'].includes(shape.kind);
}

function listCandidates(
  source: Source,
  artwork: Artwork,
): { readonly candidates: readonly Candidate[]; readonly left: ReadonlyMap<string, readonly Shape[]> } {
  const shared = new Set(
    artwork.shapes.filter(({ carrier, element }) => carrier !== element).map(({ element }) => element),
  );
  const candidates: Candidate[] = [];
  const left = new Map<string, readonly Shape[]>();
  artwork.shapes.forEach((shape, index) => {
    if (!isLine(shape)) return;
    const why = whyWhole(shape, shared);
    if (why !== '') left.set(why, [...(left.get(why) ?? []), shape]);
    else candidates.push({ index, shape, runs: shapeRuns(source, artwork, shape) });
  });
  return { candidates: candidates.filter(({ runs }) => runs.length > 0), left };
}

/** The request in px. */
function settingsOf(request: TieRequest, creaseEnds: Float64Array, mmPerPx: number): TieSettings {
  return {
    mode: request.mode,
    cut: request.cutMm / mmPerPx,
    tie: request.tieMm / mmPerPx,
    startsWith: request.startsWith,
    endsWith: request.endsWith,
    leastPerPiece: request.leastPerPiece,
    free: request.freeMm / mmPerPx,
    smallHole: request.smallHoleMm / mmPerPx,
    smallHoleTies: request.smallHoleTies,
    cornerClear: request.cornerClearMm / mmPerPx,
    creaseEndClear: request.creaseEndClearMm / mmPerPx,
    leastRadius: request.leastRadiusMm / mmPerPx,
    creaseEnds,
  };
}

/** The ties of one candidate's runs, out of the plan for all. */
interface TiedShape extends Candidate {
  readonly ties: readonly (readonly Stretch[])[];
}

function shareOut(candidates: readonly Candidate[], plan: TiePlan): readonly TiedShape[] {
  let at = 0;
  return candidates.map((candidate) => {
    const ties = plan.ties.slice(at, at + candidate.runs.length);
    at += candidate.runs.length;
    return { ...candidate, ties };
  });
}

function writeShape({ shape, runs }: Candidate, stretches: readonly (readonly Stretch[])[]): string {
  return runs.map((run, i) => writeStretches(run, shape.matrix, stretches[i]!)).join('');
}

/** Both files of a pass, and the tied shapes that do not read back as they should. */
interface Attempt {
  readonly bytes: Uint8Array;
  readonly ties: Uint8Array | null;
  readonly broken: readonly TiedShape[];
}

function attempt(
  source: Source,
  artwork: Artwork,
  tied: readonly TiedShape[],
  wantsTies: boolean,
  options: RoadOptions,
): Attempt {
  if (tied.length === 0) return { bytes: source.text, ties: null, broken: [] };
  const byIndex = new Map(tied.map((shape) => [shape.index, shape]));
  const cuts = tied.map(({ runs, ties }) => runs.map((run, i) => cutStretches(run, ties[i]!)));
  const places = new Map(tied.map((shape, i) => [shape, i]));
  const bytes = writeLines(
    source,
    tied.map((shape, i) => ({ shape: shape.shape, d: writeShape(shape, cuts[i]!) })),
  );
  const claims = artwork.shapes.map((shape, index): ShapeClaim => {
    const own = byIndex.get(index);
    return own === undefined
      ? { shape, runs: [], stretches: null }
      : { shape, runs: own.runs, stretches: cuts[places.get(own)!]! };
  });
  const broken = judgeTies(bytes, claims, options).broken.map((index) => byIndex.get(index) ?? null);
  let ties: Uint8Array | null = null;
  if (wantsTies) {
    const removed = new Set(artwork.shapes.filter((_, index) => !byIndex.has(index)).map(({ carrier }) => carrier));
    ties = writeLines(
      source,
      tied.map((shape) => ({ shape: shape.shape, d: writeShape(shape, shape.ties) })),
      [...removed],
    );
    const own = tied.map(({ shape, runs, ties: stretches }): ShapeClaim => ({ shape, runs, stretches }));
    broken.push(...judgeTies(ties, own, options).broken.map((i) => tied[i]!));
  }
  // A shape without ties that is seen otherwise tells of rules that look at neighbours: then nothing is tied.
  const guilty = broken.includes(null) ? tied : [...new Set(broken)].filter((shape) => shape !== null);
  return { bytes, ties, broken: guilty };
}

function sumLength(tied: readonly TiedShape[]): number {
  return tied.reduce((sum, { ties }) => sum + ties.flat().reduce((own, [from, to]) => own + to - from, 0), 0);
}

/** The middles of all ties on the artboard: x, y pairs. */
function listPlaces(tied: readonly TiedShape[], mmPerPx: number): readonly number[] {
  return tied.flatMap(({ shape, runs, ties }) =>
    runs.flatMap((run, i) =>
      ties[i]!.flatMap(([from, to]) => {
        const { x, y } = pointOnRun(run, shape.matrix, (from + to) / 2);
        return [x * mmPerPx, y * mmPerPx];
      }),
    ),
  );
}

/** Lines of which any run is tied. */
function countTied(plan: TiePlan, candidates: readonly Candidate[], tied: readonly TiedShape[]): number {
  const indices = new Set(tied.map(({ index }) => index));
  const isTied = candidates.flatMap(({ index, runs }) => runs.map(() => indices.has(index)));
  return plan.lines.filter(({ ties, runs }) => ties > 0 && runs.some((run) => isTied[run])).length;
}

/** The share by which the pattern is stretched most. */
function worstStretch(plan: TiePlan): number {
  return plan.lines.reduce((worst, { factor }) => (Math.abs(factor - 1) > Math.abs(worst) ? factor - 1 : worst), 0);
}

/**
 * A pass with ties.
 *
 * @param creaseEnds - Ends of creases on the artboard, px, from which ties keep clear.
 * @throws PinbarError as reading does.
 */
export function tiePass(
  pass: PassBytes,
  request: TieRequest,
  creaseEnds: Float64Array,
  options: RoadOptions,
): TiedPass {
  const source = scanBytes(pass.bytes, options);
  const artwork = resolveSource(source, options, null);
  const mmPerPx = artwork.artboard.mmPerPx * (pass.scale ?? 1);
  const { candidates, left } = listCandidates(source, artwork);
  const runs = candidates.flatMap((candidate) =>
    candidate.runs.map((run) => ({ run, matrix: candidate.shape.matrix })),
  );
  const plan = planTies(runs, settingsOf(request, creaseEnds, mmPerPx));
  let tied = shareOut(candidates, plan).filter(({ ties }) => ties.some((list) => list.length > 0));
  const refused: Shape[] = [];
  let made = attempt(source, artwork, tied, request.tiesPass, options);
  while (made.broken.length > 0) {
    const broken = new Set(made.broken);
    refused.push(...made.broken.map(({ shape }) => shape));
    tied = tied.filter((shape) => !broken.has(shape));
    made = attempt(source, artwork, tied, request.tiesPass, options);
  }
  const whole: LeftWhole[] = [...left].map(([why, shapes]) => ({ why, shapes }));
  if (refused.length > 0) whole.push({ why: NOT_KEPT, shapes: refused });
  const report: TieReport = {
    pass: pass.pass.name,
    role: pass.pass.role,
    mode: request.mode,
    file: pass.name,
    tiesFile: made.ties === null ? null : pass.name.replace(/\.svg$/, '-ties.svg'),
    tiedLines: countTied(plan, candidates, tied),
    lines: plan.lines.length,
    ties: tied.reduce((sum, { ties }) => sum + ties.flat().length, 0),
    lineMm: runs.reduce((sum, { run }) => sum + run.length, 0) * mmPerPx,
    tiesMm: sumLength(tied) * mmPerPx,
    longestFreeMm: Math.max(0, ...plan.lines.map(({ longestFree }) => longestFree)) * mmPerPx,
    stretch: worstStretch(plan),
    placesMm: listPlaces(tied, artwork.artboard.mmPerPx),
  };
  const places = { artwork, runs, file: pass.name, mmPerPx };
  return { bytes: made.bytes, ties: made.ties, report, findings: noteTies(request, plan, whole, places) };
}
