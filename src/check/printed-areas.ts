// Whether art lies on print.
import { type BoxIndex, indexBoxList } from '../geometry/box-index.js';
import type { Shape } from '../model/artwork.js';
import type { Placement } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { fillInk } from './ink.js';
import { windingAt } from './winding-at.js';

/** Printed areas of a pass, found by place. */
export interface PrintedAreas {
  readonly shapes: readonly Shape[];
  readonly index: BoxIndex;
}

/** The areas of ink among what is placed. */
export function listAreas(facts: CheckFacts, placements: readonly Placement[]): PrintedAreas {
  const shapes = placements.flatMap(({ shape: index, part }) => {
    const shape = facts.artwork.shapes[index]!;
    const isPicture = shape.kind === 'image';
    return shape.draws && part !== 'stroke' && (isPicture || fillInk(shape.paint) === 'ink') ? [shape] : [];
  });
  return { shapes, index: indexBoxList(shapes.map(({ drawnBound }) => drawnBound)) };
}

/** Whether an area that is painted before a shape covers a point. */
export function isPrinted(facts: CheckFacts, below: PrintedAreas, before: Shape, x: number, y: number): boolean {
  return below.index.search(x, y, x, y).some((place) => {
    const shape = below.shapes[place]!;
    if (shape.index >= before.index) return false;
    const winding = windingAt(facts.outlineOf(shape), x, y);
    return shape.paint.fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
  });
}
