// Where copies of a blank lie on a sheet: one list of matrices for all passes.
import { type Box, EMPTY_BOX, transformBox, unite } from '../geometry/box.js';
import { type Finding, finding } from '../model/finding.js';
import type { Layout, LayoutPiece, SheetRequest } from '../model/layout.js';
import { findBleed, type Placed } from './find-bleed.js';
import { findMost } from './find-most.js';
import { blankArea, freeBox, widestOverhang } from './free-area.js';
import type { Arrangement, LayoutTask } from './layout-task.js';
import { centreCopies, countGrid, placeRows } from './place-rows.js';
import { placePiece, type Turn, type TurnedPiece, turnPiece } from './turned-piece.js';

/** A layout, or what stands in the way. */
export interface LaidOut {
  readonly layout: Layout | null;
  readonly findings: readonly Finding[];
}

/** To a micrometre, for data of findings. */
function roundMm(value: number): number {
  return Math.round(value * 1000) / 1000 + 0;
}

function sayMm(value: number): string {
  return `${Math.round(value * 100) / 100 + 0}`;
}

function sayGrid(columns: number, rows: number): string {
  return `${columns} x ${rows}`;
}

/** The pieces of the rows: one, or two that take turns. */
function turnsOf(request: SheetRequest): readonly Turn[] {
  if (request.turn === 'head-to-tail') return [0, 180];
  return [request.turn ?? 0];
}

function piecesOf({ piece, request }: LayoutTask, turns: readonly Turn[]): readonly TurnedPiece[] {
  return turns.map((turn) => turnPiece(piece, turn, request.scale));
}

function areaFor(task: LayoutTask, pieces: readonly TurnedPiece[]): Box {
  return blankArea(task.free, widestOverhang(pieces), task.reachMm);
}

/** The most that upright boxes in plain rows reach, one turn for all. */
function bestPlainRows(task: LayoutTask, turns: readonly (readonly Turn[])[]): Arrangement | null {
  let best: Arrangement | null = null;
  for (const list of turns) {
    const pieces = piecesOf(task, list);
    const area = areaFor(task, pieces);
    const [columns, rows] = countGrid(area, pieces[0]!, task.gutters);
    const copies = columns * rows;
    if (copies <= (best?.copies.length ?? 0)) continue;
    const placed = placeRows(area, { columns, rows, copies }, pieces, task.gutters);
    best = { method: list.length > 1 ? 'head-to-tail rows' : 'rows', columns, rows, copies: placed };
  }
  return best;
}

/** The copies of an arrangement where they come to lie. */
function placeAll({ piece, request, free }: LayoutTask, found: Arrangement): Placed {
  const copies = request.place === 'centre' ? centreCopies(found.copies, free) : found.copies;
  const matricesMm = copies.map((copy) => placePiece(copy.piece, copy.x, copy.y));
  const boxesMm = matricesMm.map((matrix) => transformBox(matrix, piece.boxMm));
  return { matricesMm, boxesMm, copies: copies.length };
}

/** What print of an arrangement does to neighbours: nothing, or one finding. */
function lookAtBleed(task: LayoutTask, found: Arrangement): readonly Finding[] {
  const { piece, gutters } = task;
  return findBleed(placeAll(task, found), piece, Math.min(gutters.x, gutters.y));
}

/** Plain rows in which no copy prints on another: further apart than the gutter where it takes that. */
function bestClearRows(task: LayoutTask, turns: readonly (readonly Turn[])[]): Arrangement | null {
  const clear = turns.map((list) => {
    const rows = bestPlainRows(task, [list]);
    const [bleed] = rows === null ? [] : lookAtBleed(task, rows);
    if (bleed === undefined) return rows;
    const apart = Number(bleed.data.gutterMm);
    return bestPlainRows(
      { ...task, gutters: { x: Math.max(task.gutters.x, apart), y: Math.max(task.gutters.y, apart) } },
      [list],
    );
  });
  return clear.reduce((best, one) => ((one?.copies.length ?? 0) > (best?.copies.length ?? 0) ? one : best), null);
}

function sayTooSmall(task: LayoutTask, wanted: string, needed: readonly [number, number], area: Box): Finding {
  const { request, reachMm } = task;
  const [columns, rows] = countGrid(area, piecesOf(task, turnsOf(request))[0]!, task.gutters);
  const has = [Math.max(0, area.x1 - area.x0), Math.max(0, area.y1 - area.y0)] as const;
  const around =
    reachMm > 0
      ? `gripper, margins, what is drawn beyond the blanks, and marks`
      : `gripper, margins and what is drawn beyond the blanks`;
  return finding('sheet/too-small', {
    message: `${wanted} ${sayMm(needed[0])} x ${sayMm(needed[1])} mm; the sheet of ${sayMm(request.widthMm)} x ${sayMm(request.heightMm)} mm has ${sayMm(has[0])} x ${sayMm(has[1])} mm free, without ${around}.`,
    remedy:
      columns * rows > 0
        ? `Ask for at most ${sayGrid(columns, rows)} copies of this turn, for "max", or for a larger sheet.`
        : 'Ask for a larger sheet, or for another turn of the copies; --no-marks takes less room.',
    data: {
      measuredWidthMm: roundMm(needed[0]),
      measuredHeightMm: roundMm(needed[1]),
      allowedWidthMm: roundMm(has[0]),
      allowedHeightMm: roundMm(has[1]),
      columns,
      rows,
    },
  });
}

