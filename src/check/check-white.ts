// Does white lie under the print it carries, as far inside its rim as asked?

import { type Box, EMPTY_BOX, grow, isEmptyBox, unite } from '../geometry/box.js';
import { type BoxIndex, indexBoxList } from '../geometry/box-index.js';
import { fromGrid, type Region, regionArea } from '../geometry/region.js';
import type { Shape } from '../model/artwork.js';
import { type Finding, type FindingCode, type FindingText, finding } from '../model/finding.js';
import type { Role } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { inLayer, sayNumber } from './layer-words.js';
import type { DrawnShape } from './leave-out-covered.js';
import { measureDrawn, sayUnlooked, type Unlooked } from './measure-print.js';
import { GRID_PER_MM, gridFor, printedRegion, type Touch, touchesOf } from './printed-region.js';
import { createShapeRegions, type ShapeRegions } from './shape-region.js';
import { fitWhite, type WhiteFit } from './white-fit.js';

/** White this much farther inside than asked is not meant to follow the rim, mm. */
const REACH_MM = 1;

/** A part where white and print do not fit. */
interface Misfit extends Trouble {
  readonly areaMm2: number;
}

/** What is drawn in the passes of a role, in paint order within each pass. */
function listDrawn({ artwork, assignment }: CheckFacts, role: Role): readonly DrawnShape[] {
  return assignment.placements
    .filter(({ pass, shape }) => assignment.passes[pass]!.role === role && artwork.shapes[shape]!.draws)
    .toSorted((a, b) => a.pass - b.pass || a.shape - b.shape)
    .map(({ shape, part }) => ({ shape: artwork.shapes[shape]!, part }));
}

function indexDrawn(shapes: readonly { readonly shape: Shape }[]): BoxIndex {
  return indexBoxList(shapes.map(({ shape }) => shape.drawnBound));
}

/** Print that lies within reach of any white; white art in it is where white is to show. */
function nearWhite(facts: CheckFacts, white: readonly DrawnShape[], reachPx: number): readonly DrawnShape[] {
  const index = indexDrawn(white);
  return listDrawn(facts, 'print').filter(({ shape }) => {
    const { x0, y0, x1, y1 } = grow(shape.drawnBound, reachPx);
    return index.meets(x0, y0, x1, y1);
  });
}

function reportUnlooked({ assignment }: CheckFacts, why: Unlooked): Finding {
  const passes = assignment.passes.filter(({ role }) => role === 'white').map(({ name }) => name);
  return finding('check/white-unchecked', {
    message: `What ${passes.map((name) => `pass "${name}"`).join(' and ')} and the print above draw ${sayUnlooked(why, 'in the white')}; how they fit was not looked at.`,
    remedy: 'Look by eye at how white and print fit, or simplify both: a white of few outlines does for most art.',
    data: { passes, why },
  });
}

/** Parts as troubles of the topmost white shape whose box they meet. */
function toMisfits(regions: ShapeRegions, white: readonly Touch[], parts: readonly Region[]): readonly Misfit[] {
  const { grid } = regions;
  const index = indexDrawn(white);
  return parts.map((part) => {
    const at = fromGrid(grid, part[0]![0]!);
    const places = index.search(at[0], at[1], at[0], at[1]);
    const shape = white[places.length === 0 ? 0 : Math.max(...places)]!.shape;
    const areaMm2 = regionArea(part) / (GRID_PER_MM * GRID_PER_MM);
    return { shape, at, weight: areaMm2, areaMm2 };
  });
}

const round = (value: number): number => Math.round(value * 1000) / 1000 + 0;

function sayMisfits(
  facts: CheckFacts,
  list: readonly Misfit[],
  text: (where: string, area: string) => FindingText,
): FindingText {
  const areaMm2 = list.reduce((sum, misfit) => sum + misfit.areaMm2, 0);
  const where = `${inLayer(facts.artwork, list[0]!.shape?.layer ?? -1)}`;
  const said = text(where, `${sayNumber(areaMm2, 1)} mm2 at ${sayCount(list.length, 'place')}`);
  return { ...said, data: { measuredMm2: round(areaMm2), ...said.data } };
}

function report(facts: CheckFacts, fit: WhiteFit, asMisfits: (parts: readonly Region[]) => readonly Misfit[]) {
  const { whiteChokeMm: choke, whiteToleranceMm } = facts.ticket.checks;
  const chokeText = sayNumber(choke ?? 0);
  const gather = (code: FindingCode, parts: readonly Region[], text: (where: string, area: string) => FindingText) =>
    gatherTroubles(facts.artwork, code, asMisfits(parts), (list) => sayMisfits(facts, list, text));
  const data = { allowedMm: choke ?? 0, toleranceMm: whiteToleranceMm };
  return [
    ...gather('check/white-bare', fit.bare, (where, area) => ({
      message: `White ${where} carries no print: ${area}.`,
      remedy:
        'Take the white out, or bring back the print above it; where white is to show by itself, make this a note in the ticket.',
      data: { allowedMm2: 0 },
    })),
    ...gather('check/white-wide', fit.wide, (where, area) => ({
      message:
        choke === null
          ? `White ${where} sticks out from under its print: ${area}.`
          : `White ${where} reaches nearer than ${chokeText} mm to the rim of its print, or beyond it: ${area}.`,
      remedy: `Draw the white ${choke === null ? 'smaller than its print' : `${chokeText} mm inside the rim of its print`}, so that it does not show where passes are a little off.`,
      data,
    })),
    ...gather('check/white-narrow', fit.narrow, (where, area) => ({
      message: `White ${where} ends more than ${chokeText} mm inside the rim of its print: ${area} of print have no white.`,
      remedy: `Draw the white up to ${chokeText} mm from the rim of its print.`,
      data,
    })),
  ];
}

/**
 * White passes against the print passes: white that carries no print, and its distance from the rim of the print against
 * `whiteChokeMm` within `whiteToleranceMm`.
 *
 * All that a white pass draws is white, whatever its colour in the drawing. White that ends more than a millimetre farther inside
 * than asked does not follow the rim and is not judged there.
 */
export function checkWhite(facts: CheckFacts): readonly Finding[] {
  const drawn = listDrawn(facts, 'white');
  const box = drawn.reduce<Box>((all, { shape }) => unite(all, shape.drawnBound), EMPTY_BOX);
  if (isEmptyBox(box)) return [];
  const { whiteChokeMm, whiteToleranceMm } = facts.ticket.checks;
  const grid = gridFor(facts, box);
  const reachMm = REACH_MM + (whiteChokeMm ?? 0);
  const near = nearWhite(facts, drawn, (2 * reachMm * GRID_PER_MM) / grid.scale);
  const why = measureDrawn(facts, [...drawn, ...near]);
  if (why !== null) return [reportUnlooked(facts, why)];
  const regions = createShapeRegions(facts, grid);
  const white = drawn.flatMap((one) => touchesOf(regions, one, 'all'));
  if (white.length === 0) return [];
  const printed = printedRegion(near.flatMap((one) => touchesOf(regions, one, 'all')));
  const fit = fitWhite(printedRegion(white), printed, {
    choke: whiteChokeMm === null ? null : whiteChokeMm * GRID_PER_MM,
    tolerance: whiteToleranceMm * GRID_PER_MM,
    reach: REACH_MM * GRID_PER_MM,
  });
  return report(facts, fit, (parts) => toMisfits(regions, white, parts));
}
