// Which pieces fall out besides the blanks?
import type { Island } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import { findTieRequest } from '../model/ties.js';
import type { ToolLine } from '../model/tool-line.js';
import type { CheckFacts } from './check-facts.js';
import { countOwn, isTie, listTies } from './check-ties.js';
import { gatherTroubles, pointMm, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';

interface LoosePiece extends Trouble {
  readonly island: Island;
}

/** Pieces that a finding lists at most. */
const MOST_LISTED = 20;

/** Pieces that are cut loose: those that no tie holds, neither one drawn as an opening or a gap of dashes nor one that the ticket asks for. */
export function listLoose({ faces, toolLines, assignment, ticket }: CheckFacts): readonly Island[] {
  if (faces === null) return [];
  const ties = faces.gaps.filter((gap) => isTie(gap, ticket.checks));
  const isTied = (line: ToolLine): boolean => {
    const { pass, kind, shape, outline } = line;
    return (
      findTieRequest(ticket.ties ?? [], assignment.passes[pass]!) !== undefined ||
      (kind === 'cut' && shape.paint.strokeDasharray.length > 0 && listTies(line, outline).length > 0)
    );
  };
  return faces.islands.filter(({ outer, lines }) => {
    return countOwn(ties, outer) === 0 && !lines.some((line) => isTied(toolLines[line]!));
  });
}

/** Pieces that are cut loose and are no blanks: windows, holes, offcuts. They lie about in the machine unless they are held. */
export function checkLoosePieces(facts: CheckFacts): readonly Finding[] {
  const { artwork } = facts;
  const troubles: readonly LoosePiece[] = listLoose(facts).map((island) => ({
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
