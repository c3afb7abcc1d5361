// The lines of a resolved shape, read again: as points on the artboard, or as they are written.
import { flattenPath } from '../geometry/flatten-path.js';
import { FLATTEN_PX, type Outline } from '../geometry/outline.js';
import { type MeasuredRun, measureRuns } from '../geometry/path-stretch.js';
import type { Artwork, Shape } from '../model/artwork.js';
import { invariant } from '../model/trouble.js';
import type { Source } from '../source/source.js';
import { TEXT } from './element-codes.js';
import { isResolved } from './resolve.js';
import { isResolvedShape } from './resolved-shape.js';
import { readGeometry } from './shape-geometry.js';

/**
 * The runs of a shape's geometry on the artboard; a picture and a foreign object give their rectangle, type gives nothing.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit px
 * @accuracy Curves within `FLATTEN_PX`.
 */
export function shapeOutline(source: Source, artwork: Artwork, shape: Shape): readonly Outline[] {
  return shapeOutlineWithin(source, artwork, { shape, tolerancePx: FLATTEN_PX });
}

/**
 * The same with curves as coarse as a tolerance allows, for looking at.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit px
 * @accuracy Curves within `tolerancePx`.
 */
export function shapeOutlineWithin(
  source: Source,
  artwork: Artwork,
  { shape, tolerancePx }: { readonly shape: Shape; readonly tolerancePx: number },
): readonly Outline[] {
  invariant(isResolved(artwork) && isResolvedShape(shape), 'a shape is outlined that was not resolved here');
  const { geometry } = artwork;
  const code = geometry.codes[source.elements.name[shape.element]!]!;
  if (code === TEXT) return [];
  return flattenPath(readGeometry(geometry, shape.element, code, shape.setting), shape.matrix, tolerancePx);
}

/**
 * The runs of a shape's geometry in its own user units, each measured on the artboard; type gives nothing.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit lengths in px
 */
export function shapeRuns(source: Source, artwork: Artwork, shape: Shape): readonly MeasuredRun[] {
  invariant(isResolved(artwork) && isResolvedShape(shape), 'a shape is measured that was not resolved here');
  const { geometry } = artwork;
  const code = geometry.codes[source.elements.name[shape.element]!]!;
  if (code === TEXT) return [];
  return measureRuns(readGeometry(geometry, shape.element, code, shape.setting), shape.matrix);
}
