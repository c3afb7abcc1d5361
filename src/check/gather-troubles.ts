// Many equal troubles as few findings: one per code and layer, the worst place first.
import type { Artwork, Shape } from '../model/artwork.js';
import { type Finding, type FindingCode, type FindingText, finding, type Json } from '../model/finding.js';

/** One place where something is wrong. */
export interface Trouble {
  /** The shape it is about; null where it is about none in particular. */
  readonly shape: Shape | null;
  /** All shapes that it is about, where they are more than that one. */
  readonly among?: readonly Shape[];
  /** Where, px on the artboard. */
  readonly at: readonly [number, number];
  /** How bad it is, for the order: the greatest comes first. Equal where left out. */
  readonly weight?: number;
}

/** Places and shapes that a finding lists at most. */
const MOST_LISTED = 20;

function roundMm(px: number, mmPerPx: number): number {
  return Math.round(px * mmPerPx * 1000) / 1000 + 0;
}

/** A point of the artboard in mm from its top left, as findings say it. */
export function pointMm(
  artwork: Artwork,
  at: readonly [number, number],
): { readonly xMm: number; readonly yMm: number } {
  const { mmPerPx } = artwork.artboard;
  return { xMm: roundMm(at[0], mmPerPx), yMm: roundMm(at[1], mmPerPx) };
}

/**
 * One finding for each layer that has any of the troubles.
 *
 * Adds to what `say` says: the place of the worst (mm, layer, id), `count`, and up to 20 `places` and `shapes`, worst first.
 *
 * @param say - Words for the troubles of one layer, worst first; its `data` holds the measured and the allowed value.
 */
export function gatherTroubles<T extends Trouble>(
  artwork: Artwork,
  code: FindingCode,
  troubles: readonly T[],
  say: (troubles: readonly T[]) => FindingText,
): readonly Finding[] {
  const layers = new Map<number, T[]>();
  for (const trouble of troubles) {
    const layer = trouble.shape?.layer ?? -1;
    const list = layers.get(layer);
    if (list === undefined) layers.set(layer, [trouble]);
    else list.push(trouble);
  }
  return [...layers].map(([layer, list]) => {
    const sorted = list.toSorted((a, b) => (b.weight ?? 0) - (a.weight ?? 0));
    const listed = sorted.slice(0, MOST_LISTED);
    const text = say(sorted);
    const id = sorted[0]!.shape?.id ?? '';
    const named = listed.flatMap(({ shape, among }) => among ?? (shape === null ? [] : [shape]));
    const shapes = [...new Set(named.map(({ index }) => index))].slice(0, MOST_LISTED);
    const data: { readonly [key: string]: Json } = {
      ...text.data,
      count: list.length,
      places: listed.map(({ at }) => pointMm(artwork, at)),
      ...(shapes.length === 0 ? {} : { shapes }),
    };
    const place = {
      ...pointMm(artwork, sorted[0]!.at),
      ...(layer < 0 ? {} : { layerPath: artwork.layers[layer]!.path }),
      ...(id === '' ? {} : { id }),
      ...text.place,
    };
    return finding(code, { ...text, place, data });
  });
}
