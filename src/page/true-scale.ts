// How many px of the screen make a millimetre at true size.
import { PX_PER_MM } from '../geometry/units.js';

/** A CSS px is meant to be a 96th of an inch; screens keep to it more or less. */
export const TRUE_SCALE: number = PX_PER_MM;
