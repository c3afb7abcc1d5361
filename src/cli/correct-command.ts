// pinbar correct: passes moved to where the marks were measured.
import { join, resolve } from 'node:path';
import {
  type Correction,
  correctPasses,
  type FitKind,
  PinbarError,
  type RegisterFit,
  type RegisterReport,
} from '../index.js';
import { printCorrection, printRegister } from '../report/print-register.js';
import { writeJson, writeMessage, writeResult } from './console.js';
import { EXIT } from './exit-code.js';
import { hasError, measureTable } from './measure-command.js';
import { publishFiles } from './publish-files.js';
import { readJob, readPass, type WrittenJob, type WrittenPass } from './read-job.js';

/** Options as the command line gives them. */
export interface CorrectFlags {
  readonly job: string;
  readonly passes: string;
  readonly fit?: FitKind;
  readonly tolerance?: number;
  readonly out?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

/** The passes asked for, in the order of the job. */
function choosePasses(job: WrittenJob, text: string): readonly WrittenPass[] {
  const names = text.split(',').map((name) => name.trim());
  const known = job.passes.map((pass) => pass.name);
  const unknown = names.find((name) => !known.includes(name));
  if (unknown !== undefined) {
    throw new PinbarError('use/wrong', {
      message: `The job has no pass "${unknown}"; it has ${known.join(', ')}.`,
      remedy: 'Name passes of the job with --passes, parted by commas.',
    });
  }
  return job.passes.filter((pass) => names.includes(pass.name));
}

function chooseFit(report: RegisterReport, kind: FitKind | undefined): RegisterFit {
  const fit = report.fits.find((item) => item.kind === (kind ?? report.chosen));
  if (fit !== undefined) return fit;
  throw new PinbarError('use/wrong', {
    message: `These marks do not settle the fit "${kind}"; they allow ${report.fits.map((item) => item.kind).join(', ')}.`,
    remedy: 'Measure more marks, not all on one line, or ask for a simpler fit.',
  });
}

/** Runs the command; returns the exit code. */
export async function runCorrect(path: string, flags: CorrectFlags, signal: AbortSignal): Promise<number> {
  const job = await readJob(flags.job);
  const passes = choosePasses(job, flags.passes);
  const report = await measureTable(path, job, flags.tolerance ?? null);
  const fit = chooseFit(report, flags.fit);
  const folder = flags.out ?? `${resolve(flags.job).replace(/[\\/]+$/, '')}.corrected`;
  const refused = hasError(report);
  let made: Correction | null = null;
  if (!refused) {
    const files = [];
    const ties = job.tieFiles.filter(({ name }) => passes.some((pass) => pass.name === name));
    for (const pass of [...passes, ...ties]) {
      files.push({ name: pass.file, bytes: await readPass(job, pass), turn: pass.turn });
    }
    made = await correctPasses(files, fit, report, { signal });
    await publishFiles(folder, [...made.files, ...made.turnedFiles, made.manifest], {
      inputPath: join(resolve(flags.job), 'manifest.json'),
      force: flags.force === true,
    });
  }
  if (flags.json) {
    const files = [...(made?.files ?? []), ...(made?.turnedFiles ?? [])].map(
      ({ name, byteLength, sha256, deviationMm }) => ({
        name,
        bytes: byteLength,
        sha256,
        deviationMm,
      }),
    );
    writeJson({
      pinbar: 1,
      document: 'correction',
      written: made !== null,
      folder,
      fit,
      files,
      findings: report.findings,
    });
  } else {
    writeResult(`${printRegister(report)}${printCorrection(made, report, folder)}`);
  }
  if (fit.standardErrorMm === null)
    writeMessage('This fit goes through the marks exactly: a mark that was misread moves the passes with it.');
  return refused ? EXIT.findings : EXIT.inRegister;
}
