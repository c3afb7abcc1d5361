// A pass on its way to a file: spans of the source and small insertions.
import type { Finding } from './finding.js';
import type { Pass } from './pass.js';

/** One pass, in pieces; the bytes of the pieces one after the other are the file. */
export interface Sheet {
  readonly pass: Pass;
  /** Views of the source and inserted bytes. */
  readonly pieces: readonly Uint8Array[];
  /** Index of the piece before which marks go (just before the root's end tag). */
  readonly marksAt: number;
  /** For each element of the file in document order, its row in the source's element table, or -1 where pinbar put it there. */
  readonly rows: Int32Array;
  readonly findings: readonly Finding[];
}

/** New values for the root's size; null leaves what is written. */
export interface RootSize {
  readonly width: string | null;
  readonly height: string | null;
  readonly viewBox: string | null;
}

/** A picture beside the source, read by the caller. */
export interface Picture {
  readonly bytes: Uint8Array;
}

/** A finished file that nobody has written yet. */
export interface OutputFile {
  readonly name: string;
  readonly mediaType: 'image/svg+xml' | 'application/json' | 'text/html' | 'application/vnd.cip4-xjdf+xml';
  /** The pieces one after the other are the file; most are views of the source. */
  readonly pieces: readonly Uint8Array[];
  readonly byteLength: number;
  readonly sha256: string;
}

/** Number of bytes in some pieces. */
export function countBytes(pieces: readonly Uint8Array[]): number {
  let length = 0;
  for (const piece of pieces) length += piece.length;
  return length;
}

/**
 * All bytes of a file in one piece.
 *
 * @param scratch - Used where it is large enough, so that file after file needs no new memory; what was in it is gone.
 */
export function joinPieces(pieces: readonly Uint8Array[], scratch?: Uint8Array): Uint8Array {
  const length = countBytes(pieces);
  const bytes =
    scratch !== undefined && scratch.length >= length ? scratch.subarray(0, length) : new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
