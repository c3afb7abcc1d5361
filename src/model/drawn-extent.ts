// What many shapes draw together.
import { type Box, containsBox, EMPTY_BOX, intersect, isEmptyBox, unite } from '../geometry/box.js';
import type { Shape } from './artwork.js';
import type { Part } from './pass.js';

/** A shape and which part of it is drawn. */
export interface DrawnPart {
  readonly shape: Shape;
  readonly part: Part;
}

/**
 * The exact box of all that is drawn, px on the artboard.
 *
 * A shape whose bound lies within what is known already is not asked for its own box, which may have to be worked out.
 */
export function measureExtent(parts: Iterable<DrawnPart>): Box {
  let extent: Box = EMPTY_BOX;
  for (const { shape, part } of parts) {
    if (isEmptyBox(shape.drawnBound)) continue;
    if (!isEmptyBox(extent) && containsBox(extent, shape.drawnBound)) continue;
    extent = unite(extent, part === 'fill' ? intersect(shape.fillBox, shape.drawnBox) : shape.drawnBox);
  }
  return extent;
}
