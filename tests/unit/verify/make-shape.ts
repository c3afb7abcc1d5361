// Small artworks for the tests of the first judge: shapes with a box and a paint, nothing else of note.
import type { Box } from '../../../src/geometry/box.js';
import type { Artboard, Artwork, Paint, PaintSource, Shape } from '../../../src/model/artwork.js';
import type { Placement } from '../../../src/model/pass.js';

/** A paint of one colour. */
export function colour(key: string, alpha = 1): PaintSource {
  return { kind: 'colour', colour: { key, rgb: [0, 0, 0], alpha } };
}

export const PLAIN: Paint = {
  fill: colour('#c9a227'),
  stroke: { kind: 'none' },
  fillOpacity: 1,
  strokeOpacity: 1,
  fillRule: 'nonzero',
  strokeWidth: 1,
  strokeLinecap: 'butt',
  strokeLinejoin: 'miter',
  strokeMiterlimit: 4,
  strokeDasharray: [],
  strokeDashoffset: 0,
  nonScalingStroke: false,
};

/** A box by its corner and size. */
export function boxOf(x: number, y: number, width: number, height: number): Box {
  return { x0: x, y0: y, x1: x + width, y1: y + height };
}

/** A shape; what is left out is unremarkable. */
export function makeShape(index: number, draft: Partial<Shape> = {}): Shape {
  const fillBox = draft.fillBox ?? boxOf(10 * index, 5, 8, 4);
  return {
    index,
    element: index + 1,
    carrier: draft.element ?? index + 1,
    layer: -1,
    kind: 'rect',
    id: '',
    classes: [],
    paint: PLAIN,
    matrix: [1, 0, 0, 1, 0, 0],
    fillBox,
    strokeBox: fillBox,
    drawnBox: fillBox,
    drawnBound: fillBox,
    hidden: false,
    draws: true,
    ...draft,
  };
}

/** An artboard of 100 by 60 px, a millimetre each. */
export const BOARD: Artboard = {
  width: 100,
  height: 60,
  viewBox: [0, 0, 100, 60],
  preserveAspectRatio: '',
  matrix: [1, 0, 0, 1, 0, 0],
  statedWidth: '100mm',
  statedHeight: '60mm',
  sizeIsSure: true,
  mmPerPx: 1,
};

/** An artwork of shapes on that artboard. */
export function makeArtwork(shapes: readonly Shape[], draft: Partial<Artwork> = {}): Artwork {
  return {
    artboard: BOARD,
    layers: [],
    shapes,
    ids: new Map(),
    references: new Map(),
    structural: false,
    usesPercent: false,
    marks: -1,
    hiders: new Set(),
    effects: [],
    findings: [],
    ...draft,
  };
}

/** Places shapes on the first pass. */
export function placeAll(shapes: readonly Shape[], part: Placement['part'] = 'whole'): readonly Placement[] {
  return shapes.map(({ index }) => ({ shape: index, pass: 0, part, reason: { rule: 0, text: '' } }));
}
