// What checks ask of the source, each thing read once.
import type { CheckFacts } from '../check/check-facts.js';
import { readPictureSize } from '../check/read-picture-size.js';
import type { Artwork } from '../model/artwork.js';
import type { PictureSize } from '../model/drawn-facts.js';
import { decodeUtf8 } from '../model/platform.js';
import type { Picture } from '../model/sheet.js';
import { createServerReader } from '../resolve/paint-server.js';
import { createClipReader } from '../resolve/shape-clips.js';
import { createEffectReader } from '../resolve/shape-effects.js';
import { placedPicture } from '../resolve/shape-picture.js';
import { shapeType } from '../resolve/shape-type.js';
import { readDataUrl } from '../source/data-url.js';
import type { Source } from '../source/source.js';

/** The functions of `CheckFacts`. */
export type DrawnReaders = Pick<CheckFacts, 'clipsOf' | 'effectsOf' | 'pictureOf' | 'textOf' | 'serverOf'>;

/** Most bytes of a picture that are unpacked to find its size at first: enough for a header behind a colour profile. */
const FIRST_BYTES = 64 * 1024;

/** Size of the picture at an address: in the file itself, or beside it where the caller has read it. */
function readSize(address: Uint8Array, pictures: ReadonlyMap<string, Picture>): PictureSize {
  for (const most of [FIRST_BYTES, address.length]) {
    const data = readDataUrl(address, most);
    if (data === null) break;
    if (data.mediaType === 'image/svg+xml') return { kind: 'drawing' };
    const size = readPictureSize(data.bytes);
    if (size.kind !== 'unreadable' || most >= address.length) return size;
  }
  const name = decodeUtf8(address);
  const picture = pictures.get(name) ?? pictures.get(name.trim());
  return picture === undefined ? { kind: 'linked', address: name } : readPictureSize(picture.bytes);
}

/** Readers of what is drawn, over one source. */
export function createDrawnReaders(
  source: Source,
  artwork: Artwork,
  pictures: ReadonlyMap<string, Picture>,
): DrawnReaders {
  return {
    clipsOf: createClipReader(artwork),
    effectsOf: createEffectReader(artwork),
    pictureOf: (shape) => {
      const { address, ...placed } = placedPicture(source, artwork, shape);
      return { ...placed, size: readSize(address, pictures) };
    },
    textOf: (shape) => shapeType(source, artwork, shape),
    serverOf: createServerReader(artwork),
  };
}
