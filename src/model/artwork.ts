// The artwork as it is drawn: nothing inherited, nothing relative, nothing behind a use.
import type { Box } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { Finding } from './finding.js';

/** The drawing area. Lengths in CSS px (96 to the inch), y down, origin top left. */
export interface Artboard {
  readonly width: number;
  readonly height: number;
  /** As written on the root, or null. `viewBox` in root user units: x, y, width, height. */
  readonly viewBox: readonly [number, number, number, number] | null;
  readonly preserveAspectRatio: string;
  /** From the root's user units to the artboard. */
  readonly matrix: Matrix;
  /** Width and height as written on the root, or '' where absent. */
  readonly statedWidth: string;
  readonly statedHeight: string;
  /** False where the size is in px, without a unit, in percent or missing. */
  readonly sizeIsSure: boolean;
  /** Millimetres per px of this file: 25.4 / 96 unless the caller says otherwise for a size that is not sure. */
  readonly mmPerPx: number;
}

/** Where a layer's name was found. */
export type NameSource = 'label' | 'data-name' | 'foreign-id' | 'title' | 'id' | 'class' | 'position';

/** A group that a designer would call a layer. */
export interface Layer {
  readonly index: number;
  /** Row of the group in the element table. */
  readonly element: number;
  /** Index of the layer around it, or -1. */
  readonly parent: number;
  /** Decoded name as a person would write it. */
  readonly name: string;
  readonly nameSource: NameSource;
  /** Names from the outermost layer, joined by `/`; a slash inside a name is written `\/`; a repeated path ends in ` (2)`, ` (3)`. */
  readonly path: string;
  readonly hidden: boolean;
  readonly locked: boolean;
  readonly printable: boolean;
}

/** A colour in one spelling, so that equal colours have equal keys: `#rrggbb`, `device-cmyk(c m y k)`, `icc(...)`. */
export interface Colour {
  readonly key: string;
  /** Red, green and blue from 0 to 255 as a screen shows it. */
  readonly rgb: readonly [number, number, number];
  /** From 0 to 1. */
  readonly alpha: number;
}

/** What fills or strokes a shape. `server` is a gradient or pattern by id; `missing` one that is not in the file. */
export type PaintSource =
  | { readonly kind: 'none' }
  | { readonly kind: 'colour'; readonly colour: Colour }
  | { readonly kind: 'server'; readonly id: string; readonly fallback: Colour | null }
  | { readonly kind: 'missing'; readonly id: string; readonly fallback: Colour | null };

/** How a shape is painted; lengths in the shape's own user units. Shared between shapes that are painted alike. */
export interface Paint {
  readonly fill: PaintSource;
  readonly stroke: PaintSource;
  /** From 0 to 1, without the colour's own alpha. */
  readonly fillOpacity: number;
  readonly strokeOpacity: number;
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly strokeWidth: number;
  readonly strokeLinecap: 'butt' | 'round' | 'square';
  readonly strokeLinejoin: 'miter' | 'round' | 'bevel';
  readonly strokeMiterlimit: number;
  /** Empty for a solid line. */
  readonly strokeDasharray: readonly number[];
  readonly strokeDashoffset: number;
  readonly nonScalingStroke: boolean;
}

/** Elements that draw, by their name. */
export type ShapeKind =
  | 'path'
  | 'rect'
  | 'circle'
  | 'ellipse'
  | 'line'
  | 'polyline'
  | 'polygon'
  | 'text'
  | 'image'
  | 'foreignObject';

/** One drawn thing. A shape drawn through a use appears once per use. */
export interface Shape {
  /** Place in paint order, from 0. */
  readonly index: number;
  /** Row of the shape element in the element table. */
  readonly element: number;
  /** Row that stands for it in the tree: the outermost use it is drawn through, else the element itself. */
  readonly carrier: number;
  /** Index of the innermost layer around the carrier, or -1. */
  readonly layer: number;
  readonly kind: ShapeKind;
  readonly id: string;
  /** Class names of the element. */
  readonly classes: readonly string[];
  readonly paint: Paint;
  /** From the shape's user units to the artboard (px). */
  readonly matrix: Matrix;
  /** Extent of the geometry on the artboard (px), whatever its paint; empty where there is none. */
  readonly fillBox: Box;
  /** Extent with the stroke, as if undashed (px). */
  readonly strokeBox: Box;
  /** What is seen: the painted part of both, cut to clips and viewports around it (px); empty where nothing is drawn. */
  readonly drawnBox: Box;
  /** A box around `drawnBox`, never smaller, that costs nothing to ask for: boxes of strokes are worked out when asked for. */
  readonly drawnBound: Box;
  /** display: none or visibility: hidden, on it or around it. */
  readonly hidden: boolean;
  /** False without paint, size or opacity. A hidden shape is judged as if shown. */
  readonly draws: boolean;
}

/** What an element can do to all it holds at once, after it is drawn. */
export type EffectKind = 'opacity' | 'mask' | 'filter' | 'blend';

/** An element that fades, masks, filters or blends what it holds as one picture. */
export interface GroupEffect {
  /** Row of the element. */
  readonly element: number;
  /** Row after the last that it holds. */
  readonly end: number;
  readonly kinds: readonly EffectKind[];
}

/** A group whose clip path, mask or filter depends on the box of what it holds. */
export interface BoxedEffect {
  /** Row of the element. */
  readonly element: number;
  /** Row after the last that it holds. */
  readonly end: number;
  /** What is drawn in units of the box; `filter region`: only what is cut off around it. */
  readonly kind: 'clip path' | 'mask' | 'filter' | 'filter region';
}

/** The whole drawing, resolved. */
export interface Artwork {
  readonly artboard: Artboard;
  readonly layers: readonly Layer[];
  /** In paint order, hidden ones included. */
  readonly shapes: readonly Shape[];
  /** First element row with an id. */
  readonly ids: ReadonlyMap<string, number>;
  /** Ids that an element refers to by attribute or by its computed style; elements without any are absent. Definitions included. */
  readonly references: ReadonlyMap<number, readonly string[]>;
  /** True when a style sheet looks at siblings, positions or content, so that taking elements out can change what it matches. */
  readonly structural: boolean;
  /** True when a length in percent depends on the artboard's size. */
  readonly usesPercent: boolean;
  /** Row of the group of marks that pinbar put there earlier, or -1. Its shapes are not in `shapes`. */
  readonly marks: number;
  /** Rows that hide what they hold: their own computed display is none, or they set visibility to hidden or collapse. */
  readonly hiders: ReadonlySet<number>;
  /** Elements with effects, shapes and definitions included, by row. */
  readonly effects: readonly GroupEffect[];
  readonly findings: readonly Finding[];
}
