// What a run sheet needs of a manifest, with the marks of what may be in it.
import { type Matrix, multiply } from '../geometry/matrix.js';
import type { SheetSide } from '../model/layout.js';
import type { Role } from '../model/pass.js';
import type { ExtentMm } from '../model/proof.js';
import type { SheetTurn } from '../model/run-sheet.js';

/** The mirrored file of a pass on the reverse, and how. */
export interface TurnedFile extends SheetTurn {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly deviationMm: number;
}

/** What a ticket says of sheets and passes; one read back from a manifest may lack any of it. */
export interface ManifestTicket {
  readonly marginMm?: number;
  readonly sheet?: { readonly gripperSide?: SheetSide };
  readonly passes?: readonly {
    readonly name: string;
    readonly registersTo?: string;
    readonly side?: 'front' | 'reverse';
    readonly turn?: 'work-and-turn' | 'work-and-tumble';
    readonly axisMm?: number;
  }[];
  readonly checks?: {
    readonly gripperSide?: SheetSide;
    readonly turnAxis?: 'not-said' | 'vertical' | 'horizontal';
    readonly materialWidthMm?: number | null;
    readonly materialHeightMm?: number | null;
  };
}

/** The parts of a manifest that a run sheet is made from; sections that a job need not have are optional. */
export interface ManifestParts {
  readonly input: { readonly name: string; readonly sha256: string };
  readonly passes: readonly {
    readonly order: number;
    readonly name: string;
    readonly role: Role;
    readonly file: string;
    readonly bytes: number;
    readonly sha256: string;
    readonly drawnExtentMm?: ExtentMm | null;
    readonly turned?: TurnedFile;
  }[];
  /** Copies on a sheet. */
  readonly sheet?: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly copies: number;
    readonly matrices?: readonly Matrix[];
  };
  /** Ties that are in the files already, of one copy. */
  readonly ties?: readonly {
    readonly pass: string;
    readonly ties: number;
    readonly tiesMm: number;
    readonly stretch: number;
    /** The file of the ties alone, where there is one. */
    readonly tiesFile?: string | null;
    readonly tiesBytes?: number;
    readonly tiesSha256?: string;
    readonly tiesTurned?: TurnedFile;
  }[];
  readonly marks?: readonly {
    readonly name: string;
    readonly shape: string;
    readonly xMm: number;
    readonly yMm: number;
  }[];
  readonly ticket?: ManifestTicket;
}

/**
 * Where the copies of a job lie, from mm on the drawing to mm on the sheet: what `verify` takes as `copiesMm`.
 *
 * @param manifest - The parsed manifest of the job.
 * @returns One matrix per copy; null where it is no manifest, or that of a job without a sheet.
 */
export function copiesOf(manifest: unknown): readonly Matrix[] | null {
  const parts = readManifest(manifest);
  const matrices = parts?.sheet?.matrices;
  const isMatrix = (matrix: unknown): boolean =>
    Array.isArray(matrix) && matrix.length === 6 && matrix.every((value) => Number.isFinite(value));
  if (!Array.isArray(matrices) || matrices.length === 0 || !matrices.every(isMatrix)) return null;
  // The artboard of a pass has grown by the margin, and the matrices start from it.
  const margin = parts!.ticket?.marginMm ?? 0;
  return matrices.map((matrix) => multiply(matrix, [1, 0, 0, 1, margin, margin]));
}

/** The parts of a parsed manifest; null where it is none. */
export function readManifest(value: unknown): ManifestParts | null {
  const parts = value as (ManifestParts & { readonly document?: unknown }) | null;
  if (typeof parts !== 'object' || parts === null || parts.document !== 'manifest') return null;
  return Array.isArray(parts.passes) && typeof parts.input?.name === 'string' ? parts : null;
}
