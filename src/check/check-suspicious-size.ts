// Does the size look as if units were mixed up?
import { isEmptyBox } from '../geometry/box.js';
import { MM_PER_INCH, MM_PER_PX, PT_PER_INCH, PX_PER_INCH } from '../geometry/units.js';
import { measureExtent } from '../model/drawn-extent.js';
import { type Finding, type FindingText, finding } from '../model/finding.js';
import { isAbove, isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { roundValue, sayMm } from './say-value.js';

/** Sizes whose ratio is off by less count as equal: sizes are often rounded to a tenth of a millimetre. */
const EQUAL_RATIO = 0.005;
/** A mixed-up unit gives an exact factor, but for rounding of what was written. */
const EXACT_RATIO = 0.0005;

const PT_FOR_PX = PT_PER_INCH / PX_PER_INCH;

/** What a size is too large by when units were mixed up, and how that comes about. */
const MIX_UPS: readonly { readonly factor: number; readonly words: string }[] = [
  { factor: PT_FOR_PX, words: 'a drawing made at 96 units to the inch was taken for 72, or the other way round' },
  { factor: 10, words: 'centimetres were taken for millimetres' },
  { factor: MM_PER_INCH, words: 'inches were taken for millimetres' },
  { factor: MM_PER_PX, words: 'millimetres were taken for units of 96 to the inch' },
  { factor: MM_PER_INCH / PT_PER_INCH, words: 'millimetres were taken for points' },
];

function isNear(ratio: number, to: number, within: number): boolean {
  return Math.abs(ratio / to - 1) <= within;
}

/** The mix-up that gives a ratio of sizes, either way round; null where none does. */
function findMixUp(ratio: number, within: number): string | null {
  const found = MIX_UPS.find(({ factor }) => isNear(ratio, factor, within) || isNear(ratio, 1 / factor, within));
  return found === undefined ? null : found.words;
}

/** Against the size that the ticket asks for. */
function judgeAsked({ artwork, ticket }: CheckFacts): FindingText | null {
  const { width, height, mmPerPx } = artwork.artboard;
  const { artboardWidthMm, artboardHeightMm } = ticket.checks;
  const sides = [
    { name: 'wide', measured: width * mmPerPx, asked: artboardWidthMm },
    { name: 'high', measured: height * mmPerPx, asked: artboardHeightMm },
  ];
  const wrong = sides.find(({ measured, asked }) => asked !== null && !isNear(measured / asked, 1, EQUAL_RATIO));
  if (wrong === undefined) return null;
  const ratio = wrong.measured / wrong.asked!;
  const cause = findMixUp(ratio, EQUAL_RATIO);
  const times = Math.round(ratio * 1000) / 1000;
  return {
    message: `The artboard is ${sayMm(wrong.measured)} mm ${wrong.name}; the ticket says ${sayMm(wrong.asked!)} mm. That is ${times} times as much${cause === null ? '' : `, as when ${cause}`}.`,
    remedy:
      cause === null
        ? 'Mend the size in the drawing, or the size under checks in the ticket.'
        : 'Export the drawing again with its size in mm, or mend the width and height of its root.',
    data: { measuredMm: roundValue(wrong.measured), allowedMm: wrong.asked!, ratio: roundValue(ratio) },
  };
}

/** A scale of the drawing that no unit has, but a mixed-up one does. */
function judgeScale({ artwork }: CheckFacts): FindingText | null {
  const { artboard } = artwork;
  if (!artboard.sizeIsSure || artboard.viewBox === null) return null;
  const mmPerUnit = artboard.matrix[0] * artboard.mmPerPx;
  const bases = [
    { name: 'millimetres', mm: 1 },
    { name: 'px', mm: MM_PER_PX },
  ];
  const mixed = bases.find(
    ({ mm }) =>
      isNear(mmPerUnit, mm * PT_FOR_PX, EXACT_RATIO) || (mm === 1 && isNear(mmPerUnit, 1 / PT_FOR_PX, EXACT_RATIO)),
  );
  if (mixed === undefined) return null;
  const times = Math.round((mmPerUnit / mixed.mm) * 1000) / 1000;
  return {
    message: `One unit of the drawing is ${Math.round(mmPerUnit * 1e4) / 1e4} mm: ${times} times what a drawing in ${mixed.name} has, as when ${MIX_UPS[0]!.words}.`,
    remedy: `Measure one length that you know. If it is wrong, export the drawing again with its size in mm; if it is right, say the size under checks in the ticket.`,
    data: {
      measuredMm: roundValue(mmPerUnit),
      allowedMm: roundValue(mixed.mm),
      ratio: roundValue(mmPerUnit / mixed.mm),
    },
  };
}

/** Width and height that scale the drawing differently. */
function judgeProportions({ artwork }: CheckFacts): FindingText | null {
  const { viewBox, width, height, mmPerPx } = artwork.artboard;
  if (viewBox === null) return null;
  const ratio = width / viewBox[2] / (height / viewBox[3]);
  if (isNear(ratio, 1, EQUAL_RATIO)) return null;
  return {
    message: `The size is ${sayMm(width * mmPerPx)} x ${sayMm(height * mmPerPx)} mm, but the viewBox is ${sayMm(viewBox[2])} x ${sayMm(viewBox[3])}: other proportions.`,
    remedy:
      'One of the two was changed alone: make width and height fit the viewBox, or measure a length that you know.',
    data: { ratio: roundValue(ratio) },
  };
}

/** All that is drawn is too small or too large for a sheet of board. */
function judgeExtent({ artwork, assignment, ticket }: CheckFacts): FindingText | null {
  const { smallestMm, largestMm } = ticket.checks;
  const box = measureExtent(artwork.shapes, assignment.placements);
  if (isEmptyBox(box)) return null;
  const longest = roundValue(Math.max(box.x1 - box.x0, box.y1 - box.y0) * artwork.artboard.mmPerPx);
  const small = isBelow(longest, smallestMm);
  if (!small && !isAbove(longest, largestMm)) return null;
  return {
    message: `All that is drawn is ${sayMm(longest)} mm ${small ? 'at most' : 'long'}; ${small ? `at least ${sayMm(smallestMm)}` : `at most ${sayMm(largestMm)}`} mm are expected.`,
    remedy: `Look whether units were mixed up: at ${small ? 'ten times' : 'a tenth of'} the size it would be ${sayMm(longest * (small ? 10 : 0.1))} mm. If it is right, say ${small ? 'a smaller "smallestMm"' : 'a larger "largestMm"'} under checks in the ticket.`,
    data: { measuredMm: longest, allowedMm: small ? smallestMm : largestMm },
  };
}

/** The size against `artboardWidthMm` and `artboardHeightMm`, or where they are not said against what no unit gives. */
export function checkSuspiciousSize(facts: CheckFacts): readonly Finding[] {
  const { artboardWidthMm, artboardHeightMm } = facts.ticket.checks;
  const asked = artboardWidthMm !== null || artboardHeightMm !== null;
  const texts = asked ? [judgeAsked(facts)] : [judgeScale(facts), judgeProportions(facts), judgeExtent(facts)];
  return texts
    .filter((text) => text !== null)
    .map((text) => finding('check/size-suspicious', { ...text, place: { xMm: 0, yMm: 0 } }));
}
