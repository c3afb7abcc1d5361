// Resolves the text of a file for tests.
import type { Box } from '../../../src/geometry/box.js';
import type { Artwork, Shape } from '../../../src/model/artwork.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { type ResolveOptions, resolve } from '../../../src/resolve/resolve.js';
import { readSource } from '../../../src/source/read-source.js';
import type { Source } from '../../../src/source/source.js';

/** Scans a text. */
export function scanText(text: string): Source {
  return readSource(encodeUtf8(text));
}

/** Resolves a whole file. */
export function resolveText(text: string, options: ResolveOptions = {}): Artwork {
  return resolve(scanText(text), options);
}

/** Resolves what stands in a root of 200 by 100 px. */
export function resolveBody(body: string, attributes = ''): Artwork {
  return resolveText(
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:e="urn:editor" width="200px" height="100px" ${attributes}>${body}</svg>`,
    { userUnitsPerInch: 96 },
  );
}

/** The shape with an id. */
export function shapeOf(artwork: Artwork, id: string): Shape {
  const shape = artwork.shapes.find((item) => item.id === id);
  if (shape === undefined) throw new Error(`no shape ${id}`);
  return shape;
}

/** x, y, width and height of a box, to nine places. */
export function xywh(box: Box): readonly number[] {
  const round = (value: number): number => Number(value.toFixed(9)) + 0;
  return [box.x0, box.y0, box.x1 - box.x0, box.y1 - box.y0].map(round);
}

/** Codes of the findings. */
export function codesOf(artwork: Artwork): readonly string[] {
  return artwork.findings.map((item) => item.code);
}
