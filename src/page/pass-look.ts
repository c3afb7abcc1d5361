// How passes are told apart: by number, by the pattern of their lines and areas, and by colours that all eyes tell apart.

/** What the look of a pass is made of. */
export interface PassLook {
  /** On light and on dark ground. */
  readonly light: string;
  readonly dark: string;
  /** Lengths of dashes and gaps, px. */
  readonly dash: readonly number[];
  /** Direction of the hatching of areas, degrees, and the distance of its lines, px. */
  readonly hatchDegrees: number;
  readonly hatchPx: number;
}

/**
 * In the order of the runs; from the ninth pass on they begin again, and the number tells.
 *
 * @source After the eight colours of Okabe and Ito, "Color Universal Design" (2008), from memory; darkened for white, lightened for dark ground
 */
const LOOKS: readonly PassLook[] = [
  { light: '#0060a8', dark: '#6bb8f0', dash: [9, 5], hatchDegrees: 45, hatchPx: 9 },
  { light: '#a34700', dark: '#f0a05a', dash: [14, 4, 2, 4], hatchDegrees: -45, hatchPx: 7 },
  { light: '#007a5a', dark: '#3fcf9f', dash: [], hatchDegrees: 0, hatchPx: 7 },
  { light: '#9c3f76', dark: '#e79cc4', dash: [2, 4], hatchDegrees: 90, hatchPx: 7 },
  { light: '#7a6400', dark: '#e6d04a', dash: [14, 4, 2, 4, 2, 4], hatchDegrees: 20, hatchPx: 11 },
  { light: '#23708f', dark: '#8ad3ee', dash: [5, 3], hatchDegrees: -20, hatchPx: 11 },
  { light: '#4d4d4d', dark: '#c8c8c8', dash: [18, 6], hatchDegrees: 70, hatchPx: 9 },
  { light: '#5b4bb3', dark: '#b3a8f5', dash: [3, 8], hatchDegrees: -70, hatchPx: 9 },
];

/** The look of the pass at an index. */
export function lookOf(pass: number): PassLook {
  return LOOKS[pass % LOOKS.length]!;
}

/** The look of what nobody claimed, and of what is left out. */
export const OPEN_LOOK: PassLook = { light: '#b3261e', dark: '#ff8a80', dash: [1, 5], hatchDegrees: 45, hatchPx: 4 };

/** The look of what is left out. */
export const LEFT_OUT_LOOK: PassLook = {
  light: '#8a8a86',
  dark: '#77776f',
  dash: [1, 3],
  hatchDegrees: 0,
  hatchPx: 14,
};
