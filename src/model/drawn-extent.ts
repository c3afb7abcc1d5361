// What many shapes draw together.
import { type Box, containsBox, EMPTY_BOX, intersect, isEmptyBox, unite } from '../geometry/box.js';
import type { Shape } from './artwork.js';
import type { Placement } from './pass.js';

/**
 * The exact box of all that is drawn, px on the artboard.
 *
 * A shape whose bound lies within what is known already is not asked for its own box, which may have to be worked out.
 */
export function measureExtent(shapes: readonly Shape[], placements: readonly Placement[]): Box {
  let extent: Box = EMPTY_BOX;
  for (const placement of placements) {
    const shape = shapes[placement.shape]!;
    const bound = shape.drawnBound;
    if (isEmptyBox(bound) || (!isEmptyBox(extent) && containsBox(extent, bound))) continue;
    extent = unite(extent, placement.part === 'fill' ? intersect(shape.fillBox, shape.drawnBox) : shape.drawnBox);
  }
  return extent;
}
