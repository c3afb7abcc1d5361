// Whether a measured value goes beyond a bound, and not by rounding alone.

/** Values that miss their bound by less keep it: half the last digit of what drawing programs write, mm. */
const KEPT = 0.001;
/** The same for small bounds, as a share of them. */
const KEPT_SHARE = 0.001;

/** By how much a value may miss its bound. */
export function boundSlack(bound: number): number {
  return Math.min(KEPT, KEPT_SHARE * Math.abs(bound));
}

/** Whether a value is less than allowed. Turned by any angle a drawing keeps a bound that it kept upright. */
export function isBelow(value: number, least: number): boolean {
  return value < least - boundSlack(least);
}

/** Whether a value is more than allowed. */
export function isAbove(value: number, most: number): boolean {
  return value > most + boundSlack(most);
}
