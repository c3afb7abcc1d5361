// Copies of a blank on a sheet: what is asked for, and where they come to lie.
import type { Box } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from './finding.js';
import type { MarkPlan } from './marks.js';

/** Edge of a sheet. */
export type SheetSide = 'top' | 'bottom' | 'left' | 'right';

/** The edge that the machine holds the sheet by where nobody says one: for copies, checks and run sheets alike. Common practice, no source. */
export const GRIPPER_SIDE: SheetSide = 'bottom';

/** A sheet of copies, as the ticket asks for it. Lengths in mm. */
export interface SheetRequest {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Strip that the machine holds the sheet by; nothing is drawn there. */
  readonly gripperMm: number;
  readonly gripperSide: SheetSide;
  /** Strip along the other edges that stays free. */
  readonly marginsMm: number;
  /** Clear distance between blanks, across and down. */
  readonly gutterMm: number;
  /** Across and down where they differ. */
  readonly gutterXMm?: number;
  readonly gutterYMm?: number;
  /** `max`, a number of copies, or columns by rows: `3x2`. */
  readonly ups: string | number;
  /** Turn of the copies clockwise, degrees; `head-to-tail`: every other row upside down. Left out: 0, and with `max` whatever is best. */
  readonly turn?: 0 | 90 | 180 | 270 | 'head-to-tail';
  /** Whether the copies lie in the middle of what is free, or start at its top left. */
  readonly place: 'centre' | 'origin';
  /** Whether each copy gets a small cross of its own, clear of all copies. */
  readonly copyMark: boolean;
  /**
   * `written`: each copy is written out, for readers of machines that know no `use`. `referenced`: the pass stands in the file once,
   * and each copy refers to it.
   */
  readonly copies: 'written' | 'referenced';
  /** Size of a copy against the drawing. */
  readonly scale: number;
}

/** A blank to be laid out. Lengths in mm on the artboard of the passes. */
export interface LayoutPiece {
  /** What counts as the copy: the box of its blanks; where no lines enclose one, of all that is drawn. */
  readonly boxMm: Box;
  readonly boxIs: 'blank' | 'drawn';
  /** Area of the blanks, or of the box. */
  readonly areaMm2: number;
  /** Outlines of the blanks, the outer rims alone; empty where no lines enclose one. */
  readonly rimsMm: readonly (readonly (readonly [number, number])[])[];
  /** What all passes draw. */
  readonly drawnMm: Box;
  /** What passes that cover areas draw; empty where there are none. */
  readonly printedMm: Box;
  /** The area of it, where it was worked out; else all of the box counts. */
  readonly printedRingsMm?: readonly (readonly (readonly [number, number])[])[];
}

/** How a layout was found. */
export type LayoutMethod = 'rows' | 'head-to-tail rows' | 'blocks' | 'interlocked';

/** How full a sheet is. */
export interface Fill {
  readonly copies: number;
  /** Share of the sheet that is blank, from 0 to 1. */
  readonly yieldShare: number;
}

/** Where the copies lie: one list for all passes. */
export interface Layout extends Fill {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly method: LayoutMethod;
  /** Columns and rows where the copies form such; else null. */
  readonly columns: number | null;
  readonly rows: number | null;
  /** From mm on the artboard of a pass to mm on the sheet, one per copy. */
  readonly matricesMm: readonly Matrix[];
  readonly sheetAreaMm2: number;
  /** What counts as the copy: its blanks, or all that is drawn where no lines enclose one. */
  readonly copyIs: LayoutPiece['boxIs'];
  /** Of one copy, as it lies on the sheet. */
  readonly blankAreaMm2: number;
  /** Box of each copy on the sheet, in the order of the matrices. */
  readonly boxesMm: readonly Box[];
  /** What all copies draw. */
  readonly drawnMm: Box;
  /** What may be drawn on: the sheet without gripper and margins. */
  readonly freeMm: Box;
  /** The most that upright rectangles in plain rows reach on this sheet. */
  readonly rectangle: Fill;
  readonly scale: number;
}

/** What the layout decides. */
export interface LayoutDecision {
  /** Null where the copies do not fit. */
  readonly layout: Layout | null;
  /** Marks of the sheet, mm on the sheet; null where there are none. Its matrix is that of mm on the sheet. */
  readonly marks: MarkPlan | null;
  readonly findings: readonly Finding[];
}
