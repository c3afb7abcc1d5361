// Whether whole sheets, laid over each other, can look like the drawing.
import type { Classification } from '../classify/classify.js';
import type { Artwork } from '../model/artwork.js';
import { findDividedEffects } from '../order/find-divided-effects.js';
import { findInterleaved } from '../order/find-interleaved.js';
import { stackSheets } from '../order/sheet-items.js';
import { shapeArea } from '../resolve/shape-area.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';

/** The classification with what the sheets of its passes will not look like, as far as the order of painting goes. */
export function judgeOrder(source: Source, artwork: Artwork, classified: Classification): Classification {
  const { assignment } = classified;
  if (assignment.passes.length < 2) return classified;
  const stack = stackSheets(artwork, assignment, (shape, part) => shapeArea(source, artwork, shape, part));
  const findings = [
    ...findInterleaved(artwork, assignment, stack),
    ...findDividedEffects(artwork, assignment, stack, (row) => placeOf(source, row)),
  ];
  return { assignment, findings: [...classified.findings, ...findings] };
}
