// Units in which people give lengths.
import { MM_PER_INCH } from '../geometry/units.js';

/** Millimetres per unit that a length may be given in. */
export const MM_PER_UNIT: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: MM_PER_INCH };
