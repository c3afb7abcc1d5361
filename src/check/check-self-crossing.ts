// Do outlines cross themselves?
import { orient } from '../geometry/orient.js';
import { crossingParameter } from '../geometry/segment.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayCount } from './layer-words.js';
import { endsOf, piecesNear } from './tool-pieces.js';

interface Crossing extends Trouble {
  readonly shape: Shape;
}

/** Where two pieces cross, each within the other; null where they only touch. */
function crossingOf(p: Float64Array, q: Float64Array): readonly [number, number] | null {
  const [ax = 0, ay = 0, bx = 0, by = 0] = p;
  const [cx = 0, cy = 0, dx = 0, dy = 0] = q;
  const isParted = (left: number, right: number): boolean => (left > 0 && right < 0) || (left < 0 && right > 0);
  if (!isParted(orient(ax, ay, bx, by, cx, cy), orient(ax, ay, bx, by, dx, dy))) return null;
  if (!isParted(orient(cx, cy, dx, dy, ax, ay), orient(cx, cy, dx, dy, bx, by))) return null;
  const t = crossingParameter(p, q);
  return t === null ? null : [ax + t * (bx - ax), ay + t * (by - ay)];
}

/** Closed cut lines that cross themselves: it is not clear what is board and what is waste, and the tool tears the knot. */
export function checkSelfCrossing({ artwork, toolLines, toolPieces }: CheckFacts): readonly Finding[] {
  const crossings: Crossing[] = [];
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const position = toolPieces.line[piece]!;
    const line = toolLines[position]!;
    if (line.kind !== 'cut' || !line.outline.closed) continue;
    const ends = endsOf(toolPieces, piece);
    for (const near of piecesNear(toolPieces, piece, 0)) {
      if (near <= piece || toolPieces.line[near] !== position) continue;
      const at = crossingOf(ends, endsOf(toolPieces, near));
      if (at !== null) crossings.push({ shape: line.shape, at });
    }
  }
  return gatherTroubles(artwork, 'check/outline-crosses-itself', crossings, (list) => ({
    message: `A cut outline ${inLayer(artwork, list[0]!.shape.layer)} crosses itself in ${sayCount(list.length, 'place')}.`,
    remedy: 'Untangle the outline, so that it runs once around what is to be cut.',
    data: {},
  }));
}
