// Whether two areas share more than a hair.
import { type Area, extentOfLines } from './area.js';
import { type Box, intersect, isEmptyBox } from './box.js';

/** What two areas share that is thinner than this is only touching, px. */
const HAIR = 0.025;

/** How much may still be looked at, in lines and pairs of lines; spent as it goes. */
export interface Effort {
  left: number;
}

/** Takes effort; false where none is left. */
function spend(effort: Effort, steps: number): boolean {
  effort.left -= steps;
  return effort.left > 0;
}

/** Lines across the shared box on which two fills are compared. */
const SCAN_LINES = 15;

interface Line {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly reach: number;
}

function reachAt(area: Area, at: number): number {
  return at >= 4 * area.drawnCount && at < 4 * area.roundCount ? 0 : area.reach;
}

function countLines({ lines }: Area): number {
  return lines.length / 4;
}

/** Whether the box of a line with its band meets a box. */
function isLineNear(area: Area, at: number, within: Box): boolean {
  const { lines } = area;
  const reach = reachAt(area, at);
  const [x0, y0, x1, y1] = [lines[at]!, lines[at + 1]!, lines[at + 2]!, lines[at + 3]!];
  if (Math.min(x0, x1) - reach > within.x1 || Math.max(x0, x1) + reach < within.x0) return false;
  return Math.min(y0, y1) - reach <= within.y1 && Math.max(y0, y1) + reach >= within.y0;
}

/** Lines of an area whose band comes near a box. */
function listLines(area: Area, within: Box): readonly Line[] {
  const { lines } = area;
  const near: Line[] = [];
  for (let at = 0; at < lines.length; at += 4) {
    if (!isLineNear(area, at, within)) continue;
    const [x0, y0, x1, y1] = [lines[at]!, lines[at + 1]!, lines[at + 2]!, lines[at + 3]!];
    near.push({ x0, y0, x1, y1, reach: reachAt(area, at) });
  }
  return near;
}

/** On which side of a line a point lies, as its distance; 0 for a line without length. */
function sideOf({ x0, y0, x1, y1 }: Line, x: number, y: number): number {
  const length = Math.hypot(x1 - x0, y1 - y0);
  return length === 0 ? 0 : ((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / length;
}

/** Whether two lines cross, each with both its ends clear of the other. */
function cross(a: Line, b: Line): boolean {
  const [b0, b1] = [sideOf(a, b.x0, b.y0), sideOf(a, b.x1, b.y1)];
  if (Math.abs(b0) < HAIR || Math.abs(b1) < HAIR || b0 > 0 === b1 > 0) return false;
  const [a0, a1] = [sideOf(b, a.x0, a.y0), sideOf(b, a.x1, a.y1)];
  return Math.abs(a0) >= HAIR && Math.abs(a1) >= HAIR && a0 > 0 !== a1 > 0;
}

function squareToPoint({ x0, y0, x1, y1 }: Line, x: number, y: number): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / square));
  const [px, py] = [x0 + t * dx - x, y0 + t * dy - y];
  return px * px + py * py;
}

function comeNear(a: Line, b: Line, distance: number): boolean {
  const square = distance * distance;
  if (squareToPoint(a, b.x0, b.y0) < square || squareToPoint(a, b.x1, b.y1) < square) return true;
  if (squareToPoint(b, a.x0, a.y0) < square || squareToPoint(b, a.x1, a.y1) < square) return true;
  const [b0, b1] = [sideOf(a, b.x0, b.y0), sideOf(a, b.x1, b.y1)];
  const [a0, a1] = [sideOf(b, a.x0, a.y0), sideOf(b, a.x1, a.y1)];
  return b0 > 0 !== b1 > 0 && a0 > 0 !== a1 > 0;
}

function linesMeet(a: Line, b: Line): boolean {
  const distance = a.reach + b.reach - HAIR;
  const reach = Math.max(distance, 0);
  if (Math.min(a.x0, a.x1) > Math.max(b.x0, b.x1) + reach || Math.max(a.x0, a.x1) < Math.min(b.x0, b.x1) - reach)
    return false;
  if (Math.min(a.y0, a.y1) > Math.max(b.y0, b.y1) + reach || Math.max(a.y0, a.y1) < Math.min(b.y0, b.y1) - reach)
    return false;
  return distance > 0 ? comeNear(a, b, distance) : cross(a, b);
}

