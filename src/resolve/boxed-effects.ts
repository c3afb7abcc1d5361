// Clip paths, masks and filters that are measured by the box of all that they are put on.
import type { Artwork, BoxedEffect } from '../model/artwork.js';
import { isSvgElement, readAttributeValue } from '../source/read-attribute.js';
import { isResolved } from './resolve.js';
import type { Style } from './style.js';

const IN_BOX_UNITS = 'objectBoundingBox';

/** What of a style is drawn in units of the box, or, for a filter, cut off around it. */
function listKinds(artwork: Artwork, style: Style, readUnits: (row: number, name: string) => string | null): string {
  const target = (id: string | null): number => (id === null ? -1 : (artwork.ids.get(id) ?? -1));
  const inBoxUnits = (id: string | null, name: string): boolean => readUnits(target(id), name) === IN_BOX_UNITS;
  if (inBoxUnits(style.clipPath, 'clipPathUnits')) return 'clip path';
  if (inBoxUnits(style.mask, 'maskContentUnits')) return 'mask';
  if (inBoxUnits(style.filter, 'primitiveUnits')) return 'filter';
  const filter = target(style.filter);
  return filter >= 0 && (readUnits(filter, 'filterUnits') ?? IN_BOX_UNITS) === IN_BOX_UNITS ? 'filter region' : '';
}

/**
 * Lists groups and copies whose clip path, mask or filter depends on the box of what they hold.
 *
 * @param artwork - Made by `resolve`; another has none.
 * @source CSS Masking 1, sections 6.1 and 7.10; Filter Effects 1, section 8
 */
export function listBoxedEffects(artwork: Artwork): readonly BoxedEffect[] {
  if (!isResolved(artwork)) return [];
  const { source, styles } = artwork.geometry;
  const { count, next } = source.elements;
  const readUnits = (row: number, name: string): string | null =>
    row < 0 ? null : (readAttributeValue(source, row, name)?.trim() ?? null);
  const effects: BoxedEffect[] = [];
  for (let row = 0; row < count; row += 1) {
    const style = styles[row]!;
    if (style.clipPath === null && style.mask === null && style.filter === null) continue;
    if (next[row]! === row + 1 || !(isSvgElement(source, row, 'g') || isSvgElement(source, row, 'svg'))) continue;
    const kind = listKinds(artwork, style, readUnits);
    if (kind !== '') effects.push({ element: row, end: next[row]!, kind: kind as BoxedEffect['kind'] });
  }
  return effects;
}
