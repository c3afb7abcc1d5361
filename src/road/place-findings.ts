// Gives findings about shapes the line of the first of them.
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
