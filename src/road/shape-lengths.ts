// Lengths of lines on the artboard.
import type { Artwork, Shape } from '../model/artwork.js';
import { shapeLength } from '../resolve/resolve.js';
import type { Source } from '../source/source.js';

/** Length of some shapes' lines. @unit mm */
export function shapeLengthMm(source: Source, artwork: Artwork, shapes: readonly Shape[]): number {
  return shapes.reduce((sum, shape) => sum + shapeLength(source, artwork, shape), 0) * artwork.artboard.mmPerPx;
}
