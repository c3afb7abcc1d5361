// The blank as faces: what cut and crease lines enclose, panels and what holds them.

/** What a line does to the board: parts it, folds it, or weakens it so that it holds until torn. */
export type LineKind = 'cut' | 'crease' | 'perforation';

/** A straight piece on the artboard, px. */
export interface Piece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** Index of the shape that draws it. */
  readonly shape: number;
  readonly kind: LineKind;
}

/** Long and short side of the smallest rectangle around, however it lies. */
export interface Size {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** A closed area between lines. Loops are closed runs of x, y pairs in px on the artboard. */
export interface Region extends Size {
  readonly outer: Float64Array;
  readonly holes: readonly Float64Array[];
  /** Without its holes. */
  readonly areaMm2: number;
  /** A point within, px. */
  readonly x: number;
  readonly y: number;
}

/** A face of a blank: what stays flat when it is folded. */
export interface Panel extends Region {
  readonly index: number;
  /** Index of its blank. */
  readonly blank: number;
  /** Index of the panel that holds it, or -1 for the root of its blank. */
  readonly parent: number;
  /** Folds between it and the root. */
  readonly depth: number;
  /** The line that joins it to `parent`; null for a root. */
  readonly hinge: Hinge | null;
}

/** The line that joins two panels; its pieces lie one after the other where it is straight. */
export interface Hinge {
  readonly panels: readonly [number, number];
  readonly kind: 'crease' | 'perforation';
  readonly lengthMm: number;
  readonly pieces: readonly Piece[];
}

/** A piece that stays in one when the board is cut. */
export interface Blank extends Region {
  readonly index: number;
  /** Indices of its panels, the root first, then as they are reached from it. */
  readonly panels: readonly number[];
  /** Index of the largest panel. */
  readonly root: number;
  /** Positions, in the list of lines, of those that cut its outline, and of those that cut within: holes and slits. */
  readonly outerLines: readonly number[];
  readonly innerLines: readonly number[];
}

/** A piece that is cut loose and is no blank: a window, a punched hole, an offcut. */
export interface Island extends Region {
  /** Index of the shape that draws most of its outline. */
  readonly shape: number;
  /** Positions of the lines that cut its outline. */
  readonly lines: readonly number[];
}

/** An opening between two ends of cut lines, px. */
export interface Gap {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly gapMm: number;
  /** Shapes that end at either side. */
  readonly shapes: readonly [number, number];
  /** By how much the line turns across it, radians: 0 where both sides run straight into each other. */
  readonly turn: number;
}

/** An end of a line that meets no other line. */
export interface LooseEnd {
  readonly x: number;
  readonly y: number;
  /** Unit vector in which the line ran when it ended. */
  readonly dx: number;
  readonly dy: number;
  readonly shape: number;
  readonly kind: LineKind;
  /** Index of the panel in which it ends, or -1 outside of all. */
  readonly panel: number;
  /** Lines of a kind that hang together have the same number. */
  readonly chain: number;
  /** Length of all of them. */
  readonly chainMm: number;
}

/** A stretch of a crease or perforation that joins nothing. */
export interface IdleFold {
  /** Index of the panel in which it lies, or -1: outside, or in a piece that falls out. */
  readonly panel: number;
  readonly lengthMm: number;
  readonly pieces: readonly Piece[];
}

/** What the lines enclose. */
export interface Faces {
  readonly panels: readonly Panel[];
  readonly blanks: readonly Blank[];
  readonly islands: readonly Island[];
  /** Joints beyond those of the tree: folds that close a ring of panels. */
  readonly rings: readonly Hinge[];
  /** Openings in cut lines that were taken as closed. */
  readonly gaps: readonly Gap[];
  readonly looseEnds: readonly LooseEnd[];
  /** Creases and perforations with the same panel, or none, on both sides, or in a piece that falls out. */
  readonly idle: readonly IdleFold[];
  /** Stretches of creases and perforations with board on one side and the outside on the other: there the outline is not cut. */
  readonly uncut: readonly Piece[];
  /** Smallest upright rectangle around all blanks, mm from the artboard's top left: x, y, width, height; null without blanks. */
  readonly extentMm: readonly [number, number, number, number] | null;
  /** Area of all blanks. */
  readonly areaMm2: number;
  /** Share of the extent that is no blank, from 0 to 1. */
  readonly wasteShare: number;
}
