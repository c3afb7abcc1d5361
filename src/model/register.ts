// How far the passes are out: marks as drawn, marks as measured, and what fits one on the other.
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from './finding.js';
import type { PointMm } from './marks.js';
import type { OutputFile } from './sheet.js';

/** One mark of a sheet: where it is drawn, and where it was measured. Both in mm from the sheet's top left, y down. */
export interface MarkReading {
  readonly name: string;
  readonly drawnMm: PointMm;
  readonly measuredMm: PointMm;
}

/**
 * What a fit may do: move; move and turn; the same with one scale; anything affine (board swells more across the grain than
 * along it).
 */
export type FitKind = 'shift' | 'turn' | 'scale' | 'affine';

/** Each kind in words. */
export const FIT_PHRASES: Readonly<Record<FitKind, string>> = {
  shift: 'a shift',
  turn: 'a shift and a turn',
  scale: 'a shift, a turn and one scale',
  affine: 'an affine fit',
};

/** How far a mark still lies from where the fit puts it, mm. */
export interface Residual {
  readonly name: string;
  readonly dxMm: number;
  readonly dyMm: number;
  readonly distanceMm: number;
}

/** Drawn marks laid on measured ones, by least squares. */
export interface RegisterFit {
  readonly kind: FitKind;
  /** From where a point is drawn to where it lies, mm. */
  readonly matrix: Matrix;
  /** How far the middle of the marks moved, mm. */
  readonly shiftMm: PointMm;
  /** Turned clockwise as the sheet is looked at, degrees. */
  readonly angleDeg: number;
  /** Scale along the drawn x and the drawn y. */
  readonly scale: readonly [number, number];
  /** By which angle the axes left the right angle, degrees; 0 but for an affine fit. */
  readonly shearDeg: number;
  readonly residuals: readonly Residual[];
  readonly greatestMm: number;
  /** Root of the mean square of the distances, mm. */
  readonly rmsMm: number;
  /** Of one coordinate, mm; null where as many numbers were fitted as were measured, so that nothing is left to judge by. */
  readonly standardErrorMm: number | null;
}

/** What was read from the marks of one sheet. */
export interface RegisterReport {
  readonly readings: readonly MarkReading[];
  /** Every fit the marks allow, the simplest first. */
  readonly fits: readonly RegisterFit[];
  /** The simplest fit that leaves no mark beyond the tolerance; without a tolerance the one of the least standard error. */
  readonly chosen: FitKind;
  /** The shop's own, mm; null where none was said. */
  readonly toleranceMm: number | null;
  /** Greatest distance between drawn and measured before anything is corrected, mm. */
  readonly outByMm: number;
  /** `unknown` without a tolerance. */
  readonly verdict: 'within' | 'correctable' | 'beyond' | 'unknown';
  readonly findings: readonly Finding[];
}

/** A pass moved to where the marks were measured. */
export interface CorrectedPass extends OutputFile {
  /** Greatest distance of a shape from where the fit puts it, mm. */
  readonly deviationMm: number;
}
