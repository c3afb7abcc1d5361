// What the page and the worker that does the job say to each other.
import type { Matrix } from '../geometry/matrix.js';
import type { Finding, Json } from '../model/finding.js';
import type { Inspection } from '../model/inspection.js';
import type { Outcome, Stage } from '../model/job.js';
import type { Pass } from '../model/pass.js';
import type { Proof } from '../model/proof.js';
import type { SequenceReport } from '../model/sequence.js';
import type { Ticket } from '../model/ticket.js';
import type { TieReport } from '../model/ties.js';
import type { Outlines } from '../road/list-outlines.js';
import type { ExcerptLine } from './excerpt.js';
import type { SortedShapes } from './sorted-shapes.js';

/** A file beside the drawing. */
export interface SideFile {
  readonly name: string;
  readonly blob: Blob;
}

/** What goes along with the passes: the proof as a page, a run sheet by a profile of the shop. */
export interface Along {
  readonly proofPage: boolean;
  readonly profile: ReadProfile | null;
  readonly machine: string;
  /** '' where it is not said. */
  readonly material: string;
  readonly sheets: number;
}

/** A profile of the shop as a file, and the names in it. */
export interface ReadProfile {
  readonly name: string;
  readonly text: string;
  readonly machines: readonly string[];
  readonly materials: readonly string[];
}

/** To the worker that does the job. */
export type JobOrder =
  | {
      readonly kind: 'open';
      readonly run: number;
      readonly name: string;
      readonly blob: Blob;
      readonly beside: readonly SideFile[];
      readonly userUnitsPerInch: number | null;
    }
  | { readonly kind: 'ticket'; readonly run: number; readonly name: string; readonly text: string }
  | { readonly kind: 'split'; readonly run: number; readonly ticket: Json; readonly along: Along }
  | { readonly kind: 'profile'; readonly run: number; readonly name: string; readonly text: string };

/** A finished file. */
export interface MadeFile {
  readonly name: string;
  readonly byteLength: number;
  readonly sha256: string;
  readonly blob: Blob;
  /** Index of its pass; -1 for proof, manifest and ticket. */
  readonly pass: number;
}

/** How many shapes of a layer or stroke went to each pass; -1 open, -2 left out. */
export type Shares = readonly (readonly [pass: number, shapes: number])[];

/** A finding with its number and what it points at. */
export interface NumberedPlace {
  readonly number: number;
  readonly heading: string;
  readonly finding: Finding;
  /** Measured and allowed value, place, count: one line. */
  readonly details: string;
  /** mm from the artboard's top left. */
  readonly spots: readonly (readonly [number, number])[];
}

/** Where the copies lie, from mm on the drawing to mm on the sheet. */
export interface SheetOfCopies {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly copies: readonly Matrix[];
  /** Share of the sheet that is blank, from 0 to 1. */
  readonly yieldShare: number;
}

/** A job as the page shows it. */
export interface JobReport {
  readonly outcome: Outcome;
  readonly stem: string;
  readonly ticket: Json;
  readonly passes: readonly Pass[];
  readonly shapesPerPass: readonly number[];
  readonly sorted: SortedShapes;
  readonly reasons: readonly string[];
  /** By layer index; the shapes right in it. */
  readonly layerShares: readonly Shares[];
  readonly strokeShares: Readonly<Record<string, Shares>>;
  readonly restShares: Shares;
  readonly findings: readonly NumberedPlace[];
  readonly proof: Proof;
  /** Passes that were put in order, and passes that got ties. */
  readonly sequence: readonly SequenceReport[];
  readonly ties: readonly TieReport[];
  readonly files: readonly MadeFile[];
  /** All files and the ticket; null where there are no files. */
  readonly zip: Blob | null;
  readonly marginMm: number;
  /** Copies on a sheet; null where the passes are as large as the drawing. */
  readonly sheet: SheetOfCopies | null;
}

/** From the worker that does the job. */
export type JobNews =
  | { readonly kind: 'stage'; readonly run: number; readonly stage: Stage }
  | {
      readonly kind: 'opened';
      readonly run: number;
      readonly inspection: Inspection;
      readonly outlines: Outlines;
      readonly ids: readonly string[];
    }
  | { readonly kind: 'ticket'; readonly run: number; readonly ticket: Ticket }
  | { readonly kind: 'profile'; readonly run: number; readonly profile: ReadProfile }
  | { readonly kind: 'done'; readonly run: number; readonly report: JobReport }
  | {
      readonly kind: 'failed';
      readonly run: number;
      /** The order that failed. */
      readonly of: JobOrder['kind'];
      readonly findings: readonly Finding[];
      readonly excerpt: readonly ExcerptLine[];
    };
