// pinbar verify: do these files overlay?

import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { readInput } from '../disk/read-input.js';
import { copiesOf, type Matrix, PinbarError, verify } from '../index.js';
import { printComparison } from '../report/print-job.js';
import { createProgress, writeJson, writeMessage, writeResult } from './console.js';
import { EXIT } from './exit-code.js';

/** Options as the command line gives them. */
export interface VerifyFlags {
  readonly source?: string;
  readonly tolerance?: number;
  readonly shift?: readonly [number, number];
  readonly userUnitsPerInch?: number;
  readonly json?: boolean;
  readonly limit: Readonly<Record<string, number>>;
}

/** Where copies lie, as the manifest beside the files says; null where there is none, or it lists other files. */
async function readCopies(paths: readonly string[]): Promise<readonly Matrix[] | null> {
  const folders = new Set(paths.map((path) => dirname(path)));
  if (folders.size !== 1) return null;
  const text = await readFile(join([...folders][0]!, 'manifest.json'), 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    const manifest = JSON.parse(text) as { readonly passes?: readonly { readonly file?: string }[] };
    const known = new Set(manifest.passes?.map(({ file }) => file));
    return paths.every((path) => known.has(basename(path))) ? copiesOf(manifest) : null;
  } catch {
    // Not a manifest of ours: the files are looked at without it.
    return null;
  }
}

/** Runs the command; returns the exit code. */
export async function runVerify(paths: readonly string[], flags: VerifyFlags, signal: AbortSignal): Promise<number> {
  if (paths.length < 2 && flags.source === undefined) {
    throw new PinbarError('use/wrong', {
      message: `There is nothing to compare ${paths[0]} with.`,
      remedy: 'Name two files or more, or one and the drawing it came from with --source.',
    });
  }
  const progress = createProgress();
  const files = [];
  for (const path of paths) files.push({ ...(await readInput(path, flags.limit.bytes)), name: path });
  const source = flags.source === undefined ? null : await readInput(flags.source, flags.limit.bytes);
  const shiftMm = flags.shift ?? [0, 0];
  const toleranceMm = flags.tolerance ?? 0.001;
  if (flags.shift !== undefined) writeMessage(`shift: ${shiftMm[0]} mm right, ${shiftMm[1]} mm down`);
  if (flags.tolerance !== undefined) writeMessage(`tolerance: ${toleranceMm} mm`);
  const copiesMm = source === null ? null : await readCopies(paths);
  const comparison = await verify(files, source, {
    copiesMm,
    toleranceMm,
    shiftMm,
    userUnitsPerInch: flags.userUnitsPerInch ?? null,
    limits: flags.limit,
    signal,
    onProgress: progress.show,
  });
  progress.wipe();
  if (flags.json) writeJson({ pinbar: 1, document: 'comparison', toleranceMm, shiftMm, ...comparison });
  else writeResult(printComparison(comparison));
  return comparison.inRegister ? EXIT.inRegister : EXIT.findings;
}
