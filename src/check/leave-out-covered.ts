// Leaves out what adds nothing to the printed area: ink that lies wholly on ink.
import type { Box } from '../geometry/box.js';
import { containsBox, isEmptyBox } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import type { Outline } from '../geometry/outline.js';
import type { Shape } from '../model/artwork.js';
import type { Part } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { fillInk, prints, strokeInk } from './ink.js';

/** A part of a shape that is drawn. */
export interface DrawnShape {
  readonly shape: Shape;
  readonly part: Part;
}

/** A convex area of ink. */
interface Cover {
  readonly at: number;
  readonly points: Float64Array;
  readonly box: Box;
  /** Which way the points turn. */
  readonly turn: 1 | -1;
}

/** Largest covers that are looked at. */
const MOST_COVERS = 16;
/** Corners of a cover at most. */
const MOST_CORNERS = 64;

/** Which way a convex run of points turns: above zero clockwise as seen; 0 where it is not convex. */
function turnOf(points: Float64Array): number {
  const count = points.length / 2;
  let turn = 0;
  let sum = 0;
  for (let i = 0; i < count; i += 1) {
    const [a, b, c] = [2 * i, 2 * ((i + 1) % count), 2 * ((i + 2) % count)];
    const [ux, uy] = [points[b]! - points[a]!, points[b + 1]! - points[a + 1]!];
    const [vx, vy] = [points[c]! - points[b]!, points[c + 1]! - points[b + 1]!];
    const cross = ux * vy - uy * vx;
    if (turn !== 0 && cross !== 0 && cross > 0 !== turn > 0) return 0;
    if (cross !== 0) turn = cross;
    sum += Math.atan2(cross, ux * vx + uy * vy);
  }
  // Once round, not twice.
  return Math.abs(Math.abs(sum) - 2 * Math.PI) < 1e-6 ? turn : 0;
}

/** Whether a cover holds a box. */
function holdsBox({ points, turn, box: own }: Cover, box: Box): boolean {
  if (!containsBox(own, box)) return false;
  const { x0, y0, x1, y1 } = box;
  const corners = [x0, y0, x1, y0, x1, y1, x0, y1];
  const count = points.length;
  for (let a = 0; a < count; a += 2) {
    const b = a + 2 < count ? a + 2 : 0;
    const [dx, dy] = [points[b]! - points[a]!, points[b + 1]! - points[a + 1]!];
    for (let c = 0; c < 8; c += 2) {
      if (turn * (dx * (corners[c + 1]! - points[a + 1]!) - dy * (corners[c]! - points[a]!)) < 0) return false;
    }
  }
  return true;
}

function coverOf(facts: CheckFacts, { shape, part }: DrawnShape, at: number): Cover | null {
  if (part === 'stroke' || !shape.draws || shape.kind === 'text' || fillInk(shape.paint) !== 'ink') return null;
  const { fillBox } = shape;
  if (!containsBox(shape.drawnBound, fillBox) || facts.clipsOf(shape).length > 0) return null;
  const outlines: readonly Outline[] = facts.outlineOf(shape);
  const points = outlines.length === 1 ? outlines[0]!.points : null;
  if (points === null || points.length < 6 || points.length > 2 * MOST_CORNERS) return null;
  const turn = turnOf(points);
  return turn === 0 ? null : { at, points, box: fillBox, turn: turn > 0 ? 1 : -1 };
}

/** Whether anything of a shape lets the board show where it is painted. */
function whitens({ shape: { paint }, part }: DrawnShape): boolean {
  return (part !== 'stroke' && fillInk(paint) === 'white') || (part !== 'fill' && strokeInk(paint) === 'white');
}

/**
 * What is drawn without the shapes that print only where a large convex area of ink prints too, and stays printed.
 *
 * @param drawn - In paint order.
 */
export function leaveOutCovered(facts: CheckFacts, drawn: readonly DrawnShape[]): readonly DrawnShape[] {
  const boxes = drawn.map(({ shape }) => shape.drawnBound);
  const widest = [...drawn.keys()]
    .filter((at) => !isEmptyBox(boxes[at]!))
    .sort((a, b) => areaOf(boxes[b]!) - areaOf(boxes[a]!))
    .slice(0, 4 * MOST_COVERS);
  const covers = widest
    .map((at) => coverOf(facts, drawn[at]!, at))
    .filter((cover) => cover !== null)
    .slice(0, MOST_COVERS);
  if (covers.length === 0) return drawn;
  const whites = [...drawn.keys()].filter((at) => whitens(drawn[at]!));
  const index = indexBoxList(whites.map((at) => boxes[at]!));
  const isCover = new Set(covers.map(({ at }) => at));
  return drawn.filter((one, at) => {
    // A cover stays, also where another holds it: two alike would leave each other out.
    if (isCover.has(at) || whitens(one) || !prints(one.shape, one.part)) return true;
    const box = boxes[at]!;
    return !covers.some((cover) => {
      if (!holdsBox(cover, box)) return false;
      if (cover.at > at) return true;
      // White between the two takes the cover away and leaves the shape.
      return !index
        .search(box.x0, box.y0, box.x1, box.y1)
        .some((place) => whites[place]! > cover.at && whites[place]! < at);
    });
  });
}

function areaOf(box: Box): number {
  return (box.x1 - box.x0) * (box.y1 - box.y0);
}
