// Do creases end where they should?
import { crossingParameter, distanceToPiece } from '../geometry/segment.js';
import type { IdleFold } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import type { ToolLine } from '../model/tool-line.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';
import { endsOf, piecesAround, type ToolPieces } from './tool-pieces.js';

/** A crease end or a stretch of a crease, with what was measured of it. */
interface Odd extends Trouble {
  readonly lengthMm: number;
}

/** An end of a line: where, and the point that it comes from. */
interface LineEnd {
  readonly x: number;
  readonly y: number;
  readonly fromX: number;
  readonly fromY: number;
}

function endsOfLine({ outline: { points } }: ToolLine): readonly LineEnd[] {
  const last = points.length - 2;
  const end = (at: number, from: number): LineEnd => ({
    ...{ x: points[at]!, y: points[at + 1]! },
    ...{ fromX: points[from]!, fromY: points[from + 1]! },
  });
  return [end(0, 2), end(last, last - 2)];
}

/** How far an end stops short of the line ahead of it, px; null where it touches one, or where none lies ahead within reach. */
function measureShort(pieces: ToolPieces, end: LineEnd, snap: number, reach: number): number | null {
  const { x, y, fromX, fromY } = end;
  const length = Math.hypot(x - fromX, y - fromY);
  if (!(length > 0)) return null;
  const ray = [x, y, x + (x - fromX) / length, y + (y - fromY) / length];
  let least = Infinity;
  for (const piece of piecesAround(pieces, x, y, reach)) {
    const ends = endsOf(pieces, piece);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = ends;
    const isOwn =
      (x0 === x && y0 === y && x1 === fromX && y1 === fromY) || (x1 === x && y1 === y && x0 === fromX && y0 === fromY);
    if (isOwn) continue;
    if (distanceToPiece(x0, y0, x1, y1, x, y) <= snap) return null;
    const along = crossingParameter(ray, ends);
    const across = crossingParameter(ends, ray);
    if (along !== null && across !== null && along > 0 && across >= 0 && across <= 1) least = Math.min(least, along);
  }
  return least <= reach ? least : null;
}

function listShort({ toolLines, toolPieces, artwork, ticket }: CheckFacts): readonly Odd[] {
  const { mmPerPx } = artwork.artboard;
  const { snapMm, creaseShortMm, creaseReachMm } = ticket.checks;
  const odd: Odd[] = [];
  for (const line of toolLines) {
    if (line.kind === 'cut' || line.outline.closed || line.outline.points.length < 4) continue;
    for (const end of endsOfLine(line)) {
      const short = measureShort(toolPieces, end, snapMm / mmPerPx, creaseReachMm / mmPerPx);
      if (short === null || short * mmPerPx <= creaseShortMm) continue;
      odd.push({ shape: line.shape, at: [end.x, end.y], weight: short, lengthMm: short * mmPerPx });
    }
  }
  return odd;
}

function listIdle({ faces, artwork }: CheckFacts, leastMm: number, isOn: (fold: IdleFold) => boolean): readonly Odd[] {
  if (faces === null || faces.blanks.length === 0) return [];
  return faces.idle
    .filter((fold) => fold.lengthMm > leastMm && isOn(fold))
    .map(({ pieces, lengthMm }) => {
      const longest = pieces.reduce((best, piece) =>
        Math.hypot(piece.x1 - piece.x0, piece.y1 - piece.y0) > Math.hypot(best.x1 - best.x0, best.y1 - best.y0)
          ? piece
          : best,
      );
      return {
        shape: artwork.shapes[longest.shape]!,
        at: [(longest.x0 + longest.x1) / 2, (longest.y0 + longest.y1) / 2],
        weight: lengthMm,
        lengthMm,
      };
    });
}

/** Creases and perforations that stop short of a line by more than `creaseShortMm`. */
function checkShort(facts: CheckFacts): readonly Finding[] {
  const { creaseShortMm } = facts.ticket.checks;
  return gatherTroubles(facts.artwork, 'check/crease-short', listShort(facts), (list) => ({
    message: `${list.length === 1 ? 'A crease or perforation stops' : `${list.length} ends of creases or perforations stop`} short of the line ahead, by ${sayMm(list[0]!.lengthMm)} mm at most; ${sayMm(creaseShortMm)} mm are allowed.`,
    remedy: 'Draw the line up to the cut or crease that it runs to: the board folds askew where it is not creased.',
    data: { measuredMm: roundValue(list[0]!.lengthMm), allowedMm: creaseShortMm },
  }));
}

/** Creases and perforations that run over the cut by more than `creaseOverMm`. */
function checkOver(facts: CheckFacts): readonly Finding[] {
  const { creaseOverMm } = facts.ticket.checks;
  const odd = listIdle(facts, creaseOverMm, (fold) => fold.panel < 0);
  return gatherTroubles(facts.artwork, 'check/crease-over-cut', odd, (list) => ({
    message: `${list.length === 1 ? 'A crease or perforation runs' : `${list.length} creases or perforations run`} off the blank, over the cut, by ${sayMm(list[0]!.lengthMm)} mm at most; ${sayMm(creaseOverMm)} mm are allowed.`,
    remedy: 'Trim the line at the cut: beyond it the tool works the waste, or the neighbouring blank.',
    data: { measuredMm: roundValue(list[0]!.lengthMm), allowedMm: creaseOverMm },
  }));
}

/** Creases and perforations within a panel that part nothing, longer than `creaseReachMm`. */
function checkIdle(facts: CheckFacts): readonly Finding[] {
  const odd = listIdle(facts, facts.ticket.checks.creaseReachMm, (fold) => fold.panel >= 0);
  return gatherTroubles(facts.artwork, 'check/crease-idle', odd, (list) => ({
    message: `${list.length === 1 ? 'A crease or perforation ends' : `${list.length} creases or perforations end`} within a panel and ${list.length === 1 ? 'folds' : 'fold'} nothing, over ${sayMm(list[0]!.lengthMm)} mm at most.`,
    remedy: 'Look whether the line should run on to a cut or a crease, or is left over.',
    data: { measuredMm: roundValue(list[0]!.lengthMm), allowedMm: facts.ticket.checks.creaseReachMm },
  }));
}

/** Creases and perforations that stop short of a line, run over the cut, or fold nothing. */
export function checkCreaseEnds(facts: CheckFacts): readonly Finding[] {
  return [...checkShort(facts), ...checkOver(facts), ...checkIdle(facts)];
}
