// The one file that knows 25.4, 72 and 96.

/**
 * CSS px to the inch.
 *
 * @source CSS Values and Units 3, section 5.2; SVG 2, section 8.9
 */
export const PX_PER_INCH = 96;

/** Millimetres to the inch, exact since 1959. */
export const MM_PER_INCH = 25.4;

/** Points to the inch. */
export const PT_PER_INCH = 72;

/** Millimetres per CSS px. */
export const MM_PER_PX: number = MM_PER_INCH / PX_PER_INCH;

/** CSS px per millimetre. */
export const PX_PER_MM: number = PX_PER_INCH / MM_PER_INCH;

/** A unit of length that does not depend on its surroundings. */
export type AbsoluteUnit = 'px' | 'mm' | 'cm' | 'in' | 'pt' | 'pc' | 'Q';

/**
 * CSS px per unit.
 *
 * @source CSS Values and Units 3, section 5.2
 */
export const PX_PER_UNIT: Readonly<Record<AbsoluteUnit, number>> = {
  px: 1,
  mm: PX_PER_INCH / MM_PER_INCH,
  cm: PX_PER_INCH / (MM_PER_INCH / 10),
  in: PX_PER_INCH,
  pt: PX_PER_INCH / PT_PER_INCH,
  pc: (PX_PER_INCH * 12) / PT_PER_INCH,
  Q: PX_PER_INCH / (MM_PER_INCH * 4),
};
