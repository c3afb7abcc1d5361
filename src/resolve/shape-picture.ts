// Where a picture is placed and what it shows.
import type { Artwork, Shape } from '../model/artwork.js';
import type { PictureFacts } from '../model/drawn-facts.js';
import { encodeUtf8 } from '../model/platform.js';
import { invariant } from '../model/trouble.js';
import { attributeIsPlain, readAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { SLOT } from './attribute-slots.js';
import { isResolved } from './resolve.js';
import { isResolvedShape } from './resolved-shape.js';
import { readRectangle } from './shape-geometry.js';

/** A picture as it is placed, with the address it is found at, UTF-8. */
export interface PlacedPicture extends Omit<PictureFacts, 'size'> {
  readonly address: Uint8Array;
}

function readFit(text: string): PictureFacts['fit'] {
  if (/^\s*(?:defer\s+)?none\b/.test(text)) return 'none';
  return /\bslice\s*$/.test(text) ? 'slice' : 'meet';
}

/**
 * The picture of an image.
 *
 * @param artwork - Made from `source` by `resolve`, and the shape is one of its own.
 * @unit user units of the shape; a side that is not said is 0
 * @source SVG 2, sections 8.7 and 12.3
 */
export function placedPicture(source: Source, artwork: Artwork, shape: Shape): PlacedPicture {
  invariant(isResolved(artwork) && isResolvedShape(shape), 'a picture is asked for that was not resolved here');
  const { slots } = artwork.geometry;
  const { x, y, width, height } = readRectangle(artwork.geometry, shape.element, shape.setting);
  const fit = slots.find(shape.element, SLOT.preserveAspectRatio);
  let link = slots.find(shape.element, SLOT.href);
  if (link < 0) link = slots.find(shape.element, SLOT.xlink);
  return {
    x,
    y,
    width: width ?? 0,
    height: height ?? 0,
    fit: fit < 0 ? 'meet' : readFit(readAttribute(source, fit)),
    address: link < 0 ? new Uint8Array(0) : readAddress(source, link),
  };
}

/** The bytes of an address; those of the file itself where they say what the value says. */
function readAddress(source: Source, attribute: number): Uint8Array {
  if (!attributeIsPlain(source, attribute)) return encodeUtf8(readAttribute(source, attribute));
  const { valueStart, valueEnd } = source.elements.attributes;
  return source.text.subarray(valueStart[attribute]!, valueEnd[attribute]!);
}
