// pinbar split: one file per pass.
import { dirname, join } from 'node:path';
import { type Input, pictureReader, readInput } from '../disk/read-input.js';
import { type JobResult, makeJobRunSheet, type OutputFile, PinbarError, split, type Ticket } from '../index.js';
import { printJob } from '../report/print-job.js';
import { listJobFiles } from '../road/pack-job.js';
import { createProgress, writeJson, writeMessage, writeResult } from './console.js';
import { EXIT, exitCodeFor } from './exit-code.js';
import { makeTicket, type TicketFlags } from './make-ticket.js';
import { checkFolder, publishFiles } from './publish-files.js';
import { type RunFlags, readRunRequest } from './read-profile-file.js';

/** Options as the command line gives them. */
export interface SplitFlags extends TicketFlags, RunFlags {
  readonly out?: string;
  readonly force?: boolean;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly skipChecks?: boolean;
  readonly proof: 'picture' | 'html';
  readonly limit: Readonly<Record<string, number>>;
}

/** `carton.passes` beside the input; beside the caller for standard input. */
function defaultFolder(input: Input, stem: string): string {
  return input.path === null ? `${stem}.passes` : join(dirname(input.path), `${stem}.passes`);
}

function describeJob(
  job: JobResult,
  files: readonly OutputFile[],
  place: { readonly folder: string; readonly written: boolean },
): unknown {
  return {
    pinbar: 1,
    document: 'split',
    outcome: job.outcome,
    ...place,
    files: files.map(({ name, byteLength, sha256 }) => ({ name, bytes: byteLength, sha256 })),
    passes: job.assignment.passes.map((pass, index) => ({ ...pass, file: job.files[index]?.name ?? null })),
    proof: {
      ...job.proof,
      judges: job.proof.judges.map(({ findings, ...rest }) => ({ ...rest, findings: findings.length })),
    },
    ...(job.sequence.length === 0 ? {} : { sequence: job.sequence }),
    ...(job.ties.length === 0 ? {} : { ties: job.ties }),
    findings: job.findings,
  };
}

function echoSheet(sheet: NonNullable<Ticket['sheet']>): string {
  const { widthMm, heightMm, gripperMm, gripperSide, marginsMm, gutterMm, ups, turn, scale } = sheet;
  const gutters = [sheet.gutterXMm ?? gutterMm, sheet.gutterYMm ?? gutterMm];
  const gutter = gutters[0] === gutters[1] ? `${gutters[0]} mm` : `${gutters[0]} mm across and ${gutters[1]} mm down`;
  const turned = turn === undefined ? '' : turn === 'head-to-tail' ? ', head to tail' : `, turned ${turn} degrees`;
  return (
    `sheet: ${widthMm} x ${heightMm} mm, gripper ${gripperMm} mm (${gripperSide}), other margins ${marginsMm} mm, ` +
    `gutter ${gutter}, copies ${ups}${turned}${scale === 1 ? '' : `, scaled ${scale} times`}`
  );
}

/** Bare lengths are echoed with their unit, so that nobody takes mm for px. */
function echoLengths(ticket: Ticket): void {
  if (ticket.marginMm !== 0) writeMessage(`margin: ${ticket.marginMm} mm on every side`);
  if (ticket.sheet !== undefined) writeMessage(echoSheet(ticket.sheet));
}

/** Runs the command; returns the exit code. */
export async function runSplit(path: string, flags: SplitFlags, signal: AbortSignal): Promise<number> {
  const progress = createProgress();
  const ticket = await makeTicket(flags);
  const request = await readRunRequest(flags);
  const input = await readInput(path, flags.limit.bytes);
  if (flags.out !== undefined && !flags.dryRun) await checkFolder(flags.out, input.path, flags.force === true);
  const job = await split(input.bytes, ticket, {
    fileName: input.name,
    limits: flags.limit,
    signal,
    onProgress: progress.show,
    skipChecks: flags.skipChecks === true,
    proofPage: flags.proof === 'html',
    loadPicture: pictureReader(input.path),
  });
  progress.wipe();
  echoLengths(ticket);
  const folder = flags.out ?? defaultFolder(input, job.stem);
  const pages = request === null || job.manifest === null ? [] : (await makeJobRunSheet(job, request)).files;
  const files = listJobFiles(job, pages);
  const publishes =
    job.files.length > 0 && (job.outcome === 'in-register' || job.outcome === 'not-verified') && !flags.dryRun;
  if (signal.aborted) {
    throw new PinbarError('cancelled', {
      message: 'The run was stopped before it was done; nothing was written.',
      remedy: 'Start it again when you want the files.',
    });
  }
  if (publishes) await publishFiles(folder, files, { inputPath: input.path, force: flags.force === true });
  if (flags.json) writeJson(describeJob(job, files, { folder, written: publishes }));
  else writeResult(printJob(job, { folder, written: publishes }));
  return job.outcome === 'in-register' ? EXIT.inRegister : Math.max(EXIT.findings, exitCodeFor(job.findings));
}
