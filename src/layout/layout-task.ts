// What a search for a layout looks at, and what it finds.
import type { Box } from '../geometry/box.js';
import type { LayoutMethod, LayoutPiece, SheetRequest } from '../model/layout.js';
import type { Gutters, PlacedCopy } from './place-rows.js';

/** What the search looks at. */
export interface LayoutTask {
  readonly piece: LayoutPiece;
  readonly request: SheetRequest;
  readonly free: Box;
  readonly gutters: Gutters;
  readonly reachMm: number;
}

/** Copies in place, before they are moved to the middle. */
export interface Arrangement {
  readonly method: LayoutMethod;
  readonly columns: number | null;
  readonly rows: number | null;
  readonly copies: readonly PlacedCopy[];
}
