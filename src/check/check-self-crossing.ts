// Do outlines cross themselves?

import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { closeUp } from './close-up.js';
import { findCrossings, type Loop } from './find-crossings.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayCount } from './layer-words.js';
import { lengthOfLine } from './tool-pieces.js';

interface Crossing extends Trouble {
  readonly shape: Shape;
}

/** Closed cut lines that cross themselves: it is not clear what is board and what is waste, and the tool tears the knot. */
export function checkSelfCrossing({ artwork, toolLines, toolPieces }: CheckFacts): readonly Finding[] {
  const { mmPerPx } = artwork.artboard;
  const crossings: Crossing[] = [];
  for (const [position, { shape, outline, kind }] of toolLines.entries()) {
    if (kind !== 'cut' || !closeUp(outline, mmPerPx).closed) continue;
    const loop: Loop = { line: position, length: lengthOfLine(toolPieces, position) };
    for (const at of findCrossings(toolPieces, loop, mmPerPx)) crossings.push({ shape, at });
  }
  return gatherTroubles(artwork, 'check/outline-crosses-itself', crossings, (list) => ({
    message: `A cut outline ${inLayer(artwork, list[0]!.shape.layer)} crosses itself in ${sayCount(list.length, 'place')}.`,
    remedy: 'Untangle the outline, so that it runs once around what is to be cut.',
    data: {},
  }));
}
