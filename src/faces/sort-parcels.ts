// Tells blanks from what falls out and from the rest of the sheet.
import type { Parcel } from './list-parcels.js';

/** What a parcel is: a blank, a piece that falls out, or the rest of the sheet around blanks. */
export type ParcelUse = 'blank' | 'island' | 'rest';

/** A piece beside a folded blank counts as an offcut where it has less than this share of the blank's area. */
const OFFCUT_SHARE = 0.25;

/**
 * The use of each parcel.
 *
 * What lies around blanks with folds and has none is the rest of the sheet. What lies in a hole of anything else falls out, also where
 * a crease was drawn across it. What has no folds and lies beside a much larger blank that has is an offcut. All else is a blank.
 */
export function sortParcels(parcels: readonly Parcel[]): readonly ParcelUse[] {
  const isRest = new Uint8Array(parcels.length);
  for (const parcel of parcels) {
    if (parcel.hinged && parcel.around >= 0 && !parcels[parcel.around]!.hinged) isRest[parcel.around] = 1;
  }
  return parcels.map((parcel, index) => {
    if (isRest[index] === 1) return 'rest';
    if (parcel.around >= 0 && isRest[parcel.around] === 0) return 'island';
    if (parcel.hinged) return 'blank';
    const isOffcut = parcel.beside.some((other) => {
      const neighbour = parcels[other]!;
      return neighbour.hinged && parcel.grossArea < OFFCUT_SHARE * neighbour.grossArea;
    });
    return isOffcut ? 'island' : 'blank';
  });
}
