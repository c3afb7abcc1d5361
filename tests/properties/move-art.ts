// Drawings of art, marks and lines that show the same: by a matrix around all of it, in other units.
import fc from 'fast-check';

/** How art is drawn. */
export interface Placing {
  readonly degrees: number;
  readonly mirrored: boolean;
  readonly unit: 'mm' | 'cm' | 'in' | 'pt' | 'px';
}

const PER_INCH = { mm: 25.4, cm: 2.54, in: 1, pt: 72, px: 96 } as const;

export const STRAIGHT: Placing = { degrees: 0, mirrored: false, unit: 'mm' };

const mirrored: fc.Arbitrary<boolean> = fc.boolean();
const unit: fc.Arbitrary<Placing['unit']> = fc.constantFrom('mm', 'cm', 'in', 'pt', 'px');

/** Turned by any angle. */
export const anyPlacing: fc.Arbitrary<Placing> = fc.record({
  degrees: fc.integer({ min: 0, max: 360e6 }).map((part) => part / 1e6),
  mirrored,
  unit,
});

/** Turned by quarters. */
export const quarterPlacing: fc.Arbitrary<Placing> = fc.record({
  degrees: fc.constantFrom(0, 90, 180, 270),
  mirrored,
  unit,
});

/** Layers drawn in mm around (0, 0), each with its name, on an artboard of a size in mm with (0, 0) in its middle. */
export function drawArt(
  layers: readonly (readonly [name: string, markup: string])[],
  [width, height]: readonly [number, number],
  how: Placing,
): string {
  const perMm = PER_INCH[how.unit] / 25.4;
  const matrix = `scale(${perMm}) translate(${width / 2} ${height / 2}) rotate(${how.degrees}) scale(${how.mirrored ? -1 : 1} 1)`;
  const size = `width="${width * perMm}${how.unit}" height="${height * perMm}${how.unit}"`;
  const groups = layers.map(([name, markup]) => `<g id="${name}" transform="${matrix}">${markup}</g>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${width * perMm} ${height * perMm}">${groups.join('')}</svg>`;
}

/** The artboard's size after a quarter turn. */
export function turnSize([width, height]: readonly [number, number], { degrees }: Placing): readonly [number, number] {
  return degrees % 180 === 0 ? [width, height] : [height, width];
}

const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type Side = (typeof SIDES)[number];

/** Where a side of the artboard comes to lie. */
export function turnSide(side: Side, { degrees, mirrored: isMirrored }: Placing): Side {
  const mirrors: Readonly<Record<Side, Side>> = { top: 'top', right: 'left', bottom: 'bottom', left: 'right' };
  const before = isMirrored ? mirrors[side] : side;
  return SIDES[(SIDES.indexOf(before) + degrees / 90) % 4]!;
}
