// Gives findings about shapes the line of the first of them, and for a picture its corner.
import { isEmptyBox } from '../geometry/box.js';
import type { Artwork } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';

function firstShape({ place, data }: Finding): number {
  const first = place.line === undefined && Array.isArray(data.shapes) ? (data.shapes[0] as unknown) : null;
  return typeof first === 'number' ? first : -1;
}

/** The findings; those that list shapes (`data.shapes`) and no line get the place of the first, a copy that of its use. */
export function placeFindings(findings: readonly Finding[], source: Source, artwork: Artwork): readonly Finding[] {
  return findings.map((item) => {
    const shape = artwork.shapes[firstShape(item)];
    return shape === undefined ? item : { ...item, place: { ...item.place, ...placeOf(source, shape.carrier) } };
  });
}

/** The findings; those that list shapes and no point get the top left corner of the first, mm. */
export function placeShapes(findings: readonly Finding[], artwork: Artwork): readonly Finding[] {
  const { mmPerPx } = artwork.artboard;
  const round = (px: number): number => Math.round(px * mmPerPx * 1000) / 1000 + 0;
  return findings.map((item) => {
    const first =
      item.place.xMm === undefined && Array.isArray(item.data.shapes) ? (item.data.shapes[0] as unknown) : null;
    const shape = typeof first === 'number' ? artwork.shapes[first] : undefined;
    if (shape === undefined || isEmptyBox(shape.fillBox)) return item;
    return { ...item, place: { ...item.place, xMm: round(shape.fillBox.x0), yMm: round(shape.fillBox.y0) } };
  });
}
