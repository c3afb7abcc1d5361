// Decides where register marks, corner marks and labels stand, clear of everything any pass draws.
import { type Box, isEmptyBox } from '../geometry/box.js';
import { IDENTITY, invert, type Matrix, multiply } from '../geometry/matrix.js';
import type { Artwork } from '../model/artwork.js';
import { measureExtent } from '../model/drawn-extent.js';
import { type Finding, finding } from '../model/finding.js';
import type { MarkDecision, MarkPlan } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import type { MarksRequest, Ticket } from '../model/ticket.js';
import { invariant } from '../model/trouble.js';
import { growArtboard } from './grow-artboard.js';

/** Clear distance around a disc, so that a camera finds it, mm (common practice, no source). */
const QUIET_MM = 1.5;
/** Clear distance between a disc and its cross, mm. */
const PAIR_GAP_MM = 2;
/** Positions are rounded outwards to this, mm. */
const STEP_MM = 0.01;

/** What all passes together draw, mm from the source's artboard. */
export function measureDrawn(artwork: Artwork, assignment: Assignment): Box {
  const { mmPerPx } = artwork.artboard;
  const box = measureExtent(artwork.shapes, assignment.placements);
  if (isEmptyBox(box)) return box;
  return { x0: box.x0 * mmPerPx, y0: box.y0 * mmPerPx, x1: box.x1 * mmPerPx, y1: box.y1 * mmPerPx };
}

/** Depth of the band that holds the marks around what is drawn, mm, without the offset. */
function bandMm(marks: MarksRequest): number {
  return Math.max(marks.discDiameterMm, marks.crossSizeMm) + 2 * QUIET_MM;
}

/** How far marks reach beyond what is drawn, mm: rounding and the width of their lines counted in. */
export function marksReachMm(marks: MarksRequest): number {
  return marks.offsetMm + bandMm(marks) + marks.lineWidthMm / 2 + STEP_MM;
}

/** Shortest frame on which two corner pairs and the odd pair find room: width and height, mm. */
function shortestFrameMm(marks: MarksRequest): readonly [number, number] {
  const pair = bandMm(marks) + PAIR_GAP_MM + marks.crossSizeMm;
  return [4 * pair, 3 * bandMm(marks)];
}

function roundOut(low: number, high: number): readonly [number, number] {
  const scale = Math.round(1 / STEP_MM);
  return [Math.floor(low * scale + 1e-6) / scale, Math.ceil(high * scale - 1e-6) / scale];
}

/** A side of the frame: around what is drawn, never shorter than the marks need. */
function frameSide(low: number, high: number, reach: number, shortest: number): readonly [number, number] {
  const missing = Math.max(0, shortest - (high - low + 2 * reach)) / 2;
  return roundOut(low - reach - missing, high + reach + missing);
}

/** The frame of the corner marks around what is drawn, mm. */
function layFrame(drawn: Box, marks: MarksRequest): readonly [number, number, number, number] {
  const reach = marks.offsetMm + bandMm(marks);
  const [width, height] = shortestFrameMm(marks);
  const [left, right] = frameSide(drawn.x0, drawn.x1, reach, width);
  const [top, bottom] = frameSide(drawn.y0, drawn.y1, reach, height);
  return [left, top, right, bottom];
}

function placeMarks(frame: readonly [number, number, number, number], marks: MarksRequest, matrix: Matrix): MarkPlan {
  const [left, top, right, bottom] = frame;
  const half = bandMm(marks) / 2;
  const beside = marks.discDiameterMm / 2 + PAIR_GAP_MM + marks.crossSizeMm / 2;
  const oddX = Math.round((left + (right - left) / 3) / STEP_MM) * STEP_MM;
  const row = (y: number): readonly (readonly [number, number])[] => [
    [left + half, y],
    [right - half, y],
  ];
  const discs = [...row(top + half), ...row(bottom - half), [oddX, bottom - half] as const];
  const crosses = discs.map(([x, y], i) => [i % 2 === 1 ? x - beside : x + beside, y] as const);
  const labelStart = left + half + beside + marks.crossSizeMm / 2 + PAIR_GAP_MM;
  return {
    discsMm: discs,
    crossesMm: crosses,
    frameMm: frame,
    labelMm: { at: [labelStart, top + half], width: right - left - 2 * (labelStart - left) },
    matrix,
  };
}

