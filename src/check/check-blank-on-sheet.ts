// Is every tool line on the sheet?
import { type Box, containsBox, grow, isEmptyBox } from '../geometry/box.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { roundValue, sayMm } from './say-value.js';
import { listBeyond, sheetPx } from './sheet-copies.js';

/** Rounding of what was written is no overhang, mm. */
const EQUAL_MM = 0.01;

interface Overhang extends Trouble {
  readonly shape: Shape;
  readonly weight: number;
}

/** How far a box reaches over another, and where it does so furthest. */
function measureOverhang(box: Box, sheet: Box): { readonly over: number; readonly at: readonly [number, number] } {
  const x = sheet.x0 - box.x0 > box.x1 - sheet.x1 ? box.x0 : box.x1;
  const y = sheet.y0 - box.y0 > box.y1 - sheet.y1 ? box.y0 : box.y1;
  const overX = Math.max(sheet.x0 - box.x0, box.x1 - sheet.x1);
  const overY = Math.max(sheet.y0 - box.y0, box.y1 - sheet.y1);
  const at = overX > overY ? ([x, (box.y0 + box.y1) / 2] as const) : ([(box.x0 + box.x1) / 2, y] as const);
  return { over: Math.max(overX, overY), at };
}

/** Lines of tool passes that reach over the edge of the artboard, its margin counted in. */
export function checkBlankOnSheet(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket, layout } = facts;
  const { width, height, mmPerPx } = artwork.artboard;
  const tools = new Set(assignment.passes.flatMap((pass, index) => (isToolpath(pass.role) ? [index] : [])));
  const indices = assignment.placements.filter(({ pass }) => tools.has(pass)).map(({ shape }) => shape);
  const margin = (ticket.marginMm + EQUAL_MM) / mmPerPx;
  const sheet =
    layout === null
      ? { x0: -margin, y0: -margin, x1: width + margin, y1: height + margin }
      : grow(sheetPx(facts, { x0: 0, y0: 0, x1: layout.widthMm, y1: layout.heightMm }), EQUAL_MM / mmPerPx);
  const boxOf = (shape: Shape): Box => shape.fillBox;
  const placed =
    layout === null
      ? indices.map((index) => ({ shape: artwork.shapes[index]!, box: artwork.shapes[index]!.fillBox }))
      : listBeyond(facts, layout, indices, { boxOf, limit: sheet });
  const troubles: Overhang[] = [];
  for (const { shape, box } of placed) {
    if (isEmptyBox(box) || containsBox(sheet, box)) continue;
    const { over, at } = measureOverhang(box, sheet);
    troubles.push({ shape, at, weight: over * mmPerPx + EQUAL_MM });
  }
  return gatherTroubles(artwork, 'check/blank-off-sheet', troubles, (list) => ({
    message: `${list.length === 1 ? 'A line of a tool pass reaches' : `${list.length} lines of tool passes reach`} over the edge of the sheet, by ${sayMm(list[0]!.weight)} mm at most.`,
    remedy: 'Move the blank onto the artboard, or enlarge the artboard on that side.',
    data: { measuredMm: roundValue(list[0]!.weight), allowedMm: 0 },
  }));
}
