// The shapes of a drawing, kept in columns; a shape reads its own row when asked.
import type { Box } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { Paint, Shape, ShapeKind } from '../model/artwork.js';
import { readAttribute } from '../source/read-attribute.js';
import { SLOT } from './attribute-slots.js';
import { UNBOUNDED } from './clip-boxes.js';
import type { Drawing, Setting } from './drawing.js';
import { shapeKind } from './element-codes.js';
import { type ExactBoxes, type Measures, measureLater } from './measure-shape.js';
import type { ClipChain, Visited } from './walk-tree.js';

const HIDDEN = 1;
const DRAWS = 2;
/** The boxes with the stroke are not worked out yet. */
const LATER = 4;
/** They are, and differ from the box of the geometry. */
const STROKED = 8;

const NO_CLASSES: readonly string[] = [];

/** All shapes of a drawing in paint order. */
export interface ShapeColumns {
  readonly drawing: Drawing;
  count: number;
  element: Int32Array;
  carrier: Int32Array;
  layer: Int32Array;
  code: Uint8Array;
  flags: Uint8Array;
  /** Four numbers a shape: x0, y0, x1, y1. */
  fill: Float64Array;
  /** The drawn box where it is known, else its bound. */
  drawn: Float64Array;
  readonly paints: Paint[];
  readonly matrices: Matrix[];
  readonly settings: Setting[];
  readonly exact: Map<number, ExactBoxes>;
  /** Of the shapes that any clip path cuts. */
  readonly clips: Map<number, ClipChain>;
  readonly classes: Map<string, readonly string[]>;
}

/** Columns without a shape. */
export function createShapeColumns(drawing: Drawing, room: number): ShapeColumns {
  return {
    drawing,
    count: 0,
    element: new Int32Array(room),
    carrier: new Int32Array(room),
    layer: new Int32Array(room),
    code: new Uint8Array(room),
    flags: new Uint8Array(room),
    fill: new Float64Array(4 * room),
    drawn: new Float64Array(4 * room),
    paints: [],
    matrices: [],
    settings: [],
    exact: new Map(),
    clips: new Map(),
    classes: new Map(),
  };
}

function doubled<T extends Int32Array | Uint8Array | Float64Array>(column: T): T {
  const larger = new (column.constructor as new (length: number) => T)(2 * column.length);
  larger.set(column);
  return larger;
}

function growShapes(columns: ShapeColumns): void {
  for (const key of ['element', 'carrier', 'layer'] as const) columns[key] = doubled(columns[key]);
  for (const key of ['code', 'flags'] as const) columns[key] = doubled(columns[key]);
  for (const key of ['fill', 'drawn'] as const) columns[key] = doubled(columns[key]);
}

function putBox(column: Float64Array, index: number, box: Box): void {
  const at = 4 * index;
  column[at] = box.x0;
  column[at + 1] = box.y0;
  column[at + 2] = box.x1;
  column[at + 3] = box.y1;
}

function takeBox(column: Float64Array, index: number): Box {
  const at = 4 * index;
  return { x0: column[at]!, y0: column[at + 1]!, x1: column[at + 2]!, y1: column[at + 3]! };
}

/** Adds a shape; returns its index. */
export function addShapeRow(columns: ShapeColumns, visited: Visited, paint: Paint, measures: Measures): number {
  if (columns.count === columns.element.length) growShapes(columns);
  const index = columns.count;
  columns.count = index + 1;
  columns.element[index] = visited.row;
  columns.carrier[index] = visited.carrier;
  columns.layer[index] = visited.layer;
  columns.code[index] = visited.code;
  const { exact, fillBox } = measures;
  let flags = (visited.isHidden ? HIDDEN : 0) | (measures.draws ? DRAWS : 0);
  if (exact === null) flags |= LATER;
  else if (exact.strokeBox !== fillBox) {
    flags |= STROKED;
    columns.exact.set(index, exact);
  }
  if (visited.clips !== null) columns.clips.set(index, visited.clips);
  columns.flags[index] = flags;
  putBox(columns.fill, index, fillBox);
  putBox(columns.drawn, index, measures.drawnBound);
  columns.paints.push(paint);
  columns.matrices.push(visited.matrix);
  columns.settings.push(visited.setting);
  return index;
}

