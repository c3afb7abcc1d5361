// The second judge where it does not look, and why.
import { finding } from '../model/finding.js';
import type { Judgement } from '../model/proof.js';

/** What the second judge says where it is not asked; `of` says what it would have looked at besides the passes. */
export function leaveUnasked(why: string, of?: 'sheets'): Judgement {
  const what = of === undefined ? '' : ' at the sheets';
  return {
    judge: 'witness',
    ...(of === undefined ? {} : { of }),
    looked: false,
    why,
    shapesJudged: 0,
    greatestDeviationMm: 0,
    greatestDeviationAt: '',
    findings: [finding('witness/not-asked', { message: `The second judge did not look${what}: ${why}.` })],
  };
}
