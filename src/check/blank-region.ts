// The board that stays: the blanks as an area.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { indexBoxList } from '../geometry/box-index.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { boundPoints } from '../geometry/outline.js';
import { type Grid, type GridLine, toGrid } from '../geometry/region.js';
import type { Blank } from '../model/faces.js';
import type { CheckFacts } from './check-facts.js';

function listRings(facts: CheckFacts): readonly Blank[] {
  return facts.faces?.blanks ?? [];
}

function boxOf(points: Float64Array): Box {
  const [x0, y0, x1, y1] = boundPoints(points);
  return { x0, y0, x1, y1 };
}

/** The box around all blanks, px; empty where there is none. */
export function blankBox(facts: CheckFacts): Box {
  return listRings(facts).reduce((box, { outer }) => unite(box, boxOf(outer)), EMPTY_BOX);
}

function runsClockwise(ring: GridLine): boolean {
  let twice = 0;
  for (let at = 0; at < ring.length; at += 1) {
    const [a, b] = [ring[at]!, ring[(at + 1) % ring.length]!];
    twice += (a.x - ring[0]!.x) * (b.y - ring[0]!.y) - (b.x - ring[0]!.x) * (a.y - ring[0]!.y);
  }
  return twice > 0;
}

/** All blanks on a grid: their outer rings run clockwise as seen, their holes the other way. */
export function blankRings(facts: CheckFacts, grid: Grid): readonly GridLine[] {
  const rings: GridLine[] = [];
  for (const { outer, holes } of listRings(facts)) {
    for (const points of [outer, ...holes]) {
      const ring = toGrid(grid, points);
      if (ring.length < 3) continue;
      rings.push(runsClockwise(ring) === (points === outer) ? ring : ring.toReversed());
    }
  }
  return rings;
}

/** Whether a point of the artboard lies on the board that stays; always, where no blank is known. */
export function blankTest(facts: CheckFacts): (x: number, y: number) => boolean {
  const rings = listRings(facts);
  if (rings.length === 0) return () => true;
  const boxes = rings.map(({ outer }) => boxOf(outer));
  const index = indexBoxList(boxes);
  return (x, y) =>
    index.search(x, y, x, y).some((place) => {
      const { outer, holes } = rings[place]!;
      return isInsideLoop(outer, x, y) && !holes.some((hole) => isInsideLoop(hole, x, y));
    });
}
