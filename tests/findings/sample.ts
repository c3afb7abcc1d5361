// What a sidecar beside a sample says, and the two variants it makes: the provoking one and its clean twin.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { FindingCode, Json, LimitChanges, Place } from '../../src/index.js';

/** Folder of all samples. */
export const SAMPLE_FOLDER: string = dirname(fileURLToPath(import.meta.url));

/** From and to; preceded by the name of a file or a pass where there are several. */
export type Change = readonly string[];

/** How a variant is made and run. */
export interface Variant {
  /** Which door provokes the finding; see run-sample. */
  readonly how:
    | 'inspect'
    | 'split'
    | 'check'
    | 'verify'
    | 'cli'
    | 'ticket'
    | 'profile'
    | 'damage'
    | 'compact'
    | 'measure'
    | 'correct';
  /** Beside the sidecar; left out: the sample of the same name with the ending `.svg`. */
  readonly file?: string;
  readonly change?: readonly Change[];
  readonly bytes?: { readonly gzip?: boolean; readonly cutEnd?: number };
  /** The file is filled up with blanks to this many bytes. */
  readonly padTo?: number;
  readonly ticket?: Json;
  readonly options?: { readonly limits?: LimitChanges; readonly aborted?: boolean };
  /** Which judge looks at damaged sheets. */
  readonly judge?: 'read-back' | 'witness';
  /** Splices of the list of rows of a damaged sheet: pass, start, how many go, what comes. */
  readonly rows?: readonly (readonly [string, number, number, ...number[]])[];
  /** Measured marks, one a line, and the shop's tolerance. */
  readonly marks?: readonly string[];
  readonly toleranceMm?: number;
  readonly arguments?: readonly string[];
  /** Files that are there before the command runs, by path. */
  readonly folder?: Readonly<Record<string, string>>;
}

/** A sidecar. */
export interface Sample extends Variant {
  /** Other codes that come with it. */
  readonly also?: readonly FindingCode[];
  readonly expect: {
    readonly place?: Place;
    readonly data?: Readonly<Record<string, Json>>;
    /** Words of the message. */
    readonly says?: string;
  };
  /** What is different in the nearest variant that does not provoke the finding. */
  readonly clean: Partial<Variant> & { readonly also?: readonly FindingCode[] };
}

/** A sidecar with its name. */
export interface NamedSample {
  readonly code: FindingCode;
  readonly name: string;
  readonly folder: string;
  readonly sample: Sample;
}

/** All samples: `room/code.json`, or `room/code.variant.json` for one more of the same code. */
export function listSamples(): readonly NamedSample[] {
  return readdirSync(SAMPLE_FOLDER, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.json'))
    .sort()
    .map((path) => {
      const name = path.slice(0, -'.json'.length).replaceAll('\\', '/');
      const sample = JSON.parse(readFileSync(join(SAMPLE_FOLDER, path), 'utf8')) as Sample;
      return { code: name.split('.')[0] as FindingCode, name, folder: dirname(join(SAMPLE_FOLDER, path)), sample };
    });
}

/** Makes one change; what is to be changed must be there once. */
export function changeText(text: string, from: string, to: string): string {
  const parts = text.split(from);
  if (parts.length !== 2) throw new Error(`the sample holds ${JSON.stringify(from)} ${parts.length - 1} times`);
  return parts.join(to);
}

/** Bytes of a variant's file, changed as the sidecar says. One character is one byte, whatever the encoding. */
export function readSampleBytes(named: NamedSample, variant: Variant): Uint8Array {
  const file = variant.file ?? `${named.name.split('/').at(-1)}.svg`;
  let text = readFileSync(join(named.folder, file), 'latin1');
  for (const [from, to] of variant.change ?? []) {
    text = changeText(text, Buffer.from(from!).toString('latin1'), Buffer.from(to!).toString('latin1'));
  }
  let bytes: Uint8Array = new Uint8Array(Buffer.from(text.padEnd(variant.padTo ?? 0, ' '), 'latin1'));
  if (variant.bytes?.gzip === true) bytes = new Uint8Array(gzipSync(bytes));
  return bytes.subarray(0, bytes.length - (variant.bytes?.cutEnd ?? 0));
}
