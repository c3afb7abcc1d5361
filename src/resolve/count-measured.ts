// Bounds how often shapes are measured again for clip paths and reference boxes.
import { PinbarError } from '../model/trouble.js';
import { placeOf } from '../source/locate.js';
import type { Drawing } from './drawing.js';

function allowedOf(drawing: Drawing): number {
  return 4 * drawing.limits.references + 4 * drawing.source.elements.count;
}

/** Whether there is room for measuring what could also be estimated. */
export function canMeasureMore(drawing: Drawing): boolean {
  return drawing.notes.measured < allowedOf(drawing) / 2;
}

/**
 * Counts a shape that is measured besides being drawn.
 *
 * @throws PinbarError `limit/references` when clip paths and reference boxes together measure more shapes than may be drawn.
 */
export function countMeasured(drawing: Drawing, row: number): void {
  const allowed = allowedOf(drawing);
  drawing.notes.measured += 1;
  if (drawing.notes.measured <= allowed) return;
  const place = placeOf(drawing.source, row);
  throw new PinbarError('limit/references', {
    message: `Clip paths and transforms of the file ask for the extent of more than ${allowed} shapes (up to line ${place.line}).`,
    remedy: 'Clip groups instead of single shapes, or raise the limit "references" if the file is trusted.',
    place,
    data: { allowed },
  });
}
