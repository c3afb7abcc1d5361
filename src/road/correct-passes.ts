// The passes of a job moved by one and the same fit, and the record of it.
import type { RoadOptions } from '../model/job.js';
import type { CorrectedPass, Correction, RegisterFit, RegisterReport } from '../model/register.js';
import { PINBAR_VERSION } from '../model/version.js';
import { printManifest } from '../write/describe-manifest.js';
import { finishText } from '../write/finish-files.js';
import { correctPass } from './correct-pass.js';

/** A pass to be corrected: the file as the split made it. */
export interface PassFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

function describe(files: readonly CorrectedPass[], fit: RegisterFit, report: RegisterReport): string {
  const { readings, toleranceMm, verdict, findings } = report;
  return printManifest({
    pinbar: 1,
    document: 'correction',
    tool: { name: 'pinbar', version: PINBAR_VERSION },
    fit: { ...fit, residuals: fit.residuals.map((residual) => ({ ...residual })) },
    toleranceMm,
    verdict,
    readings: readings.map((reading) => ({ ...reading })),
    files: files.map(({ name, byteLength, sha256, deviationMm }) => ({ name, bytes: byteLength, sha256, deviationMm })),
    findings: findings.map((item) => ({ ...item, place: { ...item.place } })),
  });
}

/**
 * Corrects passes by one fit.
 *
 * @param report - Of `judgeMarks`, for the record; `fit` is one of its own.
 * @throws PinbarError as `correctPass` does.
 */
export async function correctPasses(
  passes: readonly PassFile[],
  fit: RegisterFit,
  report: RegisterReport,
  options: RoadOptions = {},
): Promise<Correction> {
  const files: CorrectedPass[] = [];
  for (const pass of passes) files.push(await correctPass(pass, fit.matrix, options));
  const manifest = await finishText('manifest.json', 'application/json', describe(files, fit, report));
  return { fit, files, manifest };
}
