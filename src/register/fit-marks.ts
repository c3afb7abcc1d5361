// Lays drawn marks on measured ones by least squares.
import type { Matrix } from '../geometry/matrix.js';
import type { PointMm } from '../model/marks.js';
import type { FitKind, MarkReading, RegisterFit, Residual } from '../model/register.js';

/** The kinds of fit, the simplest first. */
export const FIT_KINDS: readonly FitKind[] = ['shift', 'turn', 'scale', 'affine'];

/** How many numbers each kind fits. */
const UNKNOWNS: Readonly<Record<FitKind, number>> = { shift: 2, turn: 3, scale: 4, affine: 6 };
/** Marks that lie closer to one line than this share of their spread say nothing across it. */
const FLAT = 1e-6;
/** Marks that lie closer to each other than this share of their distance from the sheet's corner are one place. */
const ONE_PLACE = 1e-6;
/** Marks that lie closer to each other than this are one place wherever they lie, mm: no rule tells them apart. */
const ONE_PLACE_MM = 1e-6;

/** Sums over the marks, taken from their middles. */
interface Moments {
  readonly drawn: PointMm;
  readonly measured: PointMm;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** Drawn times measured: x with x', x with y', and so on. */
  readonly xX: number;
  readonly xY: number;
  readonly yX: number;
  readonly yY: number;
}

function middleOf(points: readonly PointMm[]): PointMm {
  const sum = points.reduce(([x, y], point) => [x + point[0], y + point[1]], [0, 0]);
  return [sum[0]! / points.length, sum[1]! / points.length];
}

function gatherMoments(readings: readonly MarkReading[]): Moments {
  const drawn = middleOf(readings.map((reading) => reading.drawnMm));
  const measured = middleOf(readings.map((reading) => reading.measuredMm));
  let [xx, xy, yy, xX, xY, yX, yY] = [0, 0, 0, 0, 0, 0, 0];
  for (const { drawnMm, measuredMm } of readings) {
    const x = drawnMm[0] - drawn[0];
    const y = drawnMm[1] - drawn[1];
    const X = measuredMm[0] - measured[0];
    const Y = measuredMm[1] - measured[1];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xX += x * X;
    xY += x * Y;
    yX += y * X;
    yY += y * Y;
  }
  return { drawn, measured, xx, xy, yy, xX, xY, yX, yY };
}

/** Turn and scale as cosine and sine times the scale; null where the marks do not say. A mirror image is never among them. */
function solveTurn({ drawn, xx, yy, xX, xY, yX, yY }: Moments, isScaled: boolean): readonly [number, number] | null {
  const along = xX + yY;
  const across = xY - yX;
  const length = Math.hypot(along, across);
  const apart = Math.max(ONE_PLACE_MM, ONE_PLACE * Math.hypot(drawn[0], drawn[1]));
  if (!(length > 0) || !(Math.sqrt(xx + yy) > apart)) return null;
  const by = isScaled ? xx + yy : length;
  return [along / by, across / by];
}

/**
 * The linear part of the best affine map; null where the marks stand on one line.
 *
 * The shorter axis is first freed of its share of the longer one, mark by mark: products of sums lose twice the digits.
 */
function solveAffine(readings: readonly MarkReading[], m: Moments): readonly [number, number, number, number] | null {
  const long = m.xx >= m.yy ? 0 : 1;
  const short = 1 - long;
  const spread = Math.max(m.xx, m.yy);
  if (!(spread > ONE_PLACE_MM * ONE_PLACE_MM)) return null;
  const share = m.xy / spread;
  let [square, toX, toY] = [0, 0, 0];
  for (const { drawnMm, measuredMm } of readings) {
    const off = drawnMm[short]! - m.drawn[short]! - share * (drawnMm[long]! - m.drawn[long]!);
    square += off * off;
    toX += off * (measuredMm[0] - m.measured[0]);
    toY += off * (measuredMm[1] - m.measured[1]);
  }
  if (!(square > FLAT * FLAT * (m.xx + m.yy))) return null;
  const [shortX, shortY] = [toX / square, toY / square];
  const [sumX, sumY] = long === 0 ? [m.xX, m.xY] : [m.yX, m.yY];
  const [longX, longY] = [sumX / spread - share * shortX, sumY / spread - share * shortY];
  return long === 0 ? [longX, longY, shortX, shortY] : [shortX, shortY, longX, longY];
}

