// What the page and the worker that paints say to each other.
import type { Outlines } from '../road/list-outlines.js';
import type { BoardView } from './board-view.js';
import type { PaintOrder } from './paint-order.js';
import type { SortedShapes } from './sorted-shapes.js';

/** To the worker that paints. */
export type PaintMessage =
  | { readonly kind: 'outlines'; readonly outlines: Outlines }
  | { readonly kind: 'sorted'; readonly sorted: SortedShapes }
  | { readonly kind: 'paint'; readonly order: PaintOrder }
  | {
      readonly kind: 'point';
      readonly ask: number;
      readonly xMm: number;
      readonly yMm: number;
      readonly withinMm: number;
    };

/** From the worker that paints. */
export type PaintNews =
  | {
      readonly kind: 'painted';
      readonly view: BoardView;
      readonly bitmap: ImageBitmap;
      readonly width: number;
      readonly height: number;
    }
  | { readonly kind: 'pointed'; readonly ask: number; readonly shape: number };
