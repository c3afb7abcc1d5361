// Do lines lie on each other?
import { overlapOf } from '../geometry/segment.js';
import type { Finding } from '../model/finding.js';
import type { ToolLine } from '../model/tool-line.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { joinStretches, type Stretch } from './join-stretches.js';
import { pointAt } from './point-at.js';
import { roundValue, sayMm } from './say-value.js';
import { endsOf, piecesNear, type ToolPieces } from './tool-pieces.js';

/** Lines this near lie on each other: above what flattening may leave between two drawings of a curve. @unit mm */
const ON_MM = 0.02;

/** A stretch of a line that runs over an earlier one. */
interface Doubling extends Trouble {
  readonly line: ToolLine;
  readonly lengthMm: number;
}

/** Stretches by line. */
type ByLine = Map<number, Stretch[]>;

function addStretch(byLine: ByLine, line: number, stretch: Stretch): void {
  const list = byLine.get(line);
  if (list === undefined) byLine.set(line, [stretch]);
  else list.push(stretch);
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
  readonly same: ByLine;
  readonly other: ByLine;
} {
  const on = ON_MM / artwork.artboard.mmPerPx;
  const copyOf = findCopies(toolPieces, toolLines);
  const same: ByLine = new Map();
  const other: ByLine = new Map();
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const line = toolPieces.line[piece]!;
    const start = toolPieces.start[piece]!;
    const ends = endsOf(toolPieces, piece);
    if (copyOf[piece]! >= 0) {
      addStretch(same, line, [start, start + Math.hypot(ends[2]! - ends[0]!, ends[3]! - ends[1]!)]);
    }
    for (const near of piecesNear(toolPieces, piece, on)) {
      if (near >= piece || copyOf[near]! >= 0) continue;
      const overlap = overlapOf(ends, endsOf(toolPieces, near), on);
      if (overlap === null) continue;
      const isSame = toolLines[toolPieces.line[near]!]!.pass === toolLines[line]!.pass;
      if (isSame && copyOf[piece]! >= 0) continue;
      addStretch(isSame ? same : other, line, [start + overlap[0], start + overlap[1]]);
    }
  }
  return { same, other };
}

/** Joined stretches of at least the least length. */
function listDoublings({ toolLines, artwork, ticket }: CheckFacts, byLine: ByLine): readonly Doubling[] {
  const { mmPerPx } = artwork.artboard;
  const doublings: Doubling[] = [];
  for (const [position, stretches] of byLine) {
    const line = toolLines[position]!;
    for (const [from, to] of joinStretches(stretches, ON_MM / mmPerPx)) {
      const lengthMm = (to - from) * mmPerPx;
      if (lengthMm < ticket.checks.overlapMm) continue;
      doublings.push({
        shape: line.shape,
        at: pointAt(line.outline, (from + to) / 2),
        weight: lengthMm,
        line,
        lengthMm,
      });
    }
  }
  return doublings;
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
