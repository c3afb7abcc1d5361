// Are all passes set up for the same sheet?
import { type Finding, finding } from '../model/finding.js';
import { sheetSizeMm } from './check-artboard-size.js';
import type { CheckFacts } from './check-facts.js';
import { listSetups } from './pass-setup.js';
import { roundValue, sayMm } from './say-value.js';

/** Sizes that differ by less are equal, mm: sizes in inches do not come out even. */
const EQUAL_MM = 0.05;

/** The sizes that the ticket states per pass (`passes[].widthMm`, `heightMm`), against the sheet that is written for all of them. */
export function checkPassSizes(facts: CheckFacts): readonly Finding[] {
  const [width, height] = sheetSizeMm(facts);
  return listSetups(facts).flatMap(({ pass, request }) => {
    const stated = [request?.widthMm ?? width, request?.heightMm ?? height] as const;
    const off = Math.max(Math.abs(stated[0] - width), Math.abs(stated[1] - height));
    if (off <= EQUAL_MM) return [];
    return [
      finding('check/pass-size-differs', {
        message: `Pass ${pass.order}, ${pass.name}, is set up for ${sayMm(stated[0])} x ${sayMm(stated[1])} mm, but every sheet of this job is ${sayMm(width)} x ${sayMm(height)} mm.`,
        remedy:
          'Set up all passes for the same sheet: mend the size of the pass in the ticket, or the artboard of the drawing.',
        data: {
          pass: pass.name,
          measuredWidthMm: stated[0],
          measuredHeightMm: stated[1],
          allowedWidthMm: roundValue(width),
          allowedHeightMm: roundValue(height),
        },
      }),
    ];
  });
}
