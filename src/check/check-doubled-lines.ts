// Do lines lie on each other?
import { overlapOf } from '../geometry/segment.js';
import type { Finding } from '../model/finding.js';
import type { ToolLine } from '../model/tool-line.js';
import { isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { joinPlaces, type LineStretch } from './join-places.js';
import { roundValue, sayMm } from './say-value.js';
import { endsOf, piecesNear, type ToolPieces } from './tool-pieces.js';

/** Lines this near lie on each other: above what flattening may leave between two drawings of a curve. @unit mm */
const ON_MM = 0.02;

/** A place where lines lie on each other. */
interface Doubling extends Trouble {
  readonly line: ToolLine;
  readonly lengthMm: number;
}

/** One of several equal pieces of a pass stands for all: the others are doubled from end to end. */
function findCopies(pieces: ToolPieces, lines: readonly ToolLine[]): Int32Array {
  const first = new Map<string, number>();
  const copyOf = new Int32Array(pieces.count).fill(-1);
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = endsOf(pieces, piece);
    const { pass } = lines[pieces.line[piece]!]!;
    const key =
      x0 < x1 || (x0 === x1 && y0 < y1) ? `${pass},${x0},${y0},${x1},${y1}` : `${pass},${x1},${y1},${x0},${y0}`;
    const known = first.get(key);
    if (known === undefined) first.set(key, piece);
    else copyOf[piece] = known;
  }
  return copyOf;
}

/** Where lines run over an earlier line of their own pass, and over one of another pass. */
function findStretches({ toolLines, toolPieces, artwork }: CheckFacts): {
  readonly same: readonly LineStretch[];
  readonly other: readonly LineStretch[];
} {
  const on = ON_MM / artwork.artboard.mmPerPx;
  const copyOf = findCopies(toolPieces, toolLines);
  const same: LineStretch[] = [];
  const other: LineStretch[] = [];
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const line = toolPieces.line[piece]!;
    const start = toolPieces.start[piece]!;
    const ends = endsOf(toolPieces, piece);
    const stretch = (from: number, to: number): LineStretch => ({
      line,
      from: start + from,
      to: start + to,
      distance: 0,
    });
    if (copyOf[piece]! >= 0) same.push(stretch(0, Math.hypot(ends[2]! - ends[0]!, ends[3]! - ends[1]!)));
    for (const near of piecesNear(toolPieces, piece, on)) {
      if (near >= piece || copyOf[near]! >= 0) continue;
      const overlap = overlapOf(ends, endsOf(toolPieces, near), on);
      if (overlap === null) continue;
      const isSame = toolLines[toolPieces.line[near]!]!.pass === toolLines[line]!.pass;
      if (isSame && copyOf[piece]! >= 0) continue;
      (isSame ? same : other).push(stretch(...overlap));
    }
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
  const total = (list: readonly Doubling[]): number => list.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const places = (list: readonly Doubling[]): string =>
    list.length === 1 ? 'in one place' : `in ${list.length} places`;
  const data = (list: readonly Doubling[]): Record<string, number> => ({
    measuredMm: roundValue(total(list)),
    allowedMm: ticket.checks.overlapMm,
  });
  return [
    ...gatherTroubles(artwork, 'check/line-doubled', listDoublings(facts, same), (list) => ({
      message: `Lines of the pass ${assignment.passes[list[0]!.line.pass]!.name} lie on each other ${places(list)}: the tool would run over ${sayMm(total(list))} mm twice.`,
      remedy: 'Delete the copies, so that each line is there once; where lines overlap in part, trim one of them.',
      data: data(list),
    })),
    ...gatherTroubles(artwork, 'check/line-on-line', listDoublings(facts, other), (list) => ({
      message: `Lines of the pass ${assignment.passes[list[0]!.line.pass]!.name} lie on lines of another tool pass ${places(list)}, over ${sayMm(total(list))} mm.`,
      remedy: 'Decide which tool works the line, and delete it from the other pass.',
      data: data(list),
    })),
  ];
}
