// Whether whole sheets, laid over each other, can look like the drawing.
import type { Classification } from '../classify/classify.js';
import type { Artwork } from '../model/artwork.js';
import type { Place } from '../model/finding.js';
import { findDividedBoxes } from '../order/find-divided-boxes.js';
import { findDividedEffects } from '../order/find-divided-effects.js';
import { findInterleaved } from '../order/find-interleaved.js';
import { stackSheets } from '../order/sheet-items.js';
import { listBoxedEffects } from '../resolve/boxed-effects.js';
import { shapeArea } from '../resolve/shape-area.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';

/** The classification with what the sheets of its passes will not look like, as far as the order of painting goes. */
export function judgeOrder(source: Source, artwork: Artwork, classified: Classification): Classification {
  const { assignment } = classified;
  const place = (row: number): Place => placeOf(source, row);
  const boxes = findDividedBoxes({ artwork, assignment, effects: listBoxedEffects(artwork), placeOf: place });
  if (assignment.passes.length < 2) return { assignment, findings: [...classified.findings, ...boxes] };
  const stack = stackSheets(artwork, assignment, (shape, part) => shapeArea(source, artwork, shape, part));
  const findings = [
    ...findInterleaved(artwork, assignment, stack),
    ...findDividedEffects(artwork, assignment, stack, place),
    ...boxes,
  ];
  return { assignment, findings: [...classified.findings, ...findings] };
}
