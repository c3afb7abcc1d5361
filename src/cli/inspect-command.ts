// pinbar inspect: what is in the file.

import { readInput } from '../disk/read-input.js';
import { inspect } from '../index.js';
import { printInspection } from '../report/print-inspection.js';
import { createProgress, writeJson, writeResult } from './console.js';
import { EXIT } from './exit-code.js';

/** Options as the command line gives them. */
export interface InspectFlags {
  readonly json?: boolean;
  readonly userUnitsPerInch?: number;
  readonly limit: Readonly<Record<string, number>>;
}

/** Runs the command; returns the exit code. */
export async function runInspect(path: string, flags: InspectFlags, signal: AbortSignal): Promise<number> {
  const progress = createProgress();
  const input = await readInput(path, flags.limit.bytes);
  const inspection = await inspect(input.bytes, {
    fileName: input.name,
    limits: flags.limit,
    userUnitsPerInch: flags.userUnitsPerInch ?? null,
    signal,
    onProgress: progress.show,
  });
  progress.wipe();
  if (flags.json) writeJson({ pinbar: 1, document: 'inspection', ...inspection });
  else writeResult(printInspection(inspection));
  return EXIT.inRegister;
}
