// Where a closed line crosses itself, at its points too.
import { orient } from '../geometry/orient.js';
import { crossingParameter, nearestParameter } from '../geometry/segment.js';
import { pointAlong } from './point-along.js';
import { endsOf, piecesNear, type ToolPieces } from './tool-pieces.js';

/** A closed line. */
export interface Loop {
  /** Position of the line. */
  readonly line: number;
  readonly length: number;
}

/** A place where two stretches of a line meet. */
interface Meeting {
  /** Lengths along the line at which each stretch is there. */
  readonly s: number;
  readonly t: number;
  readonly at: readonly [number, number];
  /** Whether both run straight on, each from one side of the other to its other side. */
  readonly straight: boolean;
}

/** Points this near are one. @unit mm */
const WELD_MM = 0.01;
/** From how far away it is seen from which side a stretch comes. @unit mm */
const VIEW_MM = 0.1;
/** Directions that differ by less, seen from there, are one: 6 degrees. */
const ONE_WAY = 0.1;

type Point = readonly [number, number];

/** Where two pieces cross, each within the other; null where they only touch. */
function crossingOf(p: Float64Array, q: Float64Array): Point | null {
  const [ax = 0, ay = 0, bx = 0, by = 0] = p;
  const [cx = 0, cy = 0, dx = 0, dy = 0] = q;
  const isParted = (left: number, right: number): boolean => (left > 0 && right < 0) || (left < 0 && right > 0);
  if (!isParted(orient(ax, ay, bx, by, cx, cy), orient(ax, ay, bx, by, dx, dy))) return null;
  if (!isParted(orient(cx, cy, dx, dy, ax, ay), orient(cx, cy, dx, dy, bx, by))) return null;
  const t = crossingParameter(p, q);
  return t === null ? null : [ax + t * (bx - ax), ay + t * (by - ay)];
}

/** Where a point lies on a piece, as a length from its start; null where it does not. */
function placeOn(ends: Float64Array, x: number, y: number, weld: number): number | null {
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = ends;
  const t = nearestParameter(x0, y0, x1, y1, x, y);
  if (Math.hypot(x0 + t * (x1 - x0) - x, y0 + t * (y1 - y0) - y) > weld) return null;
  return t * Math.hypot(x1 - x0, y1 - y0);
}

/** Where two pieces meet. */
function meetingsOf(pieces: ToolPieces, piece: number, other: number, weld: number): readonly Meeting[] {
  const [p, q] = [endsOf(pieces, piece), endsOf(pieces, other)];
  const [start, begin] = [pieces.start[piece]!, pieces.start[other]!];
  const lengthOf = (ends: Float64Array): number => Math.hypot(ends[2]! - ends[0]!, ends[3]! - ends[1]!);
  const cross = crossingOf(p, q);
  if (cross !== null) {
    const s = Math.hypot(cross[0] - p[0]!, cross[1] - p[1]!);
    const t = Math.hypot(cross[0] - q[0]!, cross[1] - q[1]!);
    const isWithin = (along: number, length: number): boolean => along > weld && along < length - weld;
    const straight = isWithin(s, lengthOf(p)) && isWithin(t, lengthOf(q));
    return [{ s: start + s, t: begin + t, at: cross, straight }];
  }
  const meetings: Meeting[] = [];
  for (const end of [0, 2]) {
    const [x, y] = [q[end]!, q[end + 1]!];
    const s = placeOn(p, x, y, weld);
    const t = end === 0 ? 0 : lengthOf(q);
    if (s !== null) meetings.push({ s: start + s, t: begin + t, at: [x, y], straight: false });
  }
  for (const end of [0, 2]) {
    const [x, y] = [p[end]!, p[end + 1]!];
    const t = placeOn(q, x, y, weld);
    const s = end === 0 ? 0 : lengthOf(p);
    if (t !== null) meetings.push({ s: start + s, t: begin + t, at: [x, y], straight: false });
  }
  return meetings;
}

/** Whether the two stretches of a meeting change sides: each comes from one side of the other and leaves on its other side. */
function changesSides(pieces: ToolPieces, { line, length }: Loop, meeting: Meeting, view: number): boolean {
  const [x, y] = meeting.at;
  const angleAt = (along: number): number => {
    const [ax, ay] = pointAlong(pieces, line, ((along % length) + length) % length);
    return Math.atan2(ay - y, ax - x);
  };
  const from = angleAt(meeting.s - view);
  const turnTo = (along: number): number => {
    const turn = (angleAt(along) - from) % (2 * Math.PI);
    return turn < 0 ? turn + 2 * Math.PI : turn;
  };
  const [to, p, q] = [turnTo(meeting.s + view), turnTo(meeting.t - view), turnTo(meeting.t + view)];
  const isApart = (turn: number): boolean =>
    turn > ONE_WAY && turn < 2 * Math.PI - ONE_WAY && Math.abs(turn - to) > ONE_WAY;
  return isApart(p) && isApart(q) && p < to !== q < to;
}

/** Whether a place is new: none of those before lies as near as the points of one knot. */
function isNew(seen: Map<string, Point>, [x, y]: Point, cell: number): boolean {
  const [column, row] = [Math.floor(x / cell), Math.floor(y / cell)];
  for (let i = -1; i <= 1; i += 1) {
    for (let j = -1; j <= 1; j += 1) {
      const other = seen.get(`${column + i},${row + j}`);
      if (other !== undefined && Math.hypot(other[0] - x, other[1] - y) <= cell) return false;
    }
  }
  seen.set(`${column},${row}`, [x, y]);
  return true;
}

/**
 * The places in which a closed line crosses itself, px: where its stretches change sides, between points or at them. Stretches that run
 * on each other for a while are left to the check of doubled lines.
 */
export function findCrossings(pieces: ToolPieces, loop: Loop, mmPerPx: number): readonly Point[] {
  const [weld, view] = [WELD_MM / mmPerPx, VIEW_MM / mmPerPx];
  const [first, end] = [pieces.first[loop.line]!, pieces.first[loop.line + 1]!];
  const seen = new Map<string, Point>();
  const found: Point[] = [];
  for (let piece = first; piece < end; piece += 1) {
    for (const other of piecesNear(pieces, piece, weld)) {
      if (other <= piece + 1 || other >= end) continue;
      for (const meeting of meetingsOf(pieces, piece, other, weld)) {
        const apart = meeting.t - meeting.s;
        // Neighbours along the line.
        if (Math.min(apart, loop.length - apart) <= 4 * weld) continue;
        if (!meeting.straight && !changesSides(pieces, loop, meeting, view)) continue;
        if (isNew(seen, meeting.at, 2 * weld)) found.push(meeting.at);
      }
    }
  }
  return found;
}
