// A shape whose boxes with the stroke are worked out when asked for.
import type { Box } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { Paint, Shape, ShapeKind } from '../model/artwork.js';
import type { Drawing, Setting } from './drawing.js';
import { type ExactBoxes, type Measures, measureLater } from './measure-shape.js';
import type { Visited } from './walk-tree.js';

/** What a shape is called and how it is painted. */
export interface ShapeFacts {
  readonly index: number;
  readonly kind: ShapeKind;
  readonly id: string;
  readonly classes: readonly string[];
  readonly paint: Paint;
}

/**
 * A shape made by `resolve`.
 *
 * A class, since two accessors on each of 100,000 literals take twice the memory and time of one prototype.
 */
export class ResolvedShape implements Shape {
  readonly index: number;
  readonly element: number;
  readonly carrier: number;
  readonly layer: number;
  readonly kind: ShapeKind;
  readonly id: string;
  readonly classes: readonly string[];
  readonly paint: Paint;
  readonly matrix: Matrix;
  readonly fillBox: Box;
  readonly drawnBound: Box;
  readonly hidden: boolean;
  readonly draws: boolean;
  /** What its lengths are relative to, so that its geometry can be read again. */
  readonly setting: Setting;
  /** What the boxes are worked out from; null once they are. */
  #source: { readonly drawing: Drawing; readonly visited: Visited } | null;
  #exact: ExactBoxes | null;

  constructor(facts: ShapeFacts, measures: Measures, visited: Visited, drawing: Drawing) {
    this.index = facts.index;
    this.element = visited.row;
    this.carrier = visited.carrier;
    this.layer = visited.layer;
    this.kind = facts.kind;
    this.id = facts.id;
    this.classes = facts.classes;
    this.paint = facts.paint;
    this.matrix = visited.matrix;
    this.fillBox = measures.fillBox;
    this.drawnBound = measures.drawnBound;
    this.hidden = visited.isHidden;
    this.draws = measures.draws;
    this.setting = visited.setting;
    this.#exact = measures.exact;
    this.#source = measures.exact === null ? { drawing, visited } : null;
  }

  /** See `Shape.strokeBox`. */
  get strokeBox(): Box {
    return this.#measure().strokeBox;
  }

  /** See `Shape.drawnBox`. */
  get drawnBox(): Box {
    return this.#measure().drawnBox;
  }

  #measure(): ExactBoxes {
    if (this.#exact === null) {
      const { drawing, visited } = this.#source!;
      this.#exact = measureLater(drawing, visited, this.paint);
      this.#source = null;
    }
    return this.#exact;
  }
}

/** Whether a shape was made by `resolve`. */
export function isResolvedShape(shape: Shape): shape is ResolvedShape {
  return shape instanceof ResolvedShape;
}
