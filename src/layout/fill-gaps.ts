// Puts further copies where a layout leaves room for them.
import type { Box } from '../geometry/box.js';
import { firstFree, stretchesAt } from './moves.js';
import type { MoveTable } from './outline-pairs.js';

/** A copy by the index of its piece, its top left. Grid units. */
export interface GridCopy {
  readonly piece: number;
  readonly x: number;
  readonly y: number;
}

/** Upright lines that are looked along for one copy, at most. */
const MOST_LINES = 160;

/** Layouts of more copies are left as they are: what rows of small pieces leave is small. */
const MOST_COPIES = 300;

/** Lines along which a further copy may just touch one that lies: where corners of forbidden moves begin and end, and the edges of the room. */
function listLines(copies: readonly GridCopy[], { moves }: MoveTable, piece: number, room: Box): readonly number[] {
  const lines = new Set([room.x0, room.x1]);
  for (const copy of copies) {
    const { low, high } = moves[copy.piece]![piece]!;
    for (const at of [low, high]) lines.add(copy.x + at);
  }
  for (const copy of copies) {
    if (lines.size > MOST_LINES) break;
    for (const at of moves[copy.piece]![piece]!.corners) lines.add(copy.x + at);
  }
  const inside = [...lines].filter((x) => x >= room.x0 && x <= room.x1);
  return inside.slice(0, MOST_LINES).sort((a, b) => a - b);
}

/** The topmost free place of a piece, of several the leftmost; null where there is none. */
function findPlace(copies: readonly GridCopy[], table: MoveTable, piece: number, room: Box): GridCopy | null {
  let best: GridCopy | null = null;
  for (const x of listLines(copies, table, piece, room)) {
    const stretches = copies.flatMap((copy) =>
      stretchesAt(table.moves[copy.piece]![piece]!, x - copy.x).map(([a, b]) => [a + copy.y, b + copy.y] as const),
    );
    const y = firstFree(stretches, room.y0);
    if (y <= room.y1 && (best === null || y < best.y)) best = { piece, x, y };
  }
  return best;
}

/**
 * The copies with as many more as find room, one after the other.
 *
 * @param rooms - Where top lefts of each piece may lie.
 */
export function fillGaps(copies: readonly GridCopy[], table: MoveTable, rooms: readonly Box[]): readonly GridCopy[] {
  if (copies.length > MOST_COPIES) return copies;
  const placed = [...copies];
  for (const [piece, room] of rooms.entries()) {
    for (
      let found = findPlace(placed, table, piece, room);
      found !== null;
      found = findPlace(placed, table, piece, room)
    ) {
      placed.push(found);
    }
  }
  return placed;
}
