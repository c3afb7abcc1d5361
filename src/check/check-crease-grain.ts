// How do creases run against the grain of the board?
import { endsOf } from '../geometry/segment.js';
import { type Finding, finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { pointMm } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';

/**
 * The length of creases with and across the grain that `grain` says. A note: sources contradict each other on which is better.
 */
export function checkCreaseGrain({ toolLines, toolPieces, artwork, ticket }: CheckFacts): readonly Finding[] {
  const { grain } = ticket.checks;
  if (grain === 'not-said') return [];
  const { mmPerPx } = artwork.artboard;
  let withMm = 0;
  let acrossMm = 0;
  let first = -1;
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const line = toolLines[toolPieces.line[piece]!]!;
    if (line.kind !== 'crease') continue;
    if (first < 0) first = toolPieces.line[piece]!;
    const [x0, y0, x1, y1] = endsOf(toolPieces, piece);
    const isFlat = Math.abs(x1 - x0) >= Math.abs(y1 - y0);
    const lengthMm = Math.hypot(x1 - x0, y1 - y0) * mmPerPx;
    if (isFlat === (grain === 'horizontal')) withMm += lengthMm;
    else acrossMm += lengthMm;
  }
  if (first < 0) return [];
  const line = toolLines[first]!;
  const layer = artwork.layers[line.shape.layer];
  return [
    finding('check/crease-grain', {
      message: `The grain runs ${grain === 'horizontal' ? 'from side to side' : 'up and down'}: ${sayMm(withMm)} mm of creases run with it, ${sayMm(acrossMm)} mm across it.`,
      remedy: 'Where folds matter most, fold a sample of the board both ways before you turn the drawing.',
      place: {
        ...pointMm(artwork, [line.outline.points[0]!, line.outline.points[1]!]),
        ...(layer === undefined ? {} : { layerPath: layer.path }),
      },
      data: { withMm: roundValue(withMm), acrossMm: roundValue(acrossMm), shapes: [line.shape.index] },
    }),
  ];
}
