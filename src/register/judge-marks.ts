// What measured marks say: every fit, the one to take, and a verdict.
import { type Finding, finding } from '../model/finding.js';
import { FIT_PHRASES, type MarkReading, type RegisterFit, type RegisterReport } from '../model/register.js';
import { fitMarks, listFits, mapPoint } from './fit-marks.js';
import { recogniseSheet } from './recognise-sheet.js';

/** A mark is an outlier where it lies this many standard errors from the fit of all others. */
const OUTLIER_TIMES = 4;
/** No mark is called an outlier for less, mm: a loupe reads no finer (common practice, no source). */
const OUTLIER_LEAST_MM = 0.05;

function canBeJudged(fit: RegisterFit): fit is RegisterFit & { readonly standardErrorMm: number } {
  return fit.standardErrorMm !== null;
}

/** A richer fit is taken only where its standard error is smaller than this share of the simpler one's, and by this much, mm. */
const CLEARLY_BETTER = 0.9;
const CLEARLY_BETTER_MM = 0.001;

function isClearlyBetter(error: number, than: number): boolean {
  return error < than * CLEARLY_BETTER && than - error > CLEARLY_BETTER_MM;
}

/** The simplest fit within the tolerance; where there is none, or no tolerance, the one of the least standard error. */
function chooseFit(fits: readonly RegisterFit[], toleranceMm: number | null): RegisterFit {
  const judged = fits.filter(canBeJudged);
  const within = toleranceMm === null ? undefined : judged.find((fit) => fit.greatestMm <= toleranceMm);
  return (
    within ?? judged.reduce((best, fit) => (isClearlyBetter(fit.standardErrorMm, best.standardErrorMm) ? fit : best))
  );
}

function listUnjudged(readings: readonly MarkReading[], fits: readonly RegisterFit[]): readonly Finding[] {
  return fits
    .filter((fit) => !canBeJudged(fit))
    .map((fit) =>
      finding('register/no-residual', {
        message: `${readings.length} marks settle ${FIT_PHRASES[fit.kind]} exactly: it leaves no residual to judge it by.`,
        remedy: 'Measure one mark more.',
        data: { fit: fit.kind, marks: readings.length },
      }),
    );
}

/** The mark that lies farthest from the fit of all others, where it lies too far. */
function findOutlier(readings: readonly MarkReading[], chosen: RegisterFit): readonly Finding[] {
  const looks = readings.flatMap((reading, i) => {
    const fit = fitMarks(
      readings.filter((_, j) => j !== i),
      chosen.kind,
    );
    if (fit === null || fit.standardErrorMm === null) return [];
    const [x, y] = mapPoint(fit.matrix, reading.drawnMm);
    const distanceMm = Math.hypot(reading.measuredMm[0] - x, reading.measuredMm[1] - y);
    return [
      { name: reading.name, distanceMm, allowedMm: Math.max(OUTLIER_LEAST_MM, OUTLIER_TIMES * fit.standardErrorMm) },
    ];
  });
  const worst = looks.toSorted((a, b) => b.distanceMm / b.allowedMm - a.distanceMm / a.allowedMm)[0];
  if (worst === undefined || worst.distanceMm <= worst.allowedMm) return [];
  const { name, distanceMm, allowedMm } = worst;
  return [
    finding('register/outlier', {
      message: `The mark "${name}" lies ${distanceMm.toFixed(3)} mm from where the others put it; up to ${allowedMm.toFixed(3)} mm would be no surprise.`,
      remedy: 'Measure it again; leave it out if the sheet is damaged there.',
      data: { name, distanceMm, allowedMm },
    }),
  ];
}

function judge(
  outByMm: number,
  chosen: RegisterFit,
  toleranceMm: number | null,
): { readonly verdict: RegisterReport['verdict']; readonly findings: readonly Finding[] } {
  if (toleranceMm === null) return { verdict: 'unknown', findings: [] };
  if (outByMm <= toleranceMm) return { verdict: 'within', findings: [] };
  if (chosen.greatestMm <= toleranceMm) return { verdict: 'correctable', findings: [] };
  const found = finding('register/beyond-tolerance', {
    message: `Even ${FIT_PHRASES[chosen.kind]} leaves a mark ${chosen.greatestMm.toFixed(3)} mm out; the shop allows ${toleranceMm} mm.`,
    remedy:
      'Measure again. If it stays, the sheet has changed its shape or lay otherwise: condition the board, look at the lay, or allow more.',
    data: { greatestMm: chosen.greatestMm, toleranceMm },
  });
  return { verdict: 'beyond', findings: [found] };
}

/**
 * Judges the register of one sheet by its marks.
 *
 * @param readings - At least two, of different names.
 * @param toleranceMm - What the shop allows; null where it did not say.
 * @throws Never.
 * @unit mm
 */
export function judgeMarks(readings: readonly MarkReading[], toleranceMm: number | null): RegisterReport {
  const fits = listFits(readings);
  const chosen = chooseFit(fits, toleranceMm);
  const outByMm = Math.max(
    ...readings.map(({ drawnMm, measuredMm }) => Math.hypot(measuredMm[0] - drawnMm[0], measuredMm[1] - drawnMm[1])),
  );
  const lie = recogniseSheet(readings);
  const { verdict, findings } = judge(outByMm, chosen, toleranceMm);
  return {
    readings,
    fits,
    chosen: chosen.kind,
    toleranceMm,
    outByMm,
    verdict,
    findings: [
      ...lie,
      // On a sheet that lies otherwise every mark is out of place.
      ...(lie.length > 0 ? [] : findOutlier(readings, chosen)),
      ...findings,
      ...listUnjudged(readings, fits),
    ],
  };
}
