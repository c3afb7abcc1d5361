// All files of a job, the ticket that repeats it among them.
import type { JobResult } from '../model/job.js';
import { encodeUtf8 } from '../model/platform.js';
import type { OutputFile } from '../model/sheet.js';
import type { Ticket } from '../model/ticket.js';
import { writeTicket } from '../ticket/write-ticket.js';
import { type PackedFile, zipFiles } from '../write/zip-files.js';

export type { PackedFile };

/** The ticket as the text of a file. */
export function printTicket(ticket: Ticket): string {
  return `${JSON.stringify(writeTicket(ticket), null, 2)}\n`;
}

/** `STEM.ticket.json`: with it the command line makes the same files again. */
export function packTicket(ticket: Ticket, stem: string): PackedFile {
  return { name: `${stem}.ticket.json`, pieces: [encodeUtf8(printTicket(ticket))] };
}

/** What `split` writes to a folder, the manifest last; `pages` are those of a run sheet. */
export function listJobFiles(job: JobResult, pages: readonly OutputFile[]): readonly OutputFile[] {
  const { files, tieFiles, turnedFiles, proofPicture, proofPage, manifest } = job;
  return [...files, ...tieFiles, ...turnedFiles, proofPicture, proofPage, ...pages, manifest].filter(
    (file) => file !== null,
  );
}

/** The files of a job, its ticket and what is needed to make them again as one zip archive, in pieces; the same on every run. */
export function zipJob(
  job: JobResult,
  pages: readonly OutputFile[],
  needed: readonly PackedFile[],
): readonly Uint8Array[] {
  return zipFiles([...listJobFiles(job, pages), packTicket(job.ticket, job.stem), ...needed]);
}