/** Where a fill begins and ends on a horizontal line, ascending: pairs of x. */
function scanFill(area: Area, y: number): readonly number[] {
  const { lines, roundCount } = area;
  const crossings: { readonly x: number; readonly turn: number }[] = [];
  for (let i = 0; i < 4 * roundCount; i += 4) {
    const [y0, y1] = [lines[i + 1]!, lines[i + 3]!];
    if (y0 <= y === y1 <= y) continue;
    const x = lines[i]! + ((y - y0) / (y1 - y0)) * (lines[i + 2]! - lines[i]!);
    crossings.push({ x, turn: y1 > y0 ? 1 : -1 });
  }
  crossings.sort((a, b) => a.x - b.x);
  const spans: number[] = [];
  let winding = 0;
  for (const { x, turn } of crossings) {
    const was = winding;
    winding = area.fillRule === 'evenodd' ? 1 - winding : winding + turn;
    if ((was === 0) !== (winding === 0)) spans.push(x);
  }
  return spans;
}

function fillHolds(area: Area, x: number, y: number): boolean {
  return scanFill(area, y).filter((edge) => edge < x).length % 2 === 1;
}

/** Whether two fills share a stretch on one of some lines across a box. */
function fillsShare(a: Area, b: Area, seen: Box): boolean {
  const within = intersect(seen, intersect(extentOfLines(a), extentOfLines(b)));
  if (isEmptyBox(within)) return false;
  for (let k = 0; k < SCAN_LINES; k += 1) {
    const y = within.y0 + ((k + 0.5) / SCAN_LINES) * (within.y1 - within.y0);
    const [one, other] = [scanFill(a, y), scanFill(b, y)];
    for (let i = 0; i < one.length; i += 2) {
      for (let j = 0; j < other.length; j += 2) {
        const from = Math.max(one[i]!, other[j]!, within.x0);
        if (Math.min(one[i + 1]!, other[j + 1]!, within.x1) - from > HAIR) return true;
      }
    }
  }
  return false;
}

/** Whether a subpath of the second begins within the fill of the first; asked where no lines meet. */
function holdsStart(area: Area, inner: Area, effort: Effort): boolean {
  const { lines, drawnCount } = inner;
  for (let i = 0; i < 4 * drawnCount; i += 4) {
    const continues = i > 0 && lines[i] === lines[i - 2] && lines[i + 1] === lines[i - 1];
    if (continues) continue;
    if (!spend(effort, countLines(area)) || fillHolds(area, lines[i]!, lines[i + 1]!)) return true;
  }
  return false;
}

/**
 * Whether an area comes near a box; false only where it is sure that nothing of it lies there.
 *
 * @param effort - True without looking where none is left.
 */
export function areaMeetsBox(area: Area, box: Box, effort: Effort): boolean {
  if (isEmptyBox(box)) return false;
  if (!spend(effort, 2 * countLines(area))) return true;
  for (let at = 0; at < area.lines.length; at += 4) if (isLineNear(area, at, box)) return true;
  return area.fillRule !== null && fillHolds(area, box.x0, box.y0);
}

/**
 * Whether two areas share more than a hair within a box: touching edges do not count.
 *
 * Bands count with round ends and as if undashed; mitred tips and square ends as what a disc of their width passes over on its way there.
 *
 * @param within - Where both are seen.
 * @param effort - True without looking further where none is left.
 * @unit px for areas and box
 * @accuracy Fills that share only slivers without crossing edges can be missed between scan lines.
 */
export function areasMeet(a: Area, b: Area, within: Box, effort: Effort): boolean {
  if (isEmptyBox(within)) return false;
  const count = countLines(a) + countLines(b);
  const ofA = listLines(a, within);
  const ofB = listLines(b, within);
  if (!spend(effort, 2 * count + ofA.length * ofB.length)) return true;
  for (const one of ofA) for (const other of ofB) if (linesMeet(one, other)) return true;
  if (a.fillRule !== null && b.fillRule !== null) {
    if (!spend(effort, SCAN_LINES * count) || fillsShare(a, b, within)) return true;
  }
  return (
    (a.fillRule !== null && b.reach > 0 && holdsStart(a, b, effort)) ||
    (b.fillRule !== null && a.reach > 0 && holdsStart(b, a, effort))
  );
}
