// Where a closed line crosses itself, at its points too.
import { orient } from '../geometry/orient.js';
import { crossingParameter, endsOf, nearestParameter, type PieceEnds } from '../geometry/segment.js';
import { pointAlong } from './point-along.js';
import { piecesNear, type ToolPieces } from './tool-pieces.js';

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
  /** Whether their straight pieces cross there, and whether that is well away from the ends of both. */
  readonly crosses: boolean;
  readonly straight: boolean;
}

/** Points this near are one. @unit mm */
const WELD_MM = 0.01;
/** From how far away it is seen from which side a stretch comes: the nearest from which it is clear. @unit mm */
const VIEWS_MM = [0.1, 0.5, 2] as const;

/** Pieces of a line up to which each is held against each. */
const MOST_PAIRED = 8;

type Point = readonly [number, number];

/** Where two pieces cross, each within the other; null where they only touch. */
function crossingOf(p: PieceEnds, q: PieceEnds): Point | null {
  const [ax, ay, bx, by] = p;
  const [cx, cy, dx, dy] = q;
  const isParted = (left: number, right: number): boolean => (left > 0 && right < 0) || (left < 0 && right > 0);
  if (!isParted(orient(ax, ay, bx, by, cx, cy), orient(ax, ay, bx, by, dx, dy))) return null;
  if (!isParted(orient(cx, cy, dx, dy, ax, ay), orient(cx, cy, dx, dy, bx, by))) return null;
  const t = crossingParameter(p, q);
  return t === null ? null : [ax + t * (bx - ax), ay + t * (by - ay)];
}

/** Where a point lies on a piece, as a length from its start; null where it does not. */
function placeOn(ends: PieceEnds, x: number, y: number, weld: number): number | null {
  const [x0, y0, x1, y1] = ends;
  const t = nearestParameter(x0, y0, x1, y1, x, y);
  if (Math.hypot(x0 + t * (x1 - x0) - x, y0 + t * (y1 - y0) - y) > weld) return null;
  return t * Math.hypot(x1 - x0, y1 - y0);
}

/** Whether the boxes of two pieces are farther apart than a distance. */
function areApart({ ends }: ToolPieces, piece: number, other: number, distance: number): boolean {
  const [p, q] = [4 * piece, 4 * other];
  for (const axis of [0, 1]) {
    const [p0, p1, q0, q1] = [ends[p + axis]!, ends[p + axis + 2]!, ends[q + axis]!, ends[q + axis + 2]!];
    if (Math.min(p0, p1) - Math.max(q0, q1) > distance || Math.min(q0, q1) - Math.max(p0, p1) > distance) return true;
  }
  return false;
}

/** Where two pieces meet. */
function meetingsOf(pieces: ToolPieces, piece: number, other: number, weld: number): readonly Meeting[] {
  const [p, q] = [endsOf(pieces, piece), endsOf(pieces, other)];
  const [start, begin] = [pieces.start[piece]!, pieces.start[other]!];
  const lengthOf = (ends: PieceEnds): number => Math.hypot(ends[2] - ends[0], ends[3] - ends[1]);
  const cross = crossingOf(p, q);
  if (cross !== null) {
    const s = Math.hypot(cross[0] - p[0], cross[1] - p[1]);
    const t = Math.hypot(cross[0] - q[0], cross[1] - q[1]);
    const isWithin = (along: number, length: number): boolean => along > weld && along < length - weld;
    const straight = isWithin(s, lengthOf(p)) && isWithin(t, lengthOf(q));
    return [{ s: start + s, t: begin + t, at: cross, crosses: true, straight }];
  }
  const meetings: Meeting[] = [];
  for (const end of [0, 2]) {
    const [x, y] = [q[end]!, q[end + 1]!];
    const s = placeOn(p, x, y, weld);
    const t = end === 0 ? 0 : lengthOf(q);
    if (s !== null) meetings.push({ s: start + s, t: begin + t, at: [x, y], crosses: false, straight: false });
  }
  for (const end of [0, 2]) {
    const [x, y] = [p[end]!, p[end + 1]!];
    const t = placeOn(q, x, y, weld);
    const s = end === 0 ? 0 : lengthOf(p);
    if (t !== null) meetings.push({ s: start + s, t: begin + t, at: [x, y], crosses: false, straight: false });
  }
  return meetings;
}

