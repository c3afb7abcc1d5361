// The passes of a job moved by one and the same fit, and the record of it.
import type { Correction } from '../model/correction.js';
import type { RoadOptions } from '../model/job.js';
import type { CorrectedPass, RegisterFit, RegisterReport } from '../model/register.js';
import type { SheetTurn, TurnedPass } from '../model/run-sheet.js';
import { joinPieces } from '../model/sheet.js';
import { PINBAR_VERSION } from '../model/version.js';
import { printManifest } from '../write/describe-manifest.js';
import { finishText } from '../write/finish-files.js';
import { correctPass, type PassFile } from './correct-pass.js';
import { turnPass } from './turn-pass.js';

/** A pass to be corrected: the file as the split made it, and how the sheet is turned for it where it lies on the reverse. */
export interface PassToCorrect extends PassFile {
  readonly turn?: SheetTurn | undefined;
}

function describeFile({ name, byteLength, sha256, deviationMm }: CorrectedPass) {
  return { name, bytes: byteLength, sha256, deviationMm };
}

function describe(made: Omit<Correction, 'manifest'>, report: RegisterReport): string {
  const { files, turnedFiles, fit } = made;
  const { readings, toleranceMm, verdict, findings } = report;
  return printManifest({
    pinbar: 1,
    document: 'correction',
    tool: { name: 'pinbar', version: PINBAR_VERSION },
    fit: { ...fit, residuals: fit.residuals.map((residual) => ({ ...residual })) },
    toleranceMm,
    verdict,
    readings: readings.map((reading) => ({ ...reading })),
    files: files.map(describeFile),
    turnedFiles: turnedFiles.map((file) => ({ ...describeFile(file), of: file.of, ...file.turn })),
    findings: findings.map((item) => ({ ...item, place: { ...item.place } })),
  });
}

/**
 * Corrects passes by one fit; those on the reverse are mirrored anew from their corrected file.
 *
 * @param report - Of `judgeMarks`, for the record; `fit` is one of its own.
 * @throws PinbarError as `correctPass` does.
 */
export async function correctPasses(
  passes: readonly PassToCorrect[],
  fit: RegisterFit,
  report: RegisterReport,
  options: RoadOptions = {},
): Promise<Correction> {
  const files: CorrectedPass[] = [];
  const turnedFiles: TurnedPass[] = [];
  for (const pass of passes) {
    const file = await correctPass(pass, fit.matrix, options);
    files.push(file);
    if (pass.turn === undefined) continue;
    turnedFiles.push(await turnPass({ name: file.name, bytes: joinPieces(file.pieces) }, pass.turn, options));
  }
  const made = { fit, files, turnedFiles };
  const manifest = await finishText('manifest.json', 'application/json', describe(made, report));
  return { ...made, manifest };
}
