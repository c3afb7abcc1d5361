// pinbar check: is it fit to run?

import { pictureReader, readInput } from '../disk/read-input.js';
import { type CheckResult, check } from '../index.js';
import { printChecks } from '../report/print-checks.js';
import { createProgress, writeJson, writeResult } from './console.js';
import { EXIT, exitCodeFor } from './exit-code.js';
import { makeTicket, type TicketFlags } from './make-ticket.js';
import { publishPicture } from './publish-picture.js';

/** Options as the command line gives them. */
export interface CheckFlags extends TicketFlags {
  readonly out?: string;
  readonly json?: boolean;
  readonly limit: Readonly<Record<string, number>>;
}

function describeChecks(result: CheckResult, picture: string | null): unknown {
  const { outcome, artwork, assignment, counts, solid, findings } = result;
  const { width, height, mmPerPx } = artwork.artboard;
  return {
    pinbar: 1,
    document: 'checks',
    outcome,
    artboard: { widthMm: width * mmPerPx, heightMm: height * mmPerPx },
    passes: assignment.passes,
    counts,
    picture,
    solid,
    findings: findings.map((item, index) => ({ number: index + 1, ...item })),
  };
}

/** Runs the command; returns the exit code. */
export async function runCheck(path: string, flags: CheckFlags, signal: AbortSignal): Promise<number> {
  const progress = createProgress();
  const ticket = await makeTicket(flags);
  const input = await readInput(path, flags.limit.bytes);
  const result = await check(input.bytes, ticket, {
    fileName: input.name,
    limits: flags.limit,
    signal,
    onProgress: progress.show,
    loadPicture: pictureReader(input.path),
  });
  progress.wipe();
  if (flags.out !== undefined) await publishPicture(flags.out, result.picture);
  if (flags.json) writeJson(describeChecks(result, flags.out ?? null));
  else writeResult(printChecks(result));
  return result.outcome === 'fit' ? EXIT.inRegister : exitCodeFor(result.findings);
}
