// Does anything that a pass should draw lie off the artboard?

import { intersect, isEmptyBox } from '../geometry/box.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayNumber } from './layer-words.js';

/** A shape off the artboard. */
interface Astray extends Trouble {
  readonly shape: Shape;
  /** Clear distance from the artboard. */
  readonly distancePx: number;
}

/** Shapes of all passes that do not meet the artboard, grown by the ticket's margin. Live type is judged by where it is anchored. */
export function checkOffArtboard(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket } = facts;
  const { width, height, mmPerPx } = artwork.artboard;
  const margin = ticket.marginMm / mmPerPx;
  const board = { x0: -margin, y0: -margin, x1: width + margin, y1: height + margin };
  const astray = new Map<number, Astray>();
  for (const { shape: index } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (!shape.draws || isEmptyBox(shape.drawnBound) || !isEmptyBox(intersect(board, shape.drawnBound))) continue;
    const { drawnBound: box } = shape;
    const dx = Math.max(board.x0 - box.x1, box.x0 - board.x1, 0);
    const dy = Math.max(board.y0 - box.y1, box.y0 - board.y1, 0);
    const at = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const;
    const distancePx = Math.hypot(dx, dy);
    astray.set(index, { shape, at, weight: distancePx, distancePx });
  }
  return gatherTroubles(artwork, 'check/off-artboard', [...astray.values()], (list) => {
    const farthestMm = list[0]!.distancePx * mmPerPx;
    return {
      message: `${sayCount(list.length, 'shape')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'lies' : 'lie'} off the artboard, up to ${sayNumber(farthestMm)} mm away from it: no machine will draw ${list.length === 1 ? 'it' : 'them'}.`,
      remedy: 'Move what is wanted onto the artboard, and delete or ignore the rest.',
      data: { measuredMm: Math.round(farthestMm * 1000) / 1000, allowedMm: 0 },
    };
  });
}
