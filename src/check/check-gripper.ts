// Does anything lie where the machine holds the sheet?
import { type Box, containsBox, grow, isEmptyBox } from '../geometry/box.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { listMarks } from './list-marks.js';
import { roundValue, sayMm } from './say-value.js';
import { listBeyond, type PlacedShape, sheetPx } from './sheet-copies.js';

/** Rounding of what was written is no trespass, mm. */
const EQUAL_MM = 0.01;

/** What is left of the sheet inside gripper and side margins, px on the artboard; null where the artboard lies within it. */
function reachBox(facts: CheckFacts): Box | null {
  const { artwork, ticket, layout } = facts;
  if (layout !== null) return grow(sheetPx(facts, layout.freeMm), EQUAL_MM / artwork.artboard.mmPerPx);
  const { checks, marginMm } = ticket;
  const placed = checks.materialWidthMm !== null || checks.materialHeightMm !== null;
  if (placed && checks.artboardIs === 'reach') return null;
  if ((checks.gripperMm ?? 0) === 0 && checks.sideMarginMm === 0) return null;
  const { width, height, mmPerPx } = artwork.artboard;
  const inset = (side: string): number => {
    const strip = Math.max(checks.sideMarginMm, checks.gripperSide === side ? (checks.gripperMm ?? 0) : 0);
    return (strip - marginMm - EQUAL_MM) / mmPerPx;
  };
  return { x0: inset('left'), y0: inset('top'), x1: width - inset('right'), y1: height - inset('bottom') };
}

interface Trespass extends Trouble {
  readonly weight: number;
}

/** How far a box reaches into the strips around another, and where. */
function measureTrespass(box: Box, reach: Box): Pick<Trespass, 'at' | 'weight'> {
  const middle = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const;
  const sides = [
    { weight: reach.x0 - box.x0, at: [box.x0, middle[1]] as const },
    { weight: box.x1 - reach.x1, at: [box.x1, middle[1]] as const },
    { weight: reach.y0 - box.y0, at: [middle[0], box.y0] as const },
    { weight: box.y1 - reach.y1, at: [middle[0], box.y1] as const },
  ];
  return sides.reduce((worst, side) => (side.weight > worst.weight ? side : worst));
}

/** Drawn shapes that reach beyond a box: of the art, or of each of its copies. */
function listArt(facts: CheckFacts, reach: Box): readonly PlacedShape[] {
  const { artwork, assignment, layout } = facts;
  const indices = assignment.placements.map(({ shape }) => shape);
  const boxOf = (shape: Shape): Box => shape.drawnBox;
  if (layout !== null) return listBeyond(facts, layout, indices, { boxOf, limit: reach });
  return [...new Set(indices)]
    .map((index) => artwork.shapes[index]!)
    .filter((shape) => !containsBox(reach, shape.drawnBound))
    .map((shape) => ({ shape, box: shape.drawnBox }));
}

function sayStrips({ ticket: { checks, sheet } }: CheckFacts): string {
  const gripper = sheet ?? checks;
  const margin = sheet?.marginsMm ?? checks.sideMarginMm;
  return `the gripper (${sayMm(gripper.gripperMm ?? 0)} mm, ${gripper.gripperSide}) or the side margins (${sayMm(margin)} mm)`;
}

/** Marks and art inside `gripperMm` and `sideMarginMm`, where the artboard is the whole sheet. */
export function checkGripper(facts: CheckFacts): readonly Finding[] {
  const { artwork } = facts;
  const reach = reachBox(facts);
  if (reach === null) return [];
  const { mmPerPx } = artwork.artboard;
  const find = (box: Box): Pick<Trespass, 'at' | 'weight'> | null => {
    if (isEmptyBox(box) || containsBox(reach, box)) return null;
    const { at, weight } = measureTrespass(box, reach);
    return { at, weight: weight * mmPerPx + EQUAL_MM };
  };
  const marks = listMarks(facts).flatMap(({ shape, box }): readonly Trespass[] => {
    const found = find(box);
    return found === null ? [] : [{ shape, ...found }];
  });
  const own = new Set(marks.map(({ shape }) => shape));
  const art = listArt(facts, reach).flatMap(({ shape, box }): readonly Trespass[] => {
    const found = own.has(shape) ? null : find(box);
    return found === null ? [] : [{ shape, ...found }];
  });
  const strips = sayStrips(facts);
  const data = (list: readonly Trespass[]) => ({ measuredMm: roundValue(list[0]!.weight), allowedMm: 0 });
  return [
    ...gatherTroubles(artwork, 'check/marks-in-gripper', marks, (list) => ({
      message: `${list.length === 1 ? 'A mark reaches' : `${list.length} marks reach`} into ${strips}, by ${sayMm(list[0]!.weight)} mm at most; no pass prints there.`,
      remedy: 'Move what is drawn away from that edge, or enlarge the sheet, so that the marks come free of it.',
      data: data(list),
    })),
    ...gatherTroubles(artwork, 'check/art-in-gripper', art, (list) => ({
      message: `${list.length === 1 ? 'A shape reaches' : `${list.length} shapes reach`} into ${strips}, by ${sayMm(list[0]!.weight)} mm at most; no pass gets there.`,
      remedy: 'Move it away from that edge, or take a larger sheet.',
      data: data(list),
    })),
  ];
}
