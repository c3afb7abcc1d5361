// pinbar measure: how far are the passes out?

import { readInput } from '../disk/read-input.js';
import { judgeMarks, type RegisterReport, readMarks } from '../index.js';
import { decodeText } from '../model/platform.js';
import { printRegister } from '../report/print-register.js';
import { writeJson, writeResult } from './console.js';
import { EXIT } from './exit-code.js';
import { readJob, type WrittenJob } from './read-job.js';

/** Options as the command line gives them. */
export interface MeasureFlags {
  readonly job?: string;
  readonly tolerance?: number;
  readonly json?: boolean;
}

/** Largest table that is read, bytes. */
const MOST_BYTES = 4 * 1024 * 1024;

/** Reads the marks and judges them. */
export async function measureTable(
  path: string,
  job: WrittenJob | null,
  tolerance: number | null,
): Promise<RegisterReport> {
  const { bytes } = await readInput(path, MOST_BYTES);
  return judgeMarks(readMarks(decodeText(bytes), job?.marks ?? null), tolerance);
}

/** Whether a report holds an error. */
export function hasError(report: RegisterReport): boolean {
  return report.findings.some((item) => item.severity === 'error');
}

/** Runs the command; returns the exit code. */
export async function runMeasure(path: string, flags: MeasureFlags): Promise<number> {
  const job = flags.job === undefined ? null : await readJob(flags.job);
  const report = await measureTable(path, job, flags.tolerance ?? null);
  if (flags.json) writeJson({ pinbar: 1, document: 'register', ...report });
  else writeResult(printRegister(report));
  return hasError(report) ? EXIT.findings : EXIT.inRegister;
}
