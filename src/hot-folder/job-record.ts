// What a job folder says about its job: a small file that goes with it from room to room.
import { readWritten } from './file-trouble.js';
import { type FolderDisk, joinPath } from './folder-disk.js';

/** Name of the record in a job folder. Deliveries never begin with a point, so none has it. */
export const RECORD_NAME = '.job.json';

/** A job, as its folder says it. */
export interface JobRecord {
  /** Unlike that of any other job. */
  readonly id: string;
  /** Folders below `in/`, then the name of the art: bytes as the file system has them. */
  readonly from: readonly Buffer[];
  /** A ticket beside the art that belongs to it alone, by name. */
  readonly beside: Buffer | null;
  /** The ticket as it counts, JSON; null: by layer names, or, with a ticket beside the art, by what that says. */
  readonly ticket: string | null;
  /** How often it was started all alone after a watcher had died with it. */
  readonly aloneRuns: number;
  /** Hash of the tickets that lay in its folder when it was parked; another one is an answer. */
  readonly asked: string | null;
}

/** The name of the art. */
export function nameOf(record: JobRecord): Buffer {
  return record.from.at(-1)!;
}

/** A name as text, for people and for names of files: bytes that are no text are replaced. */
export function sayName(name: Buffer): string {
  return name.toString('utf8');
}

/** The path below `in/` as text. */
export function sayFrom(record: JobRecord): string {
  return record.from.map(sayName).join('/');
}

interface WrittenRecord {
  readonly pinbar?: unknown;
  readonly document?: unknown;
  readonly id?: unknown;
  readonly from?: unknown;
  readonly beside?: unknown;
  readonly ticket?: unknown;
  readonly aloneRuns?: unknown;
  readonly asked?: unknown;
}

function isTexts(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.length > 0 && value.every((item) => typeof item === 'string');
}

/** A name that leads nowhere else. */
function isPlainName(name: Buffer): boolean {
  return name.length > 0 && !name.includes('/') && !name.includes(0) && !['.', '..'].includes(sayName(name));
}

function textOrNull(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

/**
 * The record of a job folder; null where there is none that can be understood.
 *
 * @throws FileTrouble.
 */
export function readRecord(disk: FolderDisk, folder: Buffer): JobRecord | null {
  const path = joinPath(folder, RECORD_NAME);
  if (disk.look(path)?.kind !== 'file') return null;
  let written: WrittenRecord;
  try {
    written = JSON.parse(readWritten(disk, { path, what: 'The record of this job' }).toString('utf8')) as WrittenRecord;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  if (written?.pinbar !== 1 || written.document !== 'job') return null;
  if (typeof written.id !== 'string' || !isTexts(written.from)) return null;
  const from = written.from.map((name) => Buffer.from(name, 'base64'));
  const beside = typeof written.beside === 'string' ? Buffer.from(written.beside, 'base64') : null;
  if (![...from, ...(beside === null ? [] : [beside])].every(isPlainName)) return null;
  return {
    id: written.id,
    from,
    beside,
    ticket: textOrNull(written.ticket),
    aloneRuns: Number(written.aloneRuns) || 0,
    asked: textOrNull(written.asked),
  };
}

/** The record as bytes. Names are kept in base64, and once more as text for people. */
export function printRecord(record: JobRecord): Buffer {
  const { id, from, beside, ticket, aloneRuns, asked } = record;
  const written = {
    pinbar: 1,
    document: 'job',
    id,
    name: sayFrom(record),
    from: from.map((name) => name.toString('base64')),
    beside: beside?.toString('base64') ?? null,
    ticket,
    aloneRuns,
    asked,
  };
  return Buffer.from(`${JSON.stringify(written, null, 2)}\n`);
}

/** Puts a changed record in the place of the old one, in one step. */
export function replaceRecord(disk: FolderDisk, folder: Buffer, record: JobRecord): void {
  const fresh = joinPath(folder, `${RECORD_NAME}.new`);
  disk.remove(fresh);
  disk.writeNew(fresh, [printRecord(record)]);
  disk.move(fresh, joinPath(folder, RECORD_NAME));
  disk.sync(folder);
}
