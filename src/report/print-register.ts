// What measured marks say, in words and figures for the person at the machine.
import type { Correction } from '../model/correction.js';
import { FIT_PHRASES, type FitKind, type RegisterFit, type RegisterReport } from '../model/register.js';
import { printFindings } from './print-findings.js';

const KIND_WORDS: Readonly<Record<FitKind, string>> = {
  shift: 'shift',
  turn: 'shift, turn',
  scale: 'shift, turn, one scale',
  affine: 'affine',
};

function mm(value: number): string {
  return (Math.round(value * 1000) / 1000 + 0).toFixed(3);
}

function signed(value: number): string {
  const text = mm(value);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text.replace(/^-(?=0\.000$)/, '');
}

function perCent(scale: number): string {
  return `${signed((scale - 1) * 100)} %`;
}

function describeFit(fit: RegisterFit): string {
  const parts = [`${signed(fit.shiftMm[0])} mm right, ${signed(fit.shiftMm[1])} mm down`];
  if (fit.kind !== 'shift') parts.push(`turned ${(Math.round(fit.angleDeg * 10000) / 10000 + 0).toFixed(4)} degrees`);
  if (fit.kind === 'scale') parts.push(`scaled ${perCent(fit.scale[0])}`);
  if (fit.kind === 'affine') {
    parts.push(`scaled ${perCent(fit.scale[0])} along x, ${perCent(fit.scale[1])} along y`);
    parts.push(`sheared ${(Math.round(fit.shearDeg * 10000) / 10000 + 0).toFixed(4)} degrees`);
  }
  return parts.join(', ');
}

function judgeFit(fit: RegisterFit): string {
  const rest = `leaves ${mm(fit.greatestMm)} mm at most`;
  return fit.standardErrorMm === null
    ? 'exact for these marks: nothing is left to judge it by'
    : `${rest}, standard error ${mm(fit.standardErrorMm)} mm`;
}

const VERDICTS: Readonly<Record<RegisterReport['verdict'], (report: RegisterReport, fit: RegisterFit) => string>> = {
  within: ({ outByMm, toleranceMm }) =>
    `In register: no mark is out by more than ${mm(outByMm)} mm; the shop allows ${toleranceMm} mm.`,
  correctable: ({ outByMm, toleranceMm }, fit) =>
    `Out by up to ${mm(outByMm)} mm, more than the ${toleranceMm} mm that the shop allows; with ${FIT_PHRASES[fit.kind]} all marks are within it.`,
  beyond: ({ outByMm, toleranceMm }) =>
    `Out by up to ${mm(outByMm)} mm, and no fit brings all marks within the ${toleranceMm} mm that the shop allows.`,
  unknown: ({ outByMm }) =>
    `Out by up to ${mm(outByMm)} mm. Whether that will do is the shop's to say: no tolerance was given (--tolerance).`,
};

/** The report as text. */
export function printRegister(report: RegisterReport): string {
  const chosen = report.fits.find((fit) => fit.kind === report.chosen)!;
  const width = Math.max(...report.readings.map(({ name }) => name.length));
  const lines = [
    VERDICTS[report.verdict](report, chosen),
    '',
    'Fits, from the places as drawn to those measured',
    ...report.fits.flatMap((fit) => [
      `  ${fit === chosen ? '>' : ' '} ${KIND_WORDS[fit.kind]}: ${describeFit(fit)}`,
      `      ${judgeFit(fit)}`,
    ]),
    '',
    `What ${FIT_PHRASES[chosen.kind]} would leave at each mark, mm`,
    ...chosen.residuals.map(
      ({ name, dxMm, dyMm, distanceMm }) =>
        `  ${name.padEnd(width)}  ${signed(dxMm).padStart(8)} right  ${signed(dyMm).padStart(8)} down  ${mm(distanceMm).padStart(7)} away`,
    ),
    '',
    printFindings(report.findings, true),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

/** What a fit leaves that is not the one marked: its marks were not listed. */
function sayAsked({ fit }: Correction, { chosen, toleranceMm }: RegisterReport): string {
  if (fit.kind === chosen) return '';
  const beyond = toleranceMm !== null && fit.greatestMm > toleranceMm;
  return `, as asked; it leaves ${mm(fit.greatestMm)} mm at most${beyond ? `, MORE than the ${toleranceMm} mm that the shop allows` : ''}`;
}

/** What was written, or why not. */
export function printCorrection(made: Correction | null, report: RegisterReport, folder: string): string {
  if (made === null)
    return '\nNothing was corrected: the marks say something is wrong, see above. The passes are as they were.\n';
  const greatest = Math.max(...[...made.files, ...made.turnedFiles].map((file) => file.deviationMm));
  return [
    '',
    `Corrected by ${FIT_PHRASES[made.fit.kind]}${sayAsked(made, report)}; the passes of the job are as they were:`,
    ...made.files.map((file) => `  ${file.name}`),
    ...made.turnedFiles.map(({ name, of }) => `  ${name}, ${of} mirrored for the reverse`),
    `  in ${folder}`,
    `Read back: every shape is drawn as before, and none is more than ${greatest.toFixed(6)} mm from where the fit puts it.`,
    '',
  ].join('\n');
}
