// What watcher and worker processes say to each other.
import type { LimitChanges } from '../index.js';

/** A job for a worker: it only reads and computes; whatever changes the folder is done by the watcher. */
export interface JobAsked {
  /** Path of the art, bytes. */
  readonly path: Uint8Array;
  /** What the files are called by. */
  readonly fileName: string;
  /** JSON; null: by layer names. */
  readonly ticket: string | null;
  /** Path of the folder that linked pictures are looked for in; null where its name is no text. */
  readonly picturesIn: string | null;
  readonly limits: LimitChanges;
}

/** A job that was made. */
export interface JobMade {
  readonly kind: 'made';
  /** Hash of the art that it was made from. */
  readonly sha256: string;
  /** The manifest last. */
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  /** Hashes of the pictures that were read, in order. */
  readonly pictures: readonly string[];
  readonly codes: readonly string[];
}

/** A job that was not made, and the report about it. */
export interface JobNotMade {
  /** `asks`: an answer in a ticket settles it. */
  readonly kind: 'asks' | 'refused';
  /** The one question in plain words, or what is wrong. */
  readonly question: string;
  /** The report as a designer reads it. */
  readonly text: string;
  /** The report as one JSON document. */
  readonly json: string;
  /** The findings drawn over the art, SVG; null where the art cannot be drawn. */
  readonly picture: Uint8Array | null;
  readonly codes: readonly string[];
}

/** What a worker answers. */
export type JobAnswer = JobMade | JobNotMade;

/** What a worker sends back: an answer, the system's code for why the art could not be read, or a fault of pinbar in its words. */
export type WorkerReply = { readonly answer: JobAnswer } | { readonly unread: string } | { readonly fault: string };

/** Why a worker gave no answer. */
export type WorkerEnd = 'died' | 'time' | 'memory' | 'stopped';