function lengthOf(count: number, size: number, gutter: number): number {
  return count * size + (count - 1) * gutter;
}

/** Rows as the ticket counts them. */
function arrangeRows(task: LayoutTask, columns: number, rows: number): Arrangement | Finding {
  const pieces = piecesOf(task, turnsOf(task.request));
  const area = areaFor(task, pieces);
  const [most, tallest] = countGrid(area, pieces[0]!, task.gutters);
  const copies = columns * rows;
  if (columns > most || rows > tallest) {
    const needed = [
      lengthOf(columns, pieces[0]!.width, task.gutters.x),
      lengthOf(rows, pieces[0]!.height, task.gutters.y),
    ] as const;
    return sayTooSmall(task, `${sayGrid(columns, rows)} ${copies === 1 ? 'copy needs' : 'copies need'}`, needed, area);
  }
  const placed = placeRows(area, { columns, rows, copies }, pieces, task.gutters);
  return { method: pieces.length > 1 ? 'head-to-tail rows' : 'rows', columns, rows, copies: placed };
}

/** The turns that a ticket leaves open. */
function openTurns({ turn }: SheetRequest): readonly (readonly Turn[])[] {
  if (turn === undefined) return [[0], [90]];
  return turn === 'head-to-tail' ? [[0, 180]] : [[turn]];
}

/** A number of copies: as many columns as fit, and the rows they take. */
function arrangeNumber(task: LayoutTask, copies: number): Arrangement | Finding {
  const best = bestPlainRows(task, [turnsOf(task.request)]);
  if (best === null || best.copies.length < copies) {
    const [piece] = piecesOf(task, turnsOf(task.request));
    const area = areaFor(task, [piece!]);
    const columns = Math.max(1, countGrid(area, piece!, task.gutters)[0]);
    const needed = [
      lengthOf(Math.min(columns, copies), piece!.width, task.gutters.x),
      lengthOf(Math.ceil(copies / columns), piece!.height, task.gutters.y),
    ] as const;
    return sayTooSmall(task, copies === 1 ? 'One copy needs' : `${copies} copies need`, needed, area);
  }
  const placed = best.copies.slice(0, copies);
  const columns = Math.min(copies, best.columns!);
  return { ...best, copies: placed, columns, rows: Math.ceil(copies / columns) };
}

/** The copies that were asked for; `rows` are the plain rows that the most are held against. */
function arrange(task: LayoutTask, rows: Arrangement | null): Arrangement | Finding {
  const { ups } = task.request;
  if (typeof ups === 'number') return arrangeNumber(task, ups);
  if (ups !== 'max') {
    const [across, down] = ups.split('x').map(Number);
    return arrangeRows(task, across!, down!);
  }
  return findMost(task, rows, (found) => lookAtBleed(task, found).length === 0) ?? arrangeNumber(task, 1);
}

function finish(task: LayoutTask, found: Arrangement, plain: Arrangement | null): Layout {
  const { piece, request, free } = task;
  const { matricesMm, boxesMm, copies } = placeAll(task, found);
  const sheetAreaMm2 = request.widthMm * request.heightMm;
  const blankAreaMm2 = piece.areaMm2 * request.scale * request.scale;
  const share = (count: number): number => (count * blankAreaMm2) / sheetAreaMm2;
  const rectangles = plain?.copies.length ?? 0;
  const { method, columns, rows } = found;
  return {
    widthMm: request.widthMm,
    heightMm: request.heightMm,
    method,
    columns,
    rows,
    matricesMm,
    copies,
    yieldShare: share(copies),
    sheetAreaMm2,
    copyIs: piece.boxIs,
    blankAreaMm2,
    boxesMm,
    drawnMm: matricesMm.reduce((box, matrix) => unite(box, transformBox(matrix, piece.drawnMm)), EMPTY_BOX),
    freeMm: free,
    rectangle: { copies: rectangles, yieldShare: share(rectangles) },
    scale: request.scale,
  };
}

/**
 * Lays copies of a blank out on a sheet.
 *
 * @param reachMm - How far the marks of the sheet reach beyond what the copies draw; 0 without marks.
 * @unit mm on the sheet, y down
 */
export function layOut(piece: LayoutPiece, request: SheetRequest, reachMm: number): LaidOut {
  const gutters = { x: request.gutterXMm ?? request.gutterMm, y: request.gutterYMm ?? request.gutterMm };
  const task: LayoutTask = { piece, request, free: freeBox(request), gutters, reachMm };
  const plain = bestClearRows(task, openTurns(request));
  const found = arrange(task, plain);
  if ('code' in found) return { layout: null, findings: [found] };
  const scaled =
    request.scale === 1
      ? []
      : [
          finding('sheet/scaled', {
            message: `Each copy is ${request.scale} times as large as the drawing, widths of lines too, as asked.`,
            data: { scale: request.scale },
          }),
        ];
  const layout = finish(task, found, plain);
  const bleed = findBleed(layout, piece, Math.min(gutters.x, gutters.y));
  return { layout, findings: [...scaled, ...bleed] };
}
