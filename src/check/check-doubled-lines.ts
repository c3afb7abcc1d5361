// Do lines lie on each other?
import { endsOf, overlapOf } from '../geometry/segment.js';
import type { Finding } from '../model/finding.js';
import type { ToolLine } from '../model/tool-line.js';
import { isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { joinPlaces, type LineStretch } from './join-places.js';
import { roundValue, sayMm } from './say-value.js';
import { isAroundPiece, lengthOfPiece, type ToolPieces } from './tool-pieces.js';

/** Lines this near lie on each other: above what flattening may leave between two drawings of a curve. @unit mm */
const ON_MM = 0.02;

/** A place where lines lie on each other. */
interface Doubling extends Trouble {
  readonly line: ToolLine;
  readonly lengthMm: number;
}

/** Whether two pieces have the same ends, either way round. */
function areEqual({ ends }: ToolPieces, one: number, other: number): boolean {
  const [p, q] = [4 * one, 4 * other];
  if (ends[p] === ends[q] && ends[p + 1] === ends[q + 1]) {
    return ends[p + 2] === ends[q + 2] && ends[p + 3] === ends[q + 3];
  }
  return (
    ends[p] === ends[q + 2] && ends[p + 1] === ends[q + 3] && ends[p + 2] === ends[q] && ends[p + 3] === ends[q + 1]
  );
}

/** Where lines run over an earlier line of their own pass, and over one of another pass. */
function findStretches(facts: CheckFacts): {
  readonly same: readonly LineStretch[];
  readonly other: readonly LineStretch[];
} {
  const { toolLines, toolPieces, artwork } = facts;
  const on = ON_MM / artwork.artboard.mmPerPx;
  const copies = new Uint8Array(toolPieces.count);
  const same: LineStretch[] = [];
  const other: LineStretch[] = [];
  const passOf = (piece: number): number => toolLines[toolPieces.line[piece]!]!.pass;
  let piece = 0;
  let own: LineStretch[] = [];
  const look = (near: number): boolean => {
    if (near >= piece) return false;
    const isSame = passOf(near) === passOf(piece);
    // The first of several equal pieces of a pass stands for all, the others are doubled from end to end.
    if (isSame && areEqual(toolPieces, piece, near)) copies[piece] = 1;
    const overlap = copies[near] === 1 ? null : overlapOf(endsOf(toolPieces, piece), endsOf(toolPieces, near), on);
    if (overlap === null) return false;
    const start = toolPieces.start[piece]!;
    const stretch = { line: toolPieces.line[piece]!, from: start + overlap[0], to: start + overlap[1], distance: 0 };
    (isSame ? own : other).push(stretch);
    return false;
  };
  for (; piece < toolPieces.count; piece += 1) {
    isAroundPiece(toolPieces, piece, on, look);
    if (copies[piece] === 1) {
      const [line, start] = [toolPieces.line[piece]!, toolPieces.start[piece]!];
      same.push({ line, from: start, to: start + lengthOfPiece(toolPieces, piece), distance: 0 });
    } else {
      for (const stretch of own) same.push(stretch);
    }
    if (own.length > 0) own = [];
  }
  return { same, other };
}

/** Places of at least the least length. */
function listDoublings(facts: CheckFacts, stretches: readonly LineStretch[]): readonly Doubling[] {
  const { toolLines, artwork, ticket } = facts;
  const { mmPerPx } = artwork.artboard;
  return joinPlaces(facts, stretches, ON_MM / mmPerPx).flatMap(
    ({ stretches: own, length, at }): readonly Doubling[] => {
      const lengthMm = length * mmPerPx;
      if (isBelow(lengthMm, ticket.checks.overlapMm)) return [];
      const lines = own.map(({ line }) => toolLines[line]!);
      const [line] = lines;
      return [
        { shape: line!.shape, among: lines.map(({ shape }) => shape), at, weight: lengthMm, line: line!, lengthMm },
      ];
    },
  );
}

/**
 * Lines that lie on each other, reversed and partly too, over at least `overlapMm`: within a pass the tool runs twice, across passes two
 * tools work the same line.
 */
export function checkDoubledLines(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket } = facts;
  const { same, other } = findStretches(facts);
  const tell = (
    code: 'check/line-doubled' | 'check/line-on-line',
    doublings: readonly Doubling[],
    remedy: string,
    say: (name: string, places: string, totalMm: string) => string,
  ): readonly Finding[] =>
    // A layer may hold lines of several passes.
    assignment.passes.flatMap(({ name }, pass) =>
      gatherTroubles(
        artwork,
        code,
        doublings.filter(({ line }) => line.pass === pass),
        (list) => {
          const total = list.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
          const places = list.length === 1 ? 'in one place' : `in ${list.length} places`;
          const data = { measuredMm: roundValue(total), allowedMm: ticket.checks.overlapMm };
          return { message: say(name, places, sayMm(total)), remedy, data };
        },
      ),
    );
  return [
    ...tell(
      'check/line-doubled',
      listDoublings(facts, same),
      'Delete the copies, so that each line is there once; where lines overlap in part, trim one of them.',
      (name, places, totalMm) =>
        `Lines of the pass ${name} lie on each other ${places}: the tool would run over ${totalMm} mm twice.`,
    ),
    ...tell(
      'check/line-on-line',
      listDoublings(facts, other),
      'Decide which tool works the line, and delete it from the other pass.',
      (name, places, totalMm) =>
        `Lines of the pass ${name} lie on lines of another tool pass ${places}, over ${totalMm} mm.`,
    ),
  ];
}
