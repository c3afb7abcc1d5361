// Do outlines cross themselves?

import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { sayCount } from '../model/say-count.js';
import type { Chain } from './chain-lines.js';
import type { CheckFacts } from './check-facts.js';
import { findCrossings } from './find-crossings.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer } from './layer-words.js';
import { lengthOfLine, listToolPieces, type ToolPieces } from './tool-pieces.js';

interface Crossing extends Trouble {
  readonly shape: Shape;
}

/** Closed cut lines that cross themselves: it is not clear what is board and what is waste, and the tool tears the knot. */
export function checkSelfCrossing({ artwork, chains, toolPieces }: CheckFacts): readonly Finding[] {
  const { mmPerPx } = artwork.artboard;
  const crossings: Crossing[] = [];
  const loops = chains.filter(({ kind, outline }) => kind === 'cut' && outline.closed);
  const joined = loops.filter(({ lines }) => lines.length > 1);
  const joinedPieces = listToolPieces(joined);
  const look = ({ shape }: Chain, pieces: ToolPieces, line: number): void => {
    const loop = { line, length: lengthOfLine(pieces, line) };
    for (const at of findCrossings(pieces, loop, mmPerPx)) crossings.push({ shape, at });
  };
  for (const chain of loops) if (chain.lines.length === 1) look(chain, toolPieces, chain.lines[0]!);
  for (const [line, chain] of joined.entries()) look(chain, joinedPieces, line);
  return gatherTroubles(artwork, 'check/outline-crosses-itself', crossings, (list) => ({
    message: `A cut outline ${inLayer(artwork, list[0]!.shape.layer)} crosses itself in ${sayCount(list.length, 'place')}.`,
    remedy: 'Untangle the outline, so that it runs once around what is to be cut.',
    data: {},
  }));
}
