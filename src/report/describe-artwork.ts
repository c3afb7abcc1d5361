// Counts and lengths of an artwork, layer by layer and stroke by stroke.
import type { Artwork, Shape } from '../model/artwork.js';
import type { InspectedLayer, InspectedStroke, Inspection } from '../model/inspection.js';
import type { Suggestion } from '../model/pass.js';
import { strokeWidthMm } from '../model/stroke-width.js';

/** What the road measured beforehand. */
export interface ArtworkFacts {
  readonly artwork: Artwork;
  /** Arc length of a shape's geometry, px; asked only for stroked shapes. */
  readonly measureLength: (shape: Shape) => number;
  readonly layerSuggestions: readonly (Suggestion | null)[];
  readonly strokeSuggestions: ReadonlyMap<string, Suggestion>;
}

function round(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function tidy(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

function depthOf(artwork: Artwork, index: number): number {
  let depth = 0;
  for (let at = artwork.layers[index]!.parent; at >= 0; at = artwork.layers[at]!.parent) depth += 1;
  return depth;
}

function describeLayers(facts: ArtworkFacts): readonly InspectedLayer[] {
  const counts = new Uint32Array(facts.artwork.layers.length);
  for (const shape of facts.artwork.shapes) if (shape.layer >= 0 && shape.draws) counts[shape.layer]! += 1;
  return facts.artwork.layers.map((layer) => ({
    path: layer.path,
    name: layer.name,
    nameSource: layer.nameSource,
    depth: depthOf(facts.artwork, layer.index),
    hidden: layer.hidden,
    locked: layer.locked,
    printable: layer.printable,
    shapes: counts[layer.index]!,
    suggestion: facts.layerSuggestions[layer.index] ?? null,
  }));
}

interface Tally {
  shapes: number;
  lengthPx: number;
  dashed: number;
  readonly widthsMm: Set<number>;
  readonly layers: Set<string>;
}

function describeStrokes(facts: ArtworkFacts): readonly InspectedStroke[] {
  const { artwork } = facts;
  const { mmPerPx } = artwork.artboard;
  const tallies = new Map<string, Tally>();
  for (const shape of artwork.shapes) {
    const { stroke } = shape.paint;
    if (!shape.draws || stroke.kind !== 'colour') continue;
    let tally = tallies.get(stroke.colour.key);
    if (tally === undefined) {
      tally = { shapes: 0, lengthPx: 0, dashed: 0, widthsMm: new Set(), layers: new Set() };
      tallies.set(stroke.colour.key, tally);
    }
    tally.shapes += 1;
    tally.lengthPx += facts.measureLength(shape);
    if (shape.paint.strokeDasharray.length > 0) tally.dashed += 1;
    tally.widthsMm.add(tidy(round(strokeWidthMm(shape, mmPerPx), 0.001), 3));
    tally.layers.add(shape.layer < 0 ? '' : artwork.layers[shape.layer]!.path);
  }
  return [...tallies]
    .map(([colour, tally]) => ({
      colour,
      shapes: tally.shapes,
      lengthMm: tidy(tally.lengthPx * mmPerPx, 3),
      widthsMm: [...tally.widthsMm].sort((a, b) => a - b),
      dashed: tally.dashed,
      layers: [...tally.layers],
      suggestion: facts.strokeSuggestions.get(colour) ?? null,
    }))
    .sort((a, b) => b.lengthMm - a.lengthMm || (a.colour < b.colour ? -1 : 1));
}

function countKinds(artwork: Artwork): Record<string, number> {
  const kinds: Record<string, number> = {};
  for (const shape of artwork.shapes) if (shape.draws) kinds[shape.kind] = (kinds[shape.kind] ?? 0) + 1;
  return kinds;
}

/** The size at a number of user units to the inch, mm. */
function sizeAt(artwork: Artwork, mmPerPx: number): { readonly widthMm: number; readonly heightMm: number } {
  return { widthMm: tidy(artwork.artboard.width * mmPerPx, 4), heightMm: tidy(artwork.artboard.height * mmPerPx, 4) };
}

/**
 * Describes an artwork.
 *
 * @param perInch - Millimetres per px at 96 and at 72 user units to the inch.
 */
export function describeArtwork(
  facts: ArtworkFacts,
  file: Inspection['file'],
  perInch: Readonly<Record<'96' | '72', number>>,
): Inspection {
  const { artwork } = facts;
  const { artboard } = artwork;
  const drawn = artwork.shapes.filter((shape) => shape.draws);
  return {
    file,
    artboard: {
      ...sizeAt(artwork, artboard.mmPerPx),
      sizeIsSure: artboard.sizeIsSure,
      statedWidth: artboard.statedWidth,
      statedHeight: artboard.statedHeight,
      viewBox: artboard.viewBox,
      atPerInch: artboard.sizeIsSure ? null : { 96: sizeAt(artwork, perInch[96]), 72: sizeAt(artwork, perInch[72]) },
    },
    layers: describeLayers(facts),
    looseShapes: drawn.filter((shape) => shape.layer < 0).length,
    shapes: drawn.length,
    kinds: countKinds(artwork),
    drawsNothing: artwork.shapes.length - drawn.length,
    hiddenShapes: drawn.filter((shape) => shape.hidden).length,
    strokes: describeStrokes(facts),
    findings: artwork.findings,
  };
}
