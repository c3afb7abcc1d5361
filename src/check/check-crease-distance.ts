// Do creases keep their distance from cuts and from each other?
import { endsOf, parallelDistance } from '../geometry/segment.js';
import type { Finding } from '../model/finding.js';
import type { ToolLine } from '../model/tool-line.js';
import { isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { joinPlaces, type LineStretch } from './join-places.js';
import { roundValue, sayMm } from './say-value.js';
import { piecesNear } from './tool-pieces.js';

/** Lines that differ by less in direction run side by side: 5 degrees, as a slope. */
const PARALLEL_SLOPE = 0.0875;

/** Nearer lines lie on each other, which another check tells. @unit mm */
const ON_MM = 0.02;

/** Lines that run side by side over less are let be. @unit mm */
const LEAST_MM = 2;

/** A stretch of a crease beside another line. */
interface Side extends Trouble {
  readonly distanceMm: number;
}

/** Creases that run side by side with a line of some kind, nearer than allowed. */
function listSides(
  facts: CheckFacts,
  allowedMm: number,
  isOwn: (line: ToolLine) => boolean,
  isOther: (line: ToolLine) => boolean,
): readonly Side[] {
  const { toolLines, toolPieces, artwork } = facts;
  const { mmPerPx } = artwork.artboard;
  const allowed = allowedMm / mmPerPx;
  if (!toolLines.some(isOwn) || !toolLines.some(isOther)) return [];
  const isOf = toolLines.map((line) => (isOwn(line) ? 1 : 0) + (isOther(line) ? 2 : 0));
  // Cuts are few where creases are many: what no cut comes near needs no look.
  const nearOther = new Uint8Array(toolPieces.count);
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    if (isOf[toolPieces.line[piece]!] !== 2) continue;
    for (const near of piecesNear(toolPieces, piece, allowed)) nearOther[near] = 1;
  }
  const beside: LineStretch[] = [];
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const line = toolPieces.line[piece]!;
    if (isOf[line] !== 3 && (isOf[line] !== 1 || nearOther[piece] === 0)) continue;
    for (const near of piecesNear(toolPieces, piece, allowed)) {
      if (near === piece || isOf[toolPieces.line[near]!]! < 2) continue;
      const side = parallelDistance(endsOf(toolPieces, piece), endsOf(toolPieces, near), PARALLEL_SLOPE);
      if (side === null || side.distance <= ON_MM / mmPerPx || !isBelow(side.distance * mmPerPx, allowedMm)) continue;
      const start = toolPieces.start[piece]!;
      beside.push({ line, from: start + side.from, to: start + side.to, distance: side.distance });
    }
  }
  return joinPlaces(facts, beside, ON_MM / mmPerPx).flatMap(({ stretches, length, distance, at }): readonly Side[] => {
    if (isBelow(length * mmPerPx, LEAST_MM)) return [];
    const among = stretches.map(({ line }) => toolLines[line]!.shape);
    return [{ shape: among[0]!, among, at, weight: allowed - distance, distanceMm: distance * mmPerPx }];
  });
}

/** Creases and perforations nearer to a parallel cut than `creaseToCutMm`. */
function checkCuts(facts: CheckFacts): readonly Finding[] {
  const { creaseToCutMm } = facts.ticket.checks;
  const isCut = (line: ToolLine): boolean => line.kind === 'cut';
  const sides = listSides(facts, creaseToCutMm, (line) => !isCut(line), isCut);
  return gatherTroubles(facts.artwork, 'check/crease-near-cut', sides, (list) => ({
    message: `${list.length === 1 ? 'A crease or perforation runs' : `${list.length} creases or perforations run`} beside a cut at ${sayMm(list[0]!.distanceMm)} mm; at least ${sayMm(creaseToCutMm)} mm are allowed.`,
    remedy: 'Move the two lines apart: a narrow strip of board tears or bursts open instead of folding.',
    data: { measuredMm: roundValue(list[0]!.distanceMm), allowedMm: creaseToCutMm },
  }));
}

/**
 * Creases nearer to each other than one groove is wide: 1.5 times `caliperMm` plus `creaseRuleMm`.
 *
 * @source rule of thumb of three suppliers of creasing matrix: weak, so a warning
 */
function checkPairs(facts: CheckFacts): readonly Finding[] {
  const { caliperMm, creaseRuleMm } = facts.ticket.checks;
  if (caliperMm === null) return [];
  const allowedMm = 1.5 * caliperMm + creaseRuleMm;
  const isCrease = (line: ToolLine): boolean => line.kind === 'crease';
  const sides = listSides(facts, allowedMm, isCrease, isCrease);
  return gatherTroubles(facts.artwork, 'check/crease-pair-narrow', sides, (list) => ({
    message: `Creases run side by side at ${sayMm(list[0]!.distanceMm)} mm; board of ${sayMm(caliperMm)} mm needs at least ${sayMm(allowedMm)} mm from groove to groove.`,
    remedy: 'Move the creases apart, or leave one of them out.',
    data: { measuredMm: roundValue(list[0]!.distanceMm), allowedMm: roundValue(allowedMm) },
  }));
}

/** Creases too near to a parallel cut, and too near to each other for the board. */
export function checkCreaseDistance(facts: CheckFacts): readonly Finding[] {
  return [...checkCuts(facts), ...checkPairs(facts)];
}
