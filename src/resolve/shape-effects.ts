// Effects that a shape or a group around it carries.
import type { Artwork, Shape } from '../model/artwork.js';
import type { ShapeEffects } from '../model/drawn-facts.js';
import { isResolved } from './resolve.js';
import { isResolvedShape } from './resolved-shape.js';
import type { Style } from './style.js';

const PLAIN: ShapeEffects = { opacity: 1, filter: false, mask: false };

function addStyle(around: ShapeEffects, { opacity, filter, mask }: Style): ShapeEffects {
  if (opacity === 1 && filter === null && mask === null) return around;
  return {
    opacity: around.opacity * opacity,
    filter: around.filter || filter !== null,
    mask: around.mask || mask !== null,
  };
}

/**
 * A reader of opacity, filters and masks on shapes and on the groups around them; of a shape behind a use, those of the shape itself
 * and of the use and its groups.
 *
 * @param artwork - Made by `resolve`; other shapes count as plain.
 */
export function createEffectReader(artwork: Artwork): (shape: Shape) => ShapeEffects {
  const known = new Map<number, ShapeEffects>();
  return (shape) => {
    if (!isResolved(artwork) || !isResolvedShape(shape)) return PLAIN;
    const { source, styles } = artwork.geometry;
    const { parent } = source.elements;
    const readRow = (row: number): ShapeEffects => {
      if (row < 0) return PLAIN;
      const seen = known.get(row);
      if (seen !== undefined) return seen;
      const effects = addStyle(readRow(parent[row]!), styles[row]!);
      known.set(row, effects);
      return effects;
    };
    if (shape.carrier === shape.element) return readRow(shape.element);
    return addStyle(readRow(shape.carrier), shape.setting.style);
  };
}
