// What a job asks for, typed and complete.
import type { CheckSettings } from './check-settings.js';
import type { FindingCode } from './finding.js';
import type { SheetRequest } from './layout.js';
import type { Role } from './pass.js';
import type { SequenceRequest } from './sequence.js';
import type { TieRequest } from './ties.js';

/** What a rule looks at; every given condition must hold. Text patterns know `*`, and fold case and accents. */
export interface Conditions {
  /** Name or path of a layer around the shape; with `/` before it the whole path to the letter, and `/` alone for shapes in no layer. */
  readonly layer?: string;
  /** Colour of the stroke, in any CSS spelling. */
  readonly stroke?: string;
  /** Colour of the fill, `none`, or `any`. */
  readonly fill?: string;
  /** Width of the stroke on the artboard, mm, within 0.01. */
  readonly widthMm?: number;
  /** Whether the stroke is dashed. */
  readonly dashed?: boolean;
  readonly class?: string;
  readonly id?: string;
  /** Element kind: path, rect, circle, ellipse, line, polyline, polygon, text, image. */
  readonly element?: string;
  /** Greatest difference per channel (0 to 255) at which colours still count as equal. */
  readonly colourTolerance?: number;
  /** True takes what no other rule takes. */
  readonly rest?: boolean;
}

/** Which shapes go to a pass. */
export interface Rule extends Conditions {
  /** Name of the pass that takes the shapes. */
  readonly pass: string;
}

/** A pass that the ticket declares. */
export interface PassRequest {
  readonly name: string;
  readonly role: Role;
  /** What the machine finds the sheet's position by: `edge`, `pins`, `printed-marks`, or the name of a pass whose marks it looks at. */
  readonly registersTo?: string;
  /** The side of the sheet that faces the tool. Left out: `reverse` for the reverse roles, else `front`. */
  readonly side?: 'front' | 'reverse';
  /** How the sheet is turned over for it: keeping the edge that the machine holds, or taking the one across. */
  readonly turn?: 'work-and-turn' | 'work-and-tumble';
  /** Where the axis of the turn lies, mm from the left or the top of the file; left out: in the middle. */
  readonly axisMm?: number;
  /** Size of the sheet that the pass is set up for, mm. */
  readonly widthMm?: number;
  readonly heightMm?: number;
}

/** Marks that every sheet gets. Lengths in mm. */
export interface MarksRequest {
  readonly wanted: boolean;
  readonly discDiameterMm: number;
  readonly crossSizeMm: number;
  readonly lineWidthMm: number;
  /** Clear distance from what is drawn. */
  readonly offsetMm: number;
  readonly cornerLengthMm: number;
  /** Pass names that carry register marks; empty for all. Corner marks stand on every pass. */
  readonly passes: readonly string[];
  /** Whether surface passes carry their name and order. */
  readonly label: boolean;
}

/** A job, every default filled in. */
export interface Ticket {
  /** In the order of the runs; empty: one pass per role found, in the default order. */
  readonly passes: readonly PassRequest[];
  /** Empty: by layer names. */
  readonly rules: readonly Rule[];
  /** `ask`: left out with a warning, but asked about where the layer holds a toolpath or a rule names it. */
  readonly hidden: 'ask' | 'skip' | 'include' | 'stop';
  /** Put the fill of a shape in the print pass and its stroke in the die pass. */
  readonly partPaint: boolean;
  readonly linkedPictures: 'ask' | 'embed' | 'leave-out';
  readonly marks: MarksRequest;
  /** Copies on a sheet; left out: the passes are as large as the drawing. */
  readonly sheet?: SheetRequest;
  /** How much the artboard grows on every side, mm. */
  readonly marginMm: number;
  /** User units to the inch for a root whose size is not sure; null: 96, with a warning. */
  readonly userUnitsPerInch: number | null;
  readonly compact: boolean;
  readonly witness: 'auto' | 'always' | 'never';
  /** Order of the lines in tool passes; left out: that of the file. */
  readonly sequence?: SequenceRequest;
  /** Passes that get ties; left out: none. */
  readonly ties?: readonly TieRequest[];
  /** What the checks hold the artwork against. */
  readonly checks: CheckSettings;
  /** New severities for warnings and notes. */
  readonly severities: Readonly<Partial<Record<FindingCode, 'error' | 'warning' | 'note'>>>;
}
