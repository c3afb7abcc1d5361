// The arrangement that blanks are taken from.
import type { Piece } from '../model/faces.js';
import { type EdgeTable, kindOf } from './edge-table.js';
import type { HalfFaces } from './merge-slivers.js';
import type { Nesting } from './nest-loops.js';
import type { Loops } from './trace-loops.js';

/** Edges, the loops they form, and the face on each half edge. */
export interface Ground {
  readonly table: EdgeTable;
  readonly loops: Loops;
  readonly nesting: Nesting;
  readonly halves: HalfFaces;
  readonly mmPerPx: number;
  /** Shape of each line. */
  readonly shapeOf: readonly number[];
}

/** An edge as others see it. */
export function pieceOf({ table, shapeOf }: Ground, edge: number): Piece {
  const { nodes, a, b } = table;
  return {
    x0: nodes.x[a[edge]!]!,
    y0: nodes.y[a[edge]!]!,
    x1: nodes.x[b[edge]!]!,
    y1: nodes.y[b[edge]!]!,
    shape: shapeOf[table.lines[edge]!]!,
    kind: kindOf(table.kinds[edge]!),
  };
}
