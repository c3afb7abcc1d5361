// pinbar run-sheet: the page that hangs on the machine.
import { join, resolve } from 'node:path';
import { makeRunSheet, PinbarError } from '../index.js';
import { printRun } from '../report/print-run.js';
import { writeJson, writeResult } from './console.js';
import { EXIT } from './exit-code.js';
import { publishOver } from './publish-picture.js';
import { readJob, readPass } from './read-job.js';
import { type RunFlags, readRunRequest } from './read-profile-file.js';

/** Options as the command line gives them. */
export interface RunSheetFlags extends RunFlags {
  readonly out?: string;
  readonly json?: boolean;
}

/** Runs the command; returns the exit code. */
export async function runRunSheet(path: string, flags: RunSheetFlags, signal: AbortSignal): Promise<number> {
  const request = await readRunRequest(flags);
  if (request === null) {
    throw new PinbarError('use/wrong', {
      message: 'A run sheet is made from a shop profile, and none is named.',
      remedy: 'Add --profile shop.json; samples/shop.profile.json is one to begin with.',
    });
  }
  const job = await readJob(path);
  const files = [];
  for (const pass of [...job.passes, ...job.tieFiles])
    files.push({ name: pass.file, bytes: await readPass(job, pass) });
  // Mirrored files are loaded at the machine as they are: they must be those of the manifest.
  for (const pass of job.turnedFiles) await readPass(job, pass);
  const { sheet, files: pages } = await makeRunSheet(job.manifest, files, request, { signal });
  const folder = flags.out ?? path;
  if (signal.aborted) {
    throw new PinbarError('cancelled', {
      message: 'The run was stopped before it was done; nothing was written.',
      remedy: 'Start it again when you want the run sheet.',
    });
  }
  for (const page of pages) await publishOver(join(resolve(folder), page.name), page, 'run sheet');
  if (flags.json) writeJson({ pinbar: 1, document: 'run-sheet', ...sheet });
  else
    writeResult(
      printRun(
        sheet,
        folder,
        pages.map(({ name }) => name),
      ),
    );
  return EXIT.inRegister;
}
