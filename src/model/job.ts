// What a caller hands to the road and what comes back.
import type { Matrix } from '../geometry/matrix.js';
import type { Artwork } from './artwork.js';
import type { Finding, Severity } from './finding.js';
import type { Layout } from './layout.js';
import type { Assignment } from './pass.js';
import type { CancelSignal } from './platform.js';
import type { Proof } from './proof.js';
import type { TurnedPass } from './run-sheet.js';
import type { SequenceReport } from './sequence.js';
import type { OutputFile } from './sheet.js';
import type { Solid } from './solid.js';
import type { Ticket } from './ticket.js';
import type { TieReport } from './ties.js';

/** What the road is doing. */
export type Stage =
  | 'read'
  | 'resolve'
  | 'classify'
  | 'split'
  | 'check'
  | 'derive'
  | 'lay-out'
  | 'compact'
  | 'write'
  | 'read-back'
  | 'witness'
  | 'report';

/** Bounds of the reader that a caller may change; see `DEFAULT_LIMITS`. */
export interface LimitChanges {
  readonly bytes?: number;
  readonly unpackedBytes?: number;
  readonly depth?: number;
  readonly elements?: number;
  readonly attributesPerElement?: number;
  readonly entities?: number;
  readonly entityBytes?: number;
  readonly entityTotalBytes?: number;
  readonly references?: number;
  readonly selectors?: number;
}

/** Options of `inspect` and `split`. */
export interface RoadOptions {
  /** Name of the file, for messages and for the names of the sheets. Default `art.svg`. */
  readonly fileName?: string;
  readonly limits?: LimitChanges;
  /** Stops the run between stages; an AbortSignal fits. */
  readonly signal?: CancelSignal;
  /** Told before each stage. */
  readonly onProgress?: (stage: Stage) => void;
  /**
   * Reads a picture that the file links to, by the address written there; null where there is none.
   * Called only when the ticket says to embed. The caller must not let an address lead out of the file's folder.
   */
  readonly loadPicture?: (address: string) => Promise<Uint8Array | null>;
  /** True leaves out the checks of `split`; the manifest says so. */
  readonly skipChecks?: boolean;
  /** True makes the proof as a page too, to be read in a browser. */
  readonly proofPage?: boolean;
  /** False leaves out reading back and the second judge; the proof then says that nobody looked. */
  readonly verify?: boolean;
}

/** How a job ended. `answer-needed`: an answer in the ticket settles it; nothing was made. `refused`: errors no answer settles. */
export type Outcome = 'in-register' | 'answer-needed' | 'refused' | 'not-verified';

/** What came of a job. */
export interface JobResult {
  readonly outcome: Outcome;
  readonly ticket: Ticket;
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  /** One file per pass, in order; empty unless the passes could be made and overlay. */
  readonly files: readonly OutputFile[];
  /** Passes that were put in order. */
  readonly sequence: readonly SequenceReport[];
  /** Passes that got ties, and the passes of the ties alone where they were asked for. */
  readonly ties: readonly TieReport[];
  readonly tieFiles: readonly OutputFile[];
  /** Files of passes on the reverse, and of their ties, mirrored as the machine needs them, where the ticket says how the sheet is turned. */
  readonly turnedFiles: readonly TurnedPass[];
  /** Null where there are no files. */
  readonly manifest: OutputFile | null;
  /** The picture of the proof; null where there are no files. */
  readonly proofPicture: OutputFile | null;
  /** The proof as a page; null where there are no files, or nobody asked for it. */
  readonly proofPage: OutputFile | null;
  readonly proof: Proof;
  readonly findings: readonly Finding[];
  /** The blank with its panels; null where no lines enclose one, or the checks were skipped. */
  readonly solid: Solid | null;
  /** Where the copies lie; null where no sheet is asked for, or they do not fit. */
  readonly layout: Layout | null;
  readonly stem: string;
}

/** Whether artwork is fit to run. `answer-needed`: an answer in the ticket settles it; `unfit`: the artwork must be mended. */
export type Fitness = 'fit' | 'answer-needed' | 'unfit';

/** What the checks found. */
export interface CheckResult {
  readonly outcome: Fitness;
  readonly ticket: Ticket;
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  /** Those of reading, sorting and splitting among them, worst first. */
  readonly findings: readonly Finding[];
  readonly counts: Readonly<Record<Severity, number>>;
  /** The blank with its panels; null where no lines enclose one. */
  readonly solid: Solid | null;
  /** Where the copies would lie; null where no sheet is asked for, or they do not fit. */
  readonly layout: Layout | null;
  /** The findings numbered over the art, as SVG. */
  readonly picture: OutputFile;
  readonly stem: string;
}

/** How a run of some files handed in ended. */
export interface Comparison {
  readonly inRegister: boolean;
  readonly files: readonly ComparedFile[];
  readonly matches: readonly ShapeMatch[];
  readonly greatestDeviationMm: number;
  readonly greatestDeviationAt: string;
  readonly findings: readonly Finding[];
  /** Where the files hold copies of the source: how the matrices are known, and what came of each copy. */
  readonly copies?: {
    readonly from: 'said' | 'found';
    readonly list: readonly ComparedCopy[];
  };
}

/** One copy on the sheets, all files taken together. */
export interface ComparedCopy {
  /** From mm on the source to mm on the sheet. */
  readonly matrixMm: Matrix;
  /** Shapes of it that were found again, over all files. */
  readonly shapes: number;
  readonly greatestDeviationMm: number;
}

/** One file that was compared. */
export interface ComparedFile {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sizeIsSure: boolean;
  readonly viewBox: readonly number[] | null;
  readonly shapes: number;
  readonly extentsMm: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  } | null;
  readonly marks: boolean;
}

/** A shape of the source found in a file. */
export interface ShapeMatch {
  readonly file: string;
  /** On sheets of copies: which one it is of, from 1. */
  readonly copy?: number;
  /** Name of the shape: kind and id or place in paint order. */
  readonly shape: string;
  readonly by: 'id' | 'geometry';
  readonly dxMm: number;
  readonly dyMm: number;
  readonly deviationMm: number;
}
