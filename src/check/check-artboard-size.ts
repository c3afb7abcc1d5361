// Does the artboard fit what the machine reaches of the material?
import type { CheckSettings } from '../model/check-settings.js';
import { type Finding, finding } from '../model/finding.js';
import type { CheckFacts } from './check-facts.js';
import { roundValue, sayMm } from './say-value.js';

/** Lengths that differ by less are equal, mm: sizes in inches do not come out even. */
const EQUAL_MM = 0.05;

/** Size of the sheets that are written, mm. */
export function sheetSizeMm({ artwork, ticket, layout }: CheckFacts): readonly [number, number] {
  if (layout !== null) return [layout.widthMm, layout.heightMm];
  const { width, height, mmPerPx } = artwork.artboard;
  return [width * mmPerPx + 2 * ticket.marginMm, height * mmPerPx + 2 * ticket.marginMm];
}

/** What the machine reaches of the material, mm; null for a side that was not said. */
function reachMm(checks: CheckSettings, isSheet: boolean): readonly [number | null, number | null] {
  const upright = checks.gripperSide === 'top' || checks.gripperSide === 'bottom';
  const edge = Math.max(checks.gripperMm ?? 0, checks.sideMarginMm);
  const whole = isSheet || checks.artboardIs === 'sheet';
  const along = (length: number | null, grips: boolean): number | null => {
    if (length === null || whole) return length;
    return length - checks.sideMarginMm - (grips ? edge : checks.sideMarginMm);
  };
  return [along(checks.materialWidthMm, !upright), along(checks.materialHeightMm, upright)];
}

function fits(size: readonly [number, number], reach: readonly [number | null, number | null]): boolean {
  return size.every((length, i) => reach[i] === null || length <= reach[i]! + EQUAL_MM);
}

/** The artboard against `materialWidthMm`, `materialHeightMm`, `gripperMm`, `gripperSide`, `sideMarginMm` and `artboardIs`. */
export function checkArtboardSize(facts: CheckFacts): readonly Finding[] {
  const { checks } = facts.ticket;
  const size = sheetSizeMm(facts);
  const isSheet = facts.layout !== null;
  const reach = reachMm(checks, isSheet);
  if (fits(size, reach)) return [];
  const turned = fits([size[1], size[0]], reach);
  const spell = (length: number | null): string => (length === null ? 'any' : sayMm(length));
  const allowed = `${spell(reach[0])} x ${spell(reach[1])} mm`;
  const margins =
    isSheet || checks.artboardIs === 'sheet'
      ? 'is the sheet'
      : `are left of the sheet inside the gripper (${sayMm(checks.gripperMm ?? 0)} mm, ${checks.gripperSide}) and the side margins (${sayMm(checks.sideMarginMm)} mm)`;
  return [
    finding('check/artboard-too-large', {
      message: `The ${isSheet ? 'sheet of copies' : 'artboard'} is ${sayMm(size[0])} x ${sayMm(size[1])} mm; ${allowed} ${margins}.`,
      remedy: isSheet
        ? 'Ask for a smaller sheet under "sheet" in the ticket, or take larger material.'
        : turned
          ? 'Turn the drawing by a quarter turn: then it fits. Look at the grain before you do.'
          : 'Take larger material or a smaller artboard; if the artboard stands for the whole sheet, say "artboardIs": "sheet" under checks in the ticket.',
      place: { xMm: 0, yMm: 0 },
      data: {
        measuredWidthMm: roundValue(size[0]),
        measuredHeightMm: roundValue(size[1]),
        allowedWidthMm: reach[0],
        allowedHeightMm: reach[1],
        fitsTurned: turned,
      },
    }),
  ];
}
