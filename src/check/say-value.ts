// Numbers as findings say and hold them.

/** A length or an area in words, to a hundredth. */
export function sayMm(mm: number): string {
  return String(Math.round(mm * 100) / 100 + 0);
}

/** A value for the data of a finding, without the dust of arithmetic: to a millionth. */
export function roundValue(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}
