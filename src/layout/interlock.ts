// Copies by their true outlines: interlocked rows and columns, then whatever else finds room.
import type { Box } from '../geometry/box.js';
import { fillGaps, type GridCopy } from './fill-gaps.js';
import { isForbidden } from './moves.js';
import { type MoveTable, PER_MM } from './outline-pairs.js';
import { type RowTask, searchRows } from './search-rows.js';

function swapBox({ x0, y0, x1, y1 }: Box): Box {
  return { x0: y0, y0: x0, x1: y1, y1: x1 };
}

/** Rows, or columns as rows of everything mirrored at the diagonal. */
function searchWay(
  table: MoveTable,
  rooms: readonly Box[],
  pair: readonly [number, number],
  way: { readonly columns: boolean; readonly turns: 1 | 2 },
): readonly GridCopy[] {
  const moves = way.columns ? table.swapped : table.moves;
  const [first, second] = pair;
  const room = (piece: number): Box => (way.columns ? swapBox(rooms[piece]!) : rooms[piece]!);
  const task: RowTask = {
    same: moves[first]![first]!,
    next: moves[first]![second]!,
    back: moves[second]![first]!,
    other: moves[second]![second]!,
    rooms: [room(first), room(second)],
  };
  return searchRows(task, way.turns).map(({ kind, x, y }) => {
    const piece = kind === 0 ? first : second;
    return way.columns ? { piece, x: y, y: x } : { piece, x, y };
  });
}

/** Whether no two copies lie within each other's forbidden moves. */
export function keepApart(copies: readonly GridCopy[], { moves }: MoveTable): boolean {
  const reach = Math.max(...moves.flat().map(({ high }) => high));
  const sorted = copies.toSorted((a, b) => a.x - b.x);
  return sorted.every((copy, i) => {
    for (let k = i + 1; k < sorted.length && sorted[k]!.x - copy.x < reach; k += 1) {
      const other = sorted[k]!;
      if (isForbidden(moves[copy.piece]![other.piece]!, other.x - copy.x, other.y - copy.y)) return false;
    }
    return true;
  });
}

/** Pairs of pieces that lie upside down to each other; a piece alone is a pair with itself. */
function listPairs(table: MoveTable): readonly (readonly [number, number])[] {
  const turns = table.pieces.map(({ piece }) => piece.turn);
  const pairs = turns.flatMap((turn, i) => {
    const k = turns.indexOf(((turn + 180) % 360) as (typeof turns)[number]);
    return k > i ? [[i, k] as const] : [];
  });
  // Upside down alone is the same sheet upside down.
  const alone = turns.flatMap((_, i) => (pairs.some(([, k]) => k === i) ? [] : [[i, i] as const]));
  return [...alone, ...pairs];
}

/**
 * Layouts by outlines, each with its gaps filled: of rows and columns of each turn and each pair of turns, and of layouts that are
 * handed in.
 *
 * @param rooms - Where top lefts of each piece may lie, grid units.
 */
export function interlock(
  table: MoveTable,
  rooms: readonly Box[],
  seeds: readonly (readonly GridCopy[])[],
): readonly (readonly GridCopy[])[] {
  const found = listPairs(table).flatMap((pair) =>
    [false, true].map((columns) => searchWay(table, rooms, pair, { columns, turns: pair[0] === pair[1] ? 1 : 2 })),
  );
  return [...seeds, ...found, []]
    .map((copies) => fillGaps(copies, table, rooms))
    .filter((copies) => keepApart(copies, table));
}

/** A length in grid units. */
export function toUnits(mm: number): number {
  return Math.round(mm * PER_MM);
}
