// What is in a file, said in the terms of the person who drew it.

import type { NameSource } from './artwork.js';
import type { Finding } from './finding.js';
import type { Suggestion } from './pass.js';

/** A layer, and what is in it. */
export interface InspectedLayer {
  readonly path: string;
  readonly name: string;
  readonly nameSource: NameSource;
  /** 0 for a layer that stands in no other. */
  readonly depth: number;
  readonly hidden: boolean;
  readonly locked: boolean;
  readonly printable: boolean;
  /** Shapes directly in the layer, those of layers within it not counted. */
  readonly shapes: number;
  readonly suggestion: Suggestion | null;
}

/** All lines of one colour. */
export interface InspectedStroke {
  /** Colour key, for instance `#e5007d`. */
  readonly colour: string;
  readonly shapes: number;
  /** Sum of the arc lengths of the shapes drawn in it, mm. */
  readonly lengthMm: number;
  /** Line widths on the artboard, mm, ascending. */
  readonly widthsMm: readonly number[];
  readonly dashed: number;
  /** Paths of the layers it is used in. */
  readonly layers: readonly string[];
  readonly suggestion: Suggestion | null;
}

/** Size, layers, strokes and findings of a file. */
export interface Inspection {
  readonly file: {
    readonly name: string;
    readonly bytes: number;
    readonly sha256: string;
    readonly encoding: string;
    readonly gzipped: boolean;
    readonly elements: number;
  };
  readonly artboard: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly sizeIsSure: boolean;
    readonly statedWidth: string;
    readonly statedHeight: string;
    readonly viewBox: readonly number[] | null;
    /** What a size that is not sure comes to at 96 and at 72 user units to the inch; null where it is sure. */
    readonly atPerInch: Readonly<Record<'96' | '72', { readonly widthMm: number; readonly heightMm: number }>> | null;
  };
  readonly layers: readonly InspectedLayer[];
  /** Shapes that stand in no layer. */
  readonly looseShapes: number;
  readonly shapes: number;
  /** Shapes per kind. */
  readonly kinds: Readonly<Record<string, number>>;
  readonly drawsNothing: number;
  readonly hiddenShapes: number;
  readonly strokes: readonly InspectedStroke[];
  readonly findings: readonly Finding[];
}
