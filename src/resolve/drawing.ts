// What every step of resolving looks at: one file, prepared.
import type { Box } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { PathReader } from '../geometry/path-data.js';
import type { Limits, Source } from '../source/source.js';
import type { AttributeSlots } from './attribute-slots.js';
import type { Cascade } from './cascade.js';
import type { FindingLog } from './finding-log.js';
import type { Style } from './style.js';

/** The viewport that percentages refer to, user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
  /** Whether its size depends on the artboard's. */
  readonly isOuter: boolean;
}

/** What the geometry of an element is read with. */
export interface GeometryGrounds {
  readonly source: Source;
  readonly slots: AttributeSlots;
  /** What an element is, by name; see element-codes. */
  readonly codes: Uint8Array;
  readonly reader: PathReader;
  readonly log: FindingLog;
  readonly notes: DrawingNotes;
}

/** A file on its way to an artwork. */
export interface Drawing extends GeometryGrounds {
  readonly limits: Limits;
  readonly cascade: Cascade;
  /** Computed style by row, as the elements stand in the file. */
  readonly styles: readonly Style[];
  /** First row with each id; listed when first asked for. */
  readonly ids: ReadonlyMap<string, number>;
  /** What each use draws. */
  readonly targets: ReadonlyMap<number, number>;
  /** Row of the group of marks, or -1. */
  readonly marks: number;
  readonly hasConditions: boolean;
  /** Matrices of `transform` attributes by their text; null where it cannot be read. */
  readonly transforms: Map<string, Matrix | null>;
  /**
   * The object bounding box of an element in its own user units, or its stroke bounding box, whatever clips it; that of a use
   * holds its x and y.
   *
   * @source SVG 2, section 8.10
   */
  readonly measureObject: (row: number, setting: Setting, extent: 'fill' | 'stroke') => Box;
}

/** What is learned on the way. */
export interface DrawingNotes {
  usesPercent: boolean;
  /** Shapes measured a second time for clips and reference boxes. */
  measured: number;
}

/** What the lengths of an element are relative to. */
export interface Setting {
  readonly style: Style;
  readonly viewport: Viewport;
}
