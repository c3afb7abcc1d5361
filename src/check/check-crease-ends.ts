// Do creases end where they should?
import { type Ahead, distanceToPiece, endsOf, meetAhead, type PieceEnds } from '../geometry/segment.js';
import type { IdleFold } from '../model/faces.js';
import type { Finding } from '../model/finding.js';
import { boundSlack, isAbove } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';
import { isAroundPoint, lengthOfPiece, type ToolPieces } from './tool-pieces.js';

/** A crease end or a stretch of a crease, with what was measured of it. */
interface Odd extends Trouble {
  readonly lengthMm: number;
}

/** An end of a line: where, px, the unit vector in which it runs on, and whether the line ends or begins there. */
interface LineEnd {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly line: number;
  readonly isTail: boolean;
}

/** Lines that differ by less in direction run into each other: 5 degrees, as a slope. */
const PARALLEL_SLOPE = 0.0875;

/** Points this near are one. @unit mm */
const WELD_MM = 0.01;

/** Up to where points are one, ends lie on a line, and a line is looked for ahead, px. */
interface Nearness {
  readonly weld: number;
  readonly snap: number;
  readonly reach: number;
}

/** Both ends of an open line; none of a line without a length. */
function endsOfLine(pieces: ToolPieces, line: number): readonly LineEnd[] {
  const [first, last] = [pieces.first[line]!, pieces.first[line + 1]! - 1];
  let [head, tail] = [first, last];
  while (head < last && lengthOfPiece(pieces, head) === 0) head += 1;
  while (tail > first && lengthOfPiece(pieces, tail) === 0) tail -= 1;
  if (last < first || lengthOfPiece(pieces, head) === 0) return [];
  const [ax, ay, bx, by] = endsOf(pieces, head);
  const [cx, cy, ex, ey] = endsOf(pieces, tail);
  const [atHead, atTail] = [lengthOfPiece(pieces, head), lengthOfPiece(pieces, tail)];
  return [
    { x: ax, y: ay, dx: (ax - bx) / atHead, dy: (ay - by) / atHead, line, isTail: false },
    { x: ex, y: ey, dx: (ex - cx) / atTail, dy: (ey - cy) / atTail, line, isTail: true },
  ];
}

/** How far a piece of its own line is away from an end along that line, px. */
function awayAlong(pieces: ToolPieces, { line, isTail }: LineEnd, piece: number): number {
  if (!isTail) return pieces.start[piece]!;
  const last = pieces.first[line + 1]! - 1;
  return pieces.start[last]! + lengthOfPiece(pieces, last) - pieces.start[piece]! - lengthOfPiece(pieces, piece);
}

/** Whether a piece runs in the direction of an end and not beyond it: its own last stretch, or a copy of that. */
function isBehind(end: LineEnd, ends: PieceEnds, weld: number): boolean {
  const [x0, y0, x1, y1] = ends;
  const along = (x: number, y: number): number => (x - end.x) * end.dx + (y - end.y) * end.dy;
  const [s0, s1] = [along(x0, y0), along(x1, y1)];
  const across = Math.abs((x1 - x0) * end.dy - (y1 - y0) * end.dx);
  return across <= PARALLEL_SLOPE * Math.abs(s1 - s0) && Math.max(s0, s1) <= weld;
}

function distanceOf({ ends }: ToolPieces, piece: number, { x, y }: LineEnd): number {
  const at = 4 * piece;
  return distanceToPiece(ends[at]!, ends[at + 1]!, ends[at + 2]!, ends[at + 3]!, x, y);
}

/**
 * How far an end stops short of the line ahead of it, px; null where it touches one, where none lies ahead within reach, and where the
 * next one goes on in line, as between the dashes of a perforation.
 */
function measureShort(pieces: ToolPieces, end: LineEnd, near: Nearness): number | null {
  const { weld, snap, reach } = near;
  const isOwn = (piece: number): boolean =>
    (pieces.line[piece] === end.line && awayAlong(pieces, end, piece) <= snap) ||
    isBehind(end, endsOf(pieces, piece), weld);
  // Most ends touch a line: that is seen from nearby.
  const touches = (piece: number): boolean => distanceOf(pieces, piece, end) <= snap && !isOwn(piece);
  if (isAroundPoint(pieces, end, snap, touches)) return null;
  let next = null as Ahead | null;
  isAroundPoint(pieces, end, reach, (piece) => {
    const met = isOwn(piece) ? null : meetAhead(end, endsOf(pieces, piece), { beside: snap, weld });
    if (met !== null && (next === null || met.along < next.along)) next = met;
    return false;
  });
  return next !== null && next.along <= reach && !next.inLine ? next.along : null;
}

function listShort({ toolLines, toolPieces, artwork, ticket }: CheckFacts): readonly Odd[] {
  const { mmPerPx } = artwork.artboard;
  const { snapMm, creaseShortMm, creaseReachMm } = ticket.checks;
  const reach = (mm: number): number => (mm + boundSlack(mm)) / mmPerPx;
  const near = { weld: WELD_MM / mmPerPx, snap: reach(snapMm), reach: reach(creaseReachMm) };
  const odd: Odd[] = [];
  for (let position = 0; position < toolLines.length; position += 1) {
    const line = toolLines[position]!;
    if (line.kind === 'cut' || line.outline.closed) continue;
    for (const end of endsOfLine(toolPieces, position)) {
      const short = measureShort(toolPieces, end, near);
      if (short === null || !isAbove(short * mmPerPx, creaseShortMm)) continue;
      odd.push({ shape: line.shape, at: [end.x, end.y], weight: short, lengthMm: short * mmPerPx });
    }
  }
  return odd;
}

function listIdle({ faces, artwork }: CheckFacts, leastMm: number, isOn: (fold: IdleFold) => boolean): readonly Odd[] {
  if (faces === null || faces.blanks.length === 0) return [];
  return faces.idle
    .filter((fold) => isAbove(fold.lengthMm, leastMm) && isOn(fold))
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
