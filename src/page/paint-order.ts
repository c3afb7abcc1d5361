// What the worker that paints is asked for.
import type { Matrix } from '../geometry/matrix.js';
import type { BoardView } from './board-view.js';

/** Ties of a pass beyond this number have no rings: these would cover its lines. */
export const MOST_RINGS = 4000;

/** What is to be painted. */
export interface PaintOrder {
  readonly view: BoardView;
  readonly width: number;
  readonly height: number;
  readonly pixelRatio: number;
  /** From mm on the drawing to mm on the board; more than one where a sheet holds copies. */
  readonly copies: readonly Matrix[];
  /** Passes that are shown: 1 in full, 2 faded, 0 not; open and left-out shapes always. */
  readonly shown: readonly number[];
  /** `passes` by pass, `drawn` in the drawing's own colours, `lines` the lines of tools alone. */
  readonly manner: 'passes' | 'drawn' | 'lines';
  /** Per pass: whether a tool follows its lines. */
  readonly tools: readonly boolean[];
  /** Per pass: the middles of its ties on the drawing, x, y pairs in mm. */
  readonly ties: readonly (readonly number[])[];
  /** The art lies below as pictures: only lines of tools and what stands out are painted over it. */
  readonly bare: boolean;
  /** Shapes that stand out: those of a layer with all in it, of a stroke, or one shape. */
  readonly raised: {
    readonly layers: readonly number[];
    readonly stroke: number;
    readonly shape: number;
    readonly loose: boolean;
  };
}