/** The boxes of a shape whose stroke had to wait. */
function measureRow(columns: ShapeColumns, index: number): ExactBoxes {
  const known = columns.exact.get(index);
  if (known !== undefined) return known;
  const visited: Visited = {
    row: columns.element[index]!,
    code: columns.code[index]!,
    setting: columns.settings[index]!,
    matrix: columns.matrices[index]!,
    // Only a shape that nothing cuts or hides may wait.
    clip: UNBOUNDED,
    clips: null,
    isHidden: false,
    isFaint: false,
    layer: columns.layer[index]!,
    carrier: columns.carrier[index]!,
  };
  const exact = measureLater(columns.drawing, visited, columns.paints[index]!);
  columns.exact.set(index, exact);
  return exact;
}

/**
 * A shape made by `resolve`.
 *
 * A class, since accessors on each of 100,000 literals take twice the memory and time of one prototype.
 */
export class ResolvedShape implements Shape {
  readonly index: number;
  readonly #columns: ShapeColumns;

  constructor(columns: ShapeColumns, index: number) {
    this.index = index;
    this.#columns = columns;
  }

  get element(): number {
    return this.#columns.element[this.index]!;
  }

  get carrier(): number {
    return this.#columns.carrier[this.index]!;
  }

  get layer(): number {
    return this.#columns.layer[this.index]!;
  }

  get kind(): ShapeKind {
    return shapeKind(this.#columns.code[this.index]!);
  }

  get id(): string {
    const { source, slots } = this.#columns.drawing;
    const attribute = slots.find(this.element, SLOT.id);
    return attribute < 0 ? '' : readAttribute(source, attribute);
  }

  get classes(): readonly string[] {
    const { drawing, classes } = this.#columns;
    const attribute = drawing.slots.find(this.element, SLOT.class);
    if (attribute < 0) return NO_CLASSES;
    const text = readAttribute(drawing.source, attribute);
    let names = classes.get(text);
    if (names === undefined) {
      names = text.split(/[ \t\n\f\r]+/).filter((name) => name !== '');
      classes.set(text, names);
    }
    return names;
  }

  get paint(): Paint {
    return this.#columns.paints[this.index]!;
  }

  get matrix(): Matrix {
    return this.#columns.matrices[this.index]!;
  }

  get hidden(): boolean {
    return (this.#columns.flags[this.index]! & HIDDEN) !== 0;
  }

  get draws(): boolean {
    return (this.#columns.flags[this.index]! & DRAWS) !== 0;
  }

  get fillBox(): Box {
    return takeBox(this.#columns.fill, this.index);
  }

  get drawnBound(): Box {
    return takeBox(this.#columns.drawn, this.index);
  }

  get strokeBox(): Box {
    if ((this.#columns.flags[this.index]! & (LATER | STROKED)) === 0) return this.fillBox;
    return measureRow(this.#columns, this.index).strokeBox;
  }

  get drawnBox(): Box {
    if ((this.#columns.flags[this.index]! & LATER) === 0) return this.drawnBound;
    return measureRow(this.#columns, this.index).drawnBox;
  }

  /** What its lengths are relative to, so that its geometry can be read again. */
  get setting(): Setting {
    return this.#columns.settings[this.index]!;
  }

  /** The clip paths around it, innermost first. */
  get clips(): ClipChain | null {
    return this.#columns.clips.get(this.index) ?? null;
  }

  /** All of it as plain data, for JSON and for copies that change a part. */
  toJSON(): Shape {
    const { index, element, carrier, layer, kind, id, classes, paint, matrix, hidden, draws } = this;
    const { fillBox, strokeBox, drawnBox, drawnBound } = this;
    const facts = { index, element, carrier, layer, kind, id, classes, paint, matrix, hidden, draws };
    return { ...facts, fillBox, strokeBox, drawnBox, drawnBound };
  }
}

/** Whether a shape was made by `resolve`. */
export function isResolvedShape(shape: Shape): shape is ResolvedShape {
  return shape instanceof ResolvedShape;
}