function solveLinear(
  readings: readonly MarkReading[],
  moments: Moments,
  kind: FitKind,
): readonly [number, number, number, number] | null {
  if (kind === 'shift') return [1, 0, 0, 1];
  if (kind === 'affine') return solveAffine(readings, moments);
  const turn = solveTurn(moments, kind === 'scale');
  return turn === null ? null : [turn[0], turn[1], -turn[1], turn[0]];
}

/** Where a matrix puts a point. */
export function mapPoint([a, b, c, d, e, f]: Matrix, [x, y]: PointMm): PointMm {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** What the linear part leaves, taken from the middles: so far from the corner no digits are lost. */
function listResiduals(
  readings: readonly MarkReading[],
  { drawn, measured }: Moments,
  [a, b, c, d]: readonly [number, number, number, number],
): readonly Residual[] {
  return readings.map(({ name, drawnMm, measuredMm }) => {
    const x = drawnMm[0] - drawn[0];
    const y = drawnMm[1] - drawn[1];
    const dxMm = measuredMm[0] - measured[0] - (a * x + c * y);
    const dyMm = measuredMm[1] - measured[1] - (b * x + d * y);
    return { name, dxMm, dyMm, distanceMm: Math.hypot(dxMm, dyMm) };
  });
}

const DEGREES = 180 / Math.PI;

/**
 * The least-squares fit of one kind.
 *
 * @returns Null where the marks are too few for it, or stand so that they do not settle it (all in one place, or for an affine
 *   fit on one line).
 * @throws Never.
 * @unit mm and degrees; y down, angles clockwise
 * @accuracy Some units in the last place of the largest coordinate; held by 1,000 fits against a singular value decomposition.
 * @source S. Umeyama, Least-squares estimation of transformation parameters between two point patterns, IEEE PAMI 13 (1991),
 *   in the closed form of the plane, in which a mirror image cannot come out
 */
export function fitMarks(readings: readonly MarkReading[], kind: FitKind): RegisterFit | null {
  const numbers = 2 * readings.length;
  if (numbers < UNKNOWNS[kind]) return null;
  const moments = gatherMoments(readings);
  const linear = solveLinear(readings, moments, kind);
  if (linear === null) return null;
  const [a, b, c, d] = linear;
  const { drawn, measured } = moments;
  const matrix: Matrix = [
    a,
    b,
    c,
    d,
    measured[0] - a * drawn[0] - c * drawn[1],
    measured[1] - b * drawn[0] - d * drawn[1],
  ];
  const residuals = listResiduals(readings, moments, linear);
  const squares = residuals.reduce((sum, { dxMm, dyMm }) => sum + dxMm * dxMm + dyMm * dyMm, 0);
  const left = numbers - UNKNOWNS[kind];
  return {
    kind,
    matrix,
    shiftMm: [measured[0] - drawn[0], measured[1] - drawn[1]],
    angleDeg: Math.atan2(b, a) * DEGREES + 0,
    scale: [Math.hypot(a, b), Math.hypot(c, d)],
    shearDeg: kind === 'affine' ? Math.asin(Math.max(-1, Math.min(1, shearOf(linear)))) * DEGREES + 0 : 0,
    residuals,
    greatestMm: Math.max(...residuals.map(({ distanceMm }) => distanceMm)),
    rmsMm: Math.sqrt(squares / readings.length),
    standardErrorMm: left === 0 ? null : Math.sqrt(squares / left),
  };
}

/** Cosine of the angle between the mapped axes. */
function shearOf([a, b, c, d]: readonly [number, number, number, number]): number {
  const lengths = Math.hypot(a, b) * Math.hypot(c, d);
  return lengths > 0 ? (a * c + b * d) / lengths : 0;
}

/** Whether a fit presses the sheet flat: marks that were measured on one line, or in one place, do that. */
function isFlat({ matrix: [a, b, c, d] }: RegisterFit): boolean {
  return !(Math.abs(a * d - b * c) > FLAT * FLAT * (a * a + b * b + c * c + d * d));
}

/** Every fit that the marks allow, the simplest first. */
export function listFits(readings: readonly MarkReading[]): readonly RegisterFit[] {
  return FIT_KINDS.map((kind) => fitMarks(readings, kind)).filter(
    (fit): fit is RegisterFit => fit !== null && !isFlat(fit),
  );
}
