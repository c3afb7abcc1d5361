// Which pieces fall out besides the blanks?
import type { Island } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, pointMm, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';

interface LoosePiece extends Trouble {
  readonly island: Island;
}

/** Pieces that a finding lists at most. */
const MOST_LISTED = 20;

/** Pieces that are cut loose and are no blanks: windows, holes, offcuts. They lie about in the machine unless they are held. */
export function checkLoosePieces({ artwork, faces }: CheckFacts): readonly Finding[] {
  const troubles: readonly LoosePiece[] = (faces?.islands ?? []).map((island) => ({
    shape: artwork.shapes[island.shape]!,
    at: [island.x, island.y],
    weight: island.areaMm2,
    island,
  }));
  return gatherTroubles(artwork, 'check/loose-piece', troubles, (list) => {
    const total = list.reduce((sum, { island }) => sum + island.areaMm2, 0);
    const worst = list[0]!.island;
    const size = `${sayMm(worst.lengthMm)} x ${sayMm(worst.widthMm)} mm`;
    return {
      message:
        list.length === 1
          ? `A piece of ${size} is cut loose and falls out beside the blank.`
          : `${list.length} pieces are cut loose and fall out beside the blank; the largest is ${size}.`,
      remedy: 'Take them off the sheet before the next run, or hold them by ties.',
      data: {
        areaMm2: roundValue(total),
        pieces: list.slice(0, MOST_LISTED).map(({ at, island }) => ({
          ...pointMm(artwork, at),
          lengthMm: roundValue(island.lengthMm),
          widthMm: roundValue(island.widthMm),
          areaMm2: roundValue(island.areaMm2),
        })),
      },
    };
  });
}
