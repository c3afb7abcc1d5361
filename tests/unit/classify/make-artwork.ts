// Small artworks for the tests of classification: layers by path, shapes by layer and paint.

import { type Classification, classify } from '../../../src/classify/classify.js';
import type { Artwork, Colour, Layer, Paint, PaintSource, Shape } from '../../../src/model/artwork.js';
import type { Json } from '../../../src/model/finding.js';
import { readColour } from '../../../src/resolve/colour.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

/** What a test says of a layer. */
export interface LayerDraft {
  readonly name: string;
  readonly parent?: number;
  readonly hidden?: boolean;
  readonly printable?: boolean;
}

/** What a test says of a shape; a colour or nothing for its paint. */
export interface ShapeDraft {
  readonly layer?: number;
  readonly fill?: string;
  readonly stroke?: string;
  readonly id?: string;
  readonly classes?: readonly string[];
  readonly kind?: Shape['kind'];
  readonly dashed?: boolean;
  readonly strokeWidth?: number;
  readonly scale?: number;
  readonly hidden?: boolean;
  readonly draws?: boolean;
  readonly carrier?: number;
}

const EMPTY_BOX = { x0: 0, y0: 0, x1: 0, y1: 0 };

function paintSource(text: string | undefined): PaintSource {
  if (text === undefined) return { kind: 'none' };
  return { kind: 'colour', colour: readColour(text) as Colour };
}

function makePaint(draft: ShapeDraft): Paint {
  return {
    fill: paintSource(draft.fill),
    stroke: paintSource(draft.stroke),
    fillOpacity: 1,
    strokeOpacity: 1,
    fillRule: 'nonzero',
    strokeWidth: draft.strokeWidth ?? 1,
    strokeLinecap: 'butt',
    strokeLinejoin: 'miter',
    strokeMiterlimit: 4,
    strokeDasharray: draft.dashed ? [2, 1] : [],
    strokeDashoffset: 0,
    nonScalingStroke: false,
  };
}

function makeLayers(drafts: readonly LayerDraft[]): readonly Layer[] {
  const layers: Layer[] = [];
  drafts.forEach((draft, index) => {
    const parent = draft.parent ?? -1;
    const own = draft.name.replaceAll('/', '\\/');
    layers.push({
      index,
      element: 1000 + index,
      parent,
      name: draft.name,
      nameSource: 'id',
      path: parent < 0 ? own : `${layers[parent]!.path}/${own}`,
      hidden: draft.hidden ?? false,
      locked: false,
      printable: draft.printable ?? true,
    });
  });
  return layers;
}

/** An artwork of layers (outer ones first) and shapes in paint order; 1 px is 25.4 / 96 mm. */
export function makeArtwork(layers: readonly LayerDraft[], shapes: readonly ShapeDraft[]): Artwork {
  const made = makeLayers(layers);
  return {
    artboard: {
      width: 100,
      height: 100,
      viewBox: null,
      preserveAspectRatio: 'xMidYMid meet',
      matrix: [1, 0, 0, 1, 0, 0],
      statedWidth: '100mm',
      statedHeight: '100mm',
      sizeIsSure: true,
      mmPerPx: 25.4 / 96,
    },
    layers: made,
    shapes: shapes.map((draft, index) => ({
      index,
      element: index,
      carrier: draft.carrier ?? index,
      layer: draft.layer ?? -1,
      kind: draft.kind ?? 'path',
      id: draft.id ?? '',
      classes: draft.classes ?? [],
      paint: makePaint(draft),
      matrix: [draft.scale ?? 1, 0, 0, draft.scale ?? 1, 0, 0],
      fillBox: EMPTY_BOX,
      strokeBox: EMPTY_BOX,
      drawnBox: EMPTY_BOX,
      drawnBound: EMPTY_BOX,
      hidden: draft.hidden ?? made[draft.layer ?? -1]?.hidden ?? false,
      draws: draft.draws ?? true,
    })),
    ids: new Map(),
    references: new Map(),
    structural: false,
    usesPercent: false,
    marks: -1,
    hiders: new Set(),
    effects: [],
    findings: [],
  };
}

/** Classifies under a ticket as somebody would write it. */
export function classifyBy(artwork: Artwork, ticket: { readonly [key: string]: Json } = {}): Classification {
  return classify(artwork, readTicket({ pinbar: 1, ...ticket }), readColour);
}

/** Where every shape is: `cut`, `print:fill+cut:stroke`, or the cause of its exclusion in brackets. */
export function tellPlaces(artwork: Artwork, { assignment }: Classification): readonly string[] {
  return artwork.shapes.map(({ index }) => {
    const placed = assignment.placements
      .filter(({ shape }) => shape === index)
      .map(({ pass, part }) => `${assignment.passes[pass]!.name}${part === 'whole' ? '' : `:${part}`}`);
    const left = assignment.exclusions.filter(({ shape }) => shape === index).map(({ cause }) => `(${cause})`);
    return [...placed, ...left].join('+');
  });
}
