// The blank as plain data that survives JSON: its panels as a tree of folds, with sizes and outlines.

/** Size of an area by the smallest rectangle around it, however it lies, and a point within. Lengths in mm from the artboard's top left. */
export interface SolidArea {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly areaMm2: number;
  readonly xMm: number;
  readonly yMm: number;
  /** The rim and the holes, each a closed run of x, y pairs; curves are flattened. */
  readonly outlineMm: readonly (readonly (readonly [number, number])[])[];
}

/** What stays flat when the blank is folded. */
export interface SolidPanel extends SolidArea {
  readonly index: number;
  /** Index of the blank it belongs to. */
  readonly blank: number;
  /** Index of the panel that holds it; -1 for the one that all others of the blank hang on. */
  readonly parent: number;
  /** Folds between it and that one. */
  readonly depth: number;
  /** The fold that joins it to `parent`; null where there is none. */
  readonly hinge: SolidHinge | null;
}

/** A fold between two panels. */
export interface SolidHinge {
  readonly kind: 'crease' | 'perforation';
  readonly lengthMm: number;
  /** Ends of its straight pieces: x, y, x, y. */
  readonly piecesMm: readonly (readonly [number, number, number, number])[];
}

/** A piece that stays in one when the board is cut. */
export interface SolidBlank extends SolidArea {
  readonly index: number;
  /** Its panels: the one that all others hang on first, then as they are reached from it. */
  readonly panels: readonly number[];
}

/** Blanks, panels and what is left of the board. */
export interface Solid {
  readonly blanks: readonly SolidBlank[];
  readonly panels: readonly SolidPanel[];
  /** Folds that close a ring of panels, as the glued side of a sleeve would if it were drawn closed. */
  readonly rings: readonly (SolidHinge & { readonly panels: readonly [number, number] })[];
  /** Pieces that are cut loose and are no blanks. */
  readonly loosePieces: number;
  /** Smallest upright rectangle around all blanks: x, y, width, height. */
  readonly extentMm: readonly [number, number, number, number];
  /** Area of all blanks. */
  readonly areaMm2: number;
  /** Share of the extent that is no blank, from 0 to 1. */
  readonly wasteShare: number;
}
