// Reads a job that a split wrote: its manifest, its marks, its passes.
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readInput } from '../disk/read-input.js';
import { type DrawnMarks, PinbarError, type SheetTurn } from '../index.js';

/** A pass of a written job. */
export interface WrittenPass {
  readonly name: string;
  readonly file: string;
  readonly sha256: string;
  /** How the sheet is turned for a pass on the reverse, which then has a mirrored file too. */
  readonly turn?: SheetTurn | undefined;
}

/** What later steps need of a written job. */
export interface WrittenJob {
  /** As it was parsed. */
  readonly manifest: unknown;
  readonly folder: string;
  readonly marks: DrawnMarks;
  readonly passes: readonly WrittenPass[];
  /** Files of ties alone, under the names of the passes that they belong to. */
  readonly tieFiles: readonly WrittenPass[];
  /** Mirrored files of passes on the reverse and of their ties, so too. */
  readonly turnedFiles: readonly WrittenPass[];
}

type TurnedEntry = SheetTurn & Pick<WrittenPass, 'file' | 'sha256'>;

interface ManifestShape {
  readonly document?: unknown;
  readonly marks?: readonly { readonly name: string; readonly xMm: number; readonly yMm: number }[];
  readonly passes?: readonly (Omit<WrittenPass, 'turn'> & { readonly turned?: TurnedEntry })[];
  readonly ties?: readonly {
    readonly pass: string;
    readonly tiesFile?: string | null;
    readonly tiesSha256?: string;
    readonly tiesTurned?: TurnedEntry;
  }[];
}

function refuse(folder: string, why: string, cause?: unknown): PinbarError {
  return new PinbarError(
    'use/wrong',
    {
      message: `${folder} is no job of pinbar: ${why}.`,
      remedy: 'Name the folder that pinbar split wrote, the one with manifest.json in it.',
      place: { file: folder },
    },
    [],
    cause,
  );
}

/** How a mirrored file of the manifest is mirrored. */
function pickTurn(turned: TurnedEntry | undefined): SheetTurn | undefined {
  return turned === undefined ? undefined : { axis: turned.axis, axisMm: turned.axisMm, way: turned.way };
}

/**
 * Reads the manifest of a job.
 *
 * @throws PinbarError `use/wrong` where the folder holds none.
 */
export async function readJob(folder: string): Promise<WrittenJob> {
  let manifest: ManifestShape | null;
  try {
    manifest = JSON.parse(await readFile(join(folder, 'manifest.json'), 'utf8')) as ManifestShape | null;
  } catch (error) {
    throw refuse(folder, 'its manifest.json cannot be read', error);
  }
  if (manifest?.document !== 'manifest' || !Array.isArray(manifest.passes)) {
    throw refuse(folder, 'its manifest.json is not that of a split');
  }
  const marks = new Map((manifest.marks ?? []).map(({ name, xMm, yMm }) => [name, [xMm, yMm] as const]));
  const { ties = [] } = manifest;
  const passes = manifest.passes.map(({ name, file, sha256, turned }) => ({
    name,
    file,
    sha256,
    turn: pickTurn(turned),
  }));
  const tieFiles = ties.flatMap(({ pass: name, tiesFile: file, tiesSha256: sha256, tiesTurned }) =>
    typeof file === 'string' && sha256 !== undefined ? [{ name, file, sha256, turn: pickTurn(tiesTurned) }] : [],
  );
  const turnedFiles = [
    ...manifest.passes.map(({ name, turned }) => ({ name, turned })),
    ...ties.map(({ pass: name, tiesTurned: turned }) => ({ name, turned })),
  ].flatMap(({ name, turned }) => (turned === undefined ? [] : [{ name, file: turned.file, sha256: turned.sha256 }]));
  return { manifest, folder, marks, passes, tieFiles, turnedFiles };
}

/**
 * The bytes of one of its passes, the very ones that were proved.
 *
 * @throws PinbarError `register/file-changed` where the file is not that of the manifest.
 */
export async function readPass(job: WrittenJob, pass: WrittenPass): Promise<Uint8Array> {
  // Only a name, wherever the manifest would lead.
  const name = pass.file.split(/[\\/]/).at(-1)!;
  const { bytes } = await readInput(join(job.folder, name));
  if (createHash('sha256').update(bytes).digest('hex') !== pass.sha256) {
    throw new PinbarError('register/file-changed', {
      message: `${name} is not the file that the manifest of ${job.folder} tells of.`,
      remedy: 'Split the drawing again, or put the file back as it was.',
      place: { file: name },
    });
  }
  return bytes;
}
