// Holds passes with ties against the plain pass: every stretch lies where it was cut from, and none is missing.
import type { Matrix } from '../geometry/matrix.js';
import type { MeasuredRun } from '../geometry/path-stretch.js';
import { pointOnRun } from '../geometry/point-on-run.js';
import type { Stretch } from '../geometry/write-stretch.js';
import type { Artwork, Shape } from '../model/artwork.js';
import type { RoadOptions } from '../model/job.js';
import { equalBytes } from '../model/platform.js';
import { shapeRuns } from '../resolve/shape-outline.js';
import type { Source } from '../source/source.js';
import { resolveSource, scanBytes } from './read-artwork.js';

/** A stretch may come out this far from where it was cut from, mm. */
export const ALLOWED_MM = 0.001;
/** Places along a stretch that are looked at, ends included. */
const LOOKS = 9;

/** What a shape must draw in the written file: stretches of its runs, in order; null: just what it drew. */
export interface ShapeClaim {
  readonly shape: Shape;
  readonly runs: readonly MeasuredRun[];
  readonly stretches: readonly (readonly Stretch[])[] | null;
  /** Whether dashes and ends of lines must stay too. */
  readonly keepsPaint?: boolean;
}

/** What came of a look at a file. */
export interface TieVerdict {
  /** Places in the list of claims of those that do not hold. */
  readonly broken: readonly number[];
  /** Greatest deviation of those that do. */
  readonly deviationMm: number;
}

/** How far a written run is from the stretch of the plain one that it stands for, px. */
function deviate(plain: MeasuredRun, [from, to]: Stretch, written: MeasuredRun, matrix: Matrix): number {
  let greatest = Math.abs(written.length - (to - from));
  for (let look = 0; look < LOOKS; look += 1) {
    const share = look / (LOOKS - 1);
    const wanted = pointOnRun(plain, matrix, from + share * (to - from));
    const found = pointOnRun(written, matrix, share * written.length);
    greatest = Math.max(greatest, Math.hypot(wanted.x - found.x, wanted.y - found.y));
  }
  return greatest;
}

/** Paint but for dashes and the ends of lines, which tied lines give up. */
function paintOf({ paint }: Shape): string {
  return JSON.stringify({ ...paint, strokeDasharray: [], strokeDashoffset: 0, strokeLinecap: 'butt' });
}

function deviateShape(claim: ShapeClaim, written: Shape, runs: readonly MeasuredRun[]): number {
  const { shape, stretches } = claim;
  if (shape.matrix.some((value, i) => value !== written.matrix[i]) || shape.draws !== written.draws) return Infinity;
  if (stretches === null) {
    const same = JSON.stringify([shape.fillBox, shape.paint]) === JSON.stringify([written.fillBox, written.paint]);
    return same && shape.kind === written.kind ? 0 : Infinity;
  }
  const same = claim.keepsPaint
    ? JSON.stringify(shape.paint) === JSON.stringify(written.paint)
    : paintOf(shape) === paintOf(written) && written.paint.strokeDasharray.length === 0;
  if (!same) return Infinity;
  const wanted = stretches.flatMap((list, run) => list.map((stretch) => ({ run: claim.runs[run]!, stretch })));
  if (wanted.length !== runs.length) return Infinity;
  return Math.max(0, ...wanted.map(({ run, stretch }, i) => deviate(run, stretch, runs[i]!, shape.matrix)));
}

/**
 * Reads a file with ties back.
 *
 * @param claims - What it must draw besides the marks, in paint order, and nothing else.
 * @returns All claims broken where the file holds another number of shapes.
 */
export function judgeTies(bytes: Uint8Array, claims: readonly ShapeClaim[], options: RoadOptions): TieVerdict {
  const source: Source = scanBytes(bytes, options);
  const artwork: Artwork = resolveSource(source, options, null);
  const all = claims.map((_, i) => i);
  if (!equalBytes(source.text, bytes) || artwork.shapes.length !== claims.length)
    return { broken: all, deviationMm: 0 };
  let deviationMm = 0;
  const broken = all.filter((i) => {
    const written = artwork.shapes[i]!;
    const off = deviateShape(claims[i]!, written, shapeRuns(source, artwork, written)) * artwork.artboard.mmPerPx;
    if (!(off <= ALLOWED_MM)) return true;
    deviationMm = Math.max(deviationMm, off);
    return false;
  });
  return { broken, deviationMm };
}
