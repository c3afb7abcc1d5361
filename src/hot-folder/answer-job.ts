// Runs one job, in a worker: bytes and ticket to files, or to a report about why not. Writes nothing.
import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { pictureReader } from '../disk/read-input.js';
import {
  check,
  DEFAULT_LIMITS,
  type Finding,
  inspect,
  joinPieces,
  PinbarError,
  readTicket,
  split,
  type Ticket,
} from '../index.js';
import { printChecks } from '../report/print-checks.js';
import { printFindings } from '../report/print-findings.js';
import { listJobFiles } from '../road/pack-job.js';
import { askForTicket, askQuestion, isQuestion, listAnswers, sayFault } from './ask-question.js';
import { readDelivered } from './file-trouble.js';
import { MACHINE_DISK } from './folder-disk.js';
import type { JobAnswer, JobAsked, JobNotMade } from './job-message.js';

function codesOf(findings: readonly Finding[]): readonly string[] {
  return [...new Set(findings.filter((item) => item.severity !== 'note').map((item) => item.code))];
}

function printReport(kind: string, findings: readonly Finding[], facts: object): string {
  return `${JSON.stringify({ pinbar: 1, document: 'report', outcome: kind, ...facts, findings }, null, 2)}\n`;
}

/** A report without a picture: the art could not even be read. */
function reportTrouble(error: PinbarError, asked: JobAsked): JobNotMade {
  const { findings } = error;
  const asks = findings.filter((item) => item.severity === 'error').every((item) => item.code.startsWith('ticket/'));
  const kind = asks && findings.length > 0 ? 'asks' : 'refused';
  return {
    kind,
    question:
      kind === 'asks' ? askForTicket(findings, basename(Buffer.from(asked.path).toString())) : sayFault(findings),
    text: printFindings(findings, true),
    json: printReport(kind, findings, {}),
    picture: null,
    codes: codesOf(findings),
  };
}

interface Delivered {
  readonly bytes: Uint8Array;
  readonly ticket: Ticket;
  readonly asked: JobAsked;
  readonly loadPicture: (address: string) => Promise<Uint8Array | null>;
}

/** The checks draw the picture and list what is wrong; what only splitting found is added. */
async function reportJob(delivered: Delivered, found: readonly Finding[]): Promise<JobNotMade> {
  const { bytes, ticket, asked, loadPicture } = delivered;
  const options = { fileName: asked.fileName, limits: asked.limits, loadPicture };
  const errors = found.filter((item) => item.severity === 'error');
  const asks = errors.length > 0 && errors.every(isQuestion);
  const kind = asks ? 'asks' : 'refused';
  const checked = await check(bytes, ticket, options);
  const listed = new Set(checked.findings.map((item) => `${item.code} ${item.message}`));
  const unlisted = found.filter((item) => !listed.has(`${item.code} ${item.message}`));
  const more = unlisted.length === 0 ? '' : `\n${printFindings(unlisted, true)}`;
  const about = asks ? { ticket, inspection: await inspect(bytes, options) } : null;
  const { artboard } = checked.artwork;
  return {
    kind,
    question: about === null ? sayFault(found) : askQuestion(about, found),
    text: `${printChecks(checked)}${more}${about === null ? '' : listAnswers(about, found)}`,
    json: printReport(kind, [...checked.findings, ...unlisted], {
      artboard: { widthMm: artboard.width * artboard.mmPerPx, heightMm: artboard.height * artboard.mmPerPx },
      counts: checked.counts,
    }),
    picture: joinPieces(checked.picture.pieces),
    codes: codesOf(found),
  };
}

async function makeJob(asked: JobAsked): Promise<JobAnswer> {
  const ticket = readTicket(asked.ticket ?? { pinbar: 1 });
  // One byte more than allowed is enough for the reader to refuse it.
  const atMost = (asked.limits.bytes ?? DEFAULT_LIMITS.bytes) + 1;
  const bytes = readDelivered(MACHINE_DISK, { path: Buffer.from(asked.path), what: asked.fileName, atMost });
  const pictures: string[] = [];
  const reader = pictureReader(asked.picturesIn === null ? null : `${asked.picturesIn}/art.svg`);
  const loadPicture = async (address: string): Promise<Uint8Array | null> => {
    const picture = await reader(address);
    pictures.push(picture === null ? 'none' : createHash('sha256').update(picture).digest('hex'));
    return picture;
  };
  const job = await split(bytes, ticket, { fileName: asked.fileName, limits: asked.limits, loadPicture });
  if (job.outcome !== 'in-register' || job.manifest === null) {
    return reportJob({ bytes, ticket, asked, loadPicture: reader }, job.findings);
  }
  return {
    kind: 'made',
    sha256: createHash('sha256').update(bytes).digest('hex'),
    files: listJobFiles(job, []).map((file) => ({ name: file.name, bytes: joinPieces(file.pieces) })),
    pictures,
    codes: codesOf(job.findings),
  };
}

/**
 * Runs a job to its answer.
 *
 * @throws FileTrouble where the art cannot be read; what else is neither about the artwork nor about the ticket: a fault of pinbar, or
 *   an error of the system.
 */
export async function answerJob(asked: JobAsked): Promise<JobAnswer> {
  try {
    return await makeJob(asked);
  } catch (error) {
    if (error instanceof PinbarError) return reportTrouble(error, asked);
    throw error;
  }
}