/** From mm on the grown artboard to the root's user units. */
function mmToRoot(artwork: Artwork, marginMm: number): Matrix {
  const { matrix, mmPerPx } = artwork.artboard;
  const inverse = invert(matrix);
  invariant(inverse !== null, 'the artboard matrix has no inverse');
  const pxPerMm = 1 / mmPerPx;
  return multiply(inverse, [pxPerMm, 0, 0, pxPerMm, -marginMm * pxPerMm, -marginMm * pxPerMm]);
}

/** How much margin would make room, mm, rounded up to a half; 0 where there is room. */
function missingMm(
  frame: readonly [number, number, number, number],
  widthMm: number,
  heightMm: number,
  lineMm: number,
): number {
  const [left, top, right, bottom] = frame;
  const over = Math.max(-left, -top, right - widthMm, bottom - heightMm) + lineMm / 2;
  return over <= 1e-9 ? 0 : Math.ceil(over * 2) / 2;
}

/** A stretch moved into another where it sticks out of it on one end. */
function moveInto([low, high]: readonly [number, number], from: number, to: number): readonly [number, number] {
  const by = low < from ? from - low : Math.min(0, to - high);
  return [low + by, high + by];
}

/**
 * Marks around all that the copies on a sheet draw.
 *
 * @param drawn - mm on the sheet.
 * @param free - Where marks may stand, mm on the sheet.
 * @returns Null where there is no room. The plan's matrix is that of mm on the sheet.
 */
export function planSheetMarks(drawn: Box, free: Box, marks: MarksRequest): MarkPlan | null {
  const [left, top, right, bottom] = layFrame(drawn, marks);
  const half = marks.lineWidthMm / 2;
  const [x0, x1] = moveInto([left, right], free.x0 + half, free.x1 - half);
  const [y0, y1] = moveInto([top, bottom], free.y0 + half, free.y1 - half);
  const over = Math.max(free.x0 - x0, free.y0 - y0, x1 - free.x1, y1 - free.y1) + half;
  return over > 1e-9 ? null : placeMarks([x0, y0, x1, y1], marks, IDENTITY);
}

function sayNoRoom(missing: number, ticket: Ticket): Finding {
  const margin = ticket.marginMm + missing;
  return finding('mark/no-room', {
    message: `The marks need ${missing} mm more on every side than the artboard has around what is drawn.`,
    remedy: `Say --margin ${margin} to let the artboard grow by ${margin} mm on every side, alike on all passes, or --no-marks to go without.`,
    data: { missingMm: missing, marginMm: margin },
  });
}

/**
 * Decides on marks and artboard before the sheets are made.
 *
 * With copies on a sheet the passes carry none: the marks belong to the sheet. Where the file is already a sheet with marks of pinbar, they are kept and none are added.
 *
 * @returns The plan, the root's new size, and findings: no room, lengths in percent, marks not asked for.
 */
export function planMarks(artwork: Artwork, assignment: Assignment, ticket: Ticket): MarkDecision {
  const { artboard } = artwork;
  const restate = !artboard.sizeIsSure && ticket.userUnitsPerInch !== null;
  const findings: Finding[] = [];
  if (ticket.marginMm !== 0 && artwork.usesPercent) {
    findings.push(
      finding('mark/percent-lengths', {
        message: 'The artboard cannot grow: lengths in percent of it would change.',
        remedy: 'Draw with plain lengths, or enlarge the artboard in the drawing.',
      }),
    );
  }
  const rootSize = growArtboard(artboard, ticket.marginMm, restate);
  const { marks } = ticket;
  if (ticket.sheet !== undefined || artwork.marks >= 0) return { plan: null, rootSize, findings };
  if (!marks.wanted) {
    findings.push(
      finding('mark/left-out', { message: 'No marks, as asked: the drawn extents of the passes may differ.' }),
    );
    return { plan: null, rootSize, findings };
  }
  const drawn = measureDrawn(artwork, assignment);
  if (isEmptyBox(drawn)) return { plan: null, rootSize, findings };
  const m = ticket.marginMm;
  const moved = { x0: drawn.x0 + m, y0: drawn.y0 + m, x1: drawn.x1 + m, y1: drawn.y1 + m };
  const frame = layFrame(moved, marks);
  const widthMm = artboard.width * artboard.mmPerPx + 2 * m;
  const heightMm = artboard.height * artboard.mmPerPx + 2 * m;
  const missing = missingMm(frame, widthMm, heightMm, marks.lineWidthMm);
  if (missing > 0) {
    findings.push(sayNoRoom(missing, ticket));
    return { plan: null, rootSize, findings };
  }
  return { plan: placeMarks(frame, marks, mmToRoot(artwork, m)), rootSize, findings };
}
