// The most copies that a sheet holds: rectangles in rows and blocks, then by outline; of equal numbers the one that takes least room.
import type { Box } from '../geometry/box.js';
import type { LayoutPiece, SheetRequest } from '../model/layout.js';
import type { GridCopy } from './fill-gaps.js';
import { blankArea, widestOverhang } from './free-area.js';
import { interlock, toUnits } from './interlock.js';
import type { Arrangement, LayoutTask } from './layout-task.js';
import { type MoveTable, outlinePiece, PER_MM, tabulateMoves } from './outline-pairs.js';
import { packBlocks } from './pack-blocks.js';
import type { PlacedCopy } from './place-rows.js';
import { type Turn, type TurnedPiece, turnPiece } from './turned-piece.js';

/** Turns that a ticket leaves open. */
function listTurns({ turn }: SheetRequest): readonly Turn[] {
  if (turn === undefined) return [0, 180, 90, 270];
  return turn === 'head-to-tail' ? [0, 180] : [turn];
}

/** Rectangles in blocks, where quarter turns are open. */
function arrangeBlocks(task: LayoutTask, pieces: readonly TurnedPiece[]): Arrangement | null {
  const upright = pieces.find(({ turn }) => turn === 0);
  const lying = pieces.find(({ turn }) => turn === 90);
  if (upright === undefined || lying === undefined) return null;
  const area = blankArea(task.free, widestOverhang([upright, lying]), task.reachMm);
  const copies = packBlocks(area, [upright, lying], task.gutters);
  return copies.length === 0 ? null : { method: 'blocks', columns: null, rows: null, copies };
}

/** Sheets that hold more rectangles are not searched by outline: rows of small pieces leave little, and the search would take long. */
const MOST_OUTLINED = 400;

/** What blanks can take of the sheet at the very most, square mm. */
function freeArea({ free, reachMm }: LayoutTask): number {
  return Math.max(0, free.x1 - free.x0 - 2 * reachMm) * Math.max(0, free.y1 - free.y0 - 2 * reachMm);
}

/** Where the top left of a piece's box may lie, grid units. */
function roomOf({ free, reachMm }: LayoutTask, piece: TurnedPiece): Box {
  const area = blankArea(free, piece.overhang, reachMm);
  const inward = {
    low: (mm: number) => Math.ceil(mm * PER_MM - 1e-6),
    high: (mm: number) => Math.floor(mm * PER_MM + 1e-6),
  };
  return {
    x0: inward.low(area.x0),
    y0: inward.low(area.y0),
    x1: inward.high(area.x1 - piece.width),
    y1: inward.high(area.y1 - piece.height),
  };
}

function toGrid(arrangement: Arrangement, pieces: readonly TurnedPiece[]): readonly GridCopy[] {
  return arrangement.copies.map(({ piece, x, y }) => ({
    piece: pieces.findIndex(({ turn }) => turn === piece.turn),
    x: toUnits(x),
    y: toUnits(y),
  }));
}

function fromGrid(copies: readonly GridCopy[], pieces: readonly TurnedPiece[]): readonly PlacedCopy[] {
  return copies
    .map(({ piece, x, y }) => ({ piece: pieces[piece]!, x: x / PER_MM, y: y / PER_MM }))
    .toSorted((a, b) => a.y - b.y || a.x - b.x);
}

/** The rectangle around all copies, square mm. */
function areaAround(copies: readonly PlacedCopy[]): number {
  const x0 = Math.min(...copies.map(({ x }) => x));
  const y0 = Math.min(...copies.map(({ y }) => y));
  const x1 = Math.max(...copies.map(({ x, piece }) => x + piece.width));
  const y1 = Math.max(...copies.map(({ y, piece }) => y + piece.height));
  return (x1 - x0) * (y1 - y0);
}

/** Less room than this is not worth another arrangement, square mm. */
const SAME_ROOM = 1;

function isBetter(one: Arrangement, other: Arrangement): boolean {
  if (one.copies.length !== other.copies.length) return one.copies.length > other.copies.length;
  return areaAround(one.copies) < areaAround(other.copies) - SAME_ROOM;
}

function outlineAll(piece: LayoutPiece, turned: readonly TurnedPiece[], task: LayoutTask): MoveTable {
  return tabulateMoves(
    turned.map((one) => outlinePiece(piece, one, task.gutters)),
    task.gutters,
  );
}

/** The best that is clear; where none is, the best. */
function chooseBest(all: readonly Arrangement[], isClear: (one: Arrangement) => boolean): Arrangement | null {
  const open = all.filter(({ copies }) => copies.length > 0);
  let first: Arrangement | null = null;
  while (open.length > 0) {
    const best = open.reduce((most, one) => (isBetter(one, most) ? one : most));
    if (isClear(best)) return best;
    first ??= best;
    open.splice(open.indexOf(best), 1);
  }
  return first;
}

/**
 * The best of all arrangements; null where not one copy fits.
 *
 * @param rows - The best of plain rows, or null.
 * @param isClear - Whether no copy of an arrangement prints on another: boxes in rows know nothing of print.
 */
export function findMost(
  task: LayoutTask,
  rows: Arrangement | null,
  isClear: (one: Arrangement) => boolean,
): Arrangement | null {
  const pieces = listTurns(task.request).map((turn) => turnPiece(task.piece, turn, task.request.scale));
  const plain = [rows, arrangeBlocks(task, pieces)].filter((one) => one !== null);
  const most = Math.max(0, ...plain.map(({ copies }) => copies.length));
  if (
    most > MOST_OUTLINED ||
    (most + 1) * task.piece.areaMm2 * task.request.scale * task.request.scale > freeArea(task)
  ) {
    const best = chooseBest(plain, isClear);
    if (best === null || most > MOST_OUTLINED || isClear(best)) return best;
  }
  const table = outlineAll(task.piece, pieces, task);
  const rooms = pieces.map((piece) => roomOf(task, piece));
  const seeds = plain.map((one) => toGrid(one, pieces));
  const outlined = interlock(table, rooms, seeds).map(
    (copies): Arrangement => ({ method: 'interlocked', columns: null, rows: null, copies: fromGrid(copies, pieces) }),
  );
  return chooseBest([...plain, ...outlined], isClear);
}
