// The board that stays: the blanks as an area.
import { type Box, EMPTY_BOX, unite } from '../geometry/box.js';
import { indexBoxes } from '../geometry/box-index.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { fillRings, type Grid, type Region, toGrid, uniteRegions } from '../geometry/region.js';
import type { Blank } from '../model/faces.js';
import type { CheckFacts } from './check-facts.js';

function listRings(facts: CheckFacts): readonly Blank[] {
  return facts.faces?.blanks ?? [];
}

function boxOf(points: Float64Array): Box {
  let { x0, y0, x1, y1 } = EMPTY_BOX;
  for (let at = 0; at < points.length; at += 2) {
    x0 = Math.min(x0, points[at]!);
    x1 = Math.max(x1, points[at]!);
    y0 = Math.min(y0, points[at + 1]!);
    y1 = Math.max(y1, points[at + 1]!);
  }
  return { x0, y0, x1, y1 };
}

/** The box around all blanks, px; empty where there is none. */
export function blankBox(facts: CheckFacts): Box {
  return listRings(facts).reduce((box, { outer }) => unite(box, boxOf(outer)), EMPTY_BOX);
}

/** All blanks as one area, without their holes. */
export function blankRegion(facts: CheckFacts, grid: Grid): Region {
  const blanks = listRings(facts).map(({ outer, holes }) =>
    fillRings(
      [outer, ...holes].map((ring) => toGrid(grid, ring)),
      'evenodd',
    ),
  );
  return uniteRegions(blanks);
}

/** Whether a point of the artboard lies on the board that stays; always, where no blank is known. */
export function blankTest(facts: CheckFacts): (x: number, y: number) => boolean {
  const rings = listRings(facts);
  if (rings.length === 0) return () => true;
  const boxes = rings.map(({ outer }) => boxOf(outer));
  const index = indexBoxes(Float64Array.from(boxes.flatMap(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1])));
  return (x, y) =>
    index.search(x, y, x, y).some((place) => {
      const { outer, holes } = rings[place]!;
      return isInsideLoop(outer, x, y) && !holes.some((hole) => isInsideLoop(hole, x, y));
    });
}
