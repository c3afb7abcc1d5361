// Whether what a sheet's elements refer to, and all style sheets, came along: without them paint and place are others.
import type { Artwork } from '../model/artwork.js';
import { type Finding, finding } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';

/** What the elements of a source need besides themselves. */
export interface Needs {
  /** Rows of style elements that no sheet may do without. */
  readonly styleRows: readonly number[];
  /** Ids that elements refer to, by row. */
  readonly references: Artwork['references'];
  /** Rows by id. */
  readonly ids: Artwork['ids'];
  /** 1 for rows that no sheet may hold. */
  readonly removed: Uint8Array;
}

/** Works out what the sheets of a job need. */
export function listNeeds(source: Source, artwork: Artwork, removed: Uint8Array): Needs {
  const { elements } = source;
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const styleRows: number[] = [];
  for (let row = 0; row < elements.count; row += 1) {
    if (isStyle[elements.name[row]!] && removed[row] === 0) styleRows.push(row);
  }
  return { styleRows, references: artwork.references, ids: artwork.ids, removed };
}

function sayLeftBehind(source: Source, file: string, row: number, why: string): Finding {
  const place = placeOf(source, row);
  const name = place.id === undefined || place.id === '' ? place.element : `${place.element} "${place.id}"`;
  return finding('verify/lost', {
    message: `${file}: the ${name} of line ${place.line} in the source is missing, ${why}.`,
    remedy: 'Do not run this file. Split the source again; if it happens again, it is a fault of pinbar.',
    place: { ...place, file },
  });
}

/**
 * Style elements, and targets of references, that a sheet should hold and does not.
 *
 * @param present - 1 for rows of the source that stand on the sheet.
 * @returns At most some hundred findings, one per element that is missing.
 */
export function findLeftBehind(
  source: Source,
  needs: Needs,
  sheet: { readonly file: string; readonly present: Uint8Array },
): readonly Finding[] {
  const { file, present } = sheet;
  const missing = new Map<number, string>();
  for (const row of needs.styleRows) {
    if (present[row] === 0) missing.set(row, 'though its rules may be what paints the rest');
  }
  for (const [row, ids] of needs.references) {
    if (present[row] === 0 || missing.size >= 100) continue;
    for (const id of ids) {
      const target = needs.ids.get(id);
      if (target !== undefined && present[target] === 0 && needs.removed[target] === 0)
        missing.set(target, 'though something in the file refers to it');
    }
  }
  return [...missing].map(([row, why]) => sayLeftBehind(source, file, row, why));
}