/**
 * Whether the two stretches of a meeting change sides, seen from a distance: each comes from one side of the other and leaves on its other
 * side. Null where two directions are so near to each other that it is not clear.
 */
function seeSides(
  pieces: ToolPieces,
  { line, length }: Loop,
  meeting: Meeting,
  view: number,
  weld: number,
): boolean | null {
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
  const oneWay = weld / view;
  const isApart = (turn: number): boolean =>
    turn > oneWay && turn < 2 * Math.PI - oneWay && Math.abs(turn - to) > oneWay;
  return isApart(p) && isApart(q) ? p < to !== q < to : null;
}

/** How near two stretches come to each other where they change sides, px; null where they do not. */
function knotSize(pieces: ToolPieces, loop: Loop, meeting: Meeting, mmPerPx: number): number | null {
  const nearest = VIEWS_MM[0] / mmPerPx;
  if (meeting.straight) return nearest;
  const apart = Math.abs(meeting.t - meeting.s);
  const farthest = Math.min(apart, loop.length - apart) / 2;
  for (const viewMm of VIEWS_MM) {
    const view = viewMm / mmPerPx;
    if (view > farthest) break;
    const changes = seeSides(pieces, loop, meeting, view, WELD_MM / mmPerPx);
    if (changes !== null) return changes ? view : null;
  }
  // Nowhere clear: then whether their pieces cross.
  return meeting.crosses ? nearest : null;
}

/** A place where a line crosses itself: what lies within its size is the same place. */
interface Knot {
  readonly at: Point;
  readonly size: number;
}

/** Adds a knot unless it is one of those before. */
function addKnot(seen: Map<string, Knot[]>, knot: Knot, cell: number): boolean {
  const [x, y] = knot.at;
  const [column, row] = [Math.floor(x / cell), Math.floor(y / cell)];
  for (let i = -1; i <= 1; i += 1) {
    for (let j = -1; j <= 1; j += 1) {
      for (const other of seen.get(`${column + i},${row + j}`) ?? []) {
        if (Math.hypot(other.at[0] - x, other.at[1] - y) <= Math.max(other.size, knot.size)) return false;
      }
    }
  }
  const key = `${column},${row}`;
  const list = seen.get(key);
  if (list === undefined) seen.set(key, [knot]);
  else list.push(knot);
  return true;
}

function listAfter(from: number, end: number): readonly number[] {
  const list: number[] = [];
  for (let piece = from; piece < end; piece += 1) list.push(piece);
  return list;
}

/**
 * The places in which a closed line crosses itself, px: where its stretches change sides, between points or at them. Stretches that run
 * on each other for a while are left to the check of doubled lines.
 */
export function findCrossings(pieces: ToolPieces, loop: Loop, mmPerPx: number): readonly Point[] {
  const weld = WELD_MM / mmPerPx;
  const [first, end] = [pieces.first[loop.line]!, pieces.first[loop.line + 1]!];
  const cell = VIEWS_MM[VIEWS_MM.length - 1]! / mmPerPx;
  const seen = new Map<string, Knot[]>();
  const found: Point[] = [];
  for (let piece = first; piece < end; piece += 1) {
    // The pieces of a short line are fewer than what lies around it.
    const others = end - first <= MOST_PAIRED ? listAfter(piece + 2, end) : piecesNear(pieces, piece, weld);
    for (const other of others) {
      if (other <= piece + 1 || other >= end || areApart(pieces, piece, other, weld)) continue;
      for (const meeting of meetingsOf(pieces, piece, other, weld)) {
        const apart = meeting.t - meeting.s;
        // Neighbours along the line.
        if (Math.min(apart, loop.length - apart) <= 4 * weld) continue;
        const size = knotSize(pieces, loop, meeting, mmPerPx);
        if (size !== null && addKnot(seen, { at: meeting.at, size }, cell)) found.push(meeting.at);
      }
    }
  }
  return found;
}
