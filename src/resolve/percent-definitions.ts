// Percentages in definitions that are drawn in user space: they, too, depend on the artboard.
import { readAttribute } from '../source/read-attribute.js';
import { SVG_NAMESPACE } from '../source/source.js';
import { SLOT, type Slot } from './attribute-slots.js';
import type { Drawing } from './drawing.js';

/** Where the units of a definition stand, and its lengths. */
interface Definition {
  readonly units: Slot;
  readonly lengths: readonly Slot[];
  /** Lengths that are a percentage above zero where they are not written. */
  readonly defaults: ReadonlySet<Slot>;
}

const RECTANGLE: readonly Slot[] = [SLOT.x, SLOT.y, SLOT.width, SLOT.height];
const LINEAR: readonly Slot[] = [SLOT.x1, SLOT.y1, SLOT.x2, SLOT.y2];
const RADIAL: readonly Slot[] = [SLOT.cx, SLOT.cy, SLOT.r, SLOT.fx, SLOT.fy, SLOT.fr];

const DEFINITIONS: ReadonlyMap<string, Definition> = new Map([
  ['linearGradient', define(SLOT.gradientUnits, LINEAR, [SLOT.x2])],
  ['radialGradient', define(SLOT.gradientUnits, RADIAL, [SLOT.cx, SLOT.cy, SLOT.r])],
  ['pattern', define(SLOT.patternUnits, RECTANGLE, [])],
  ['mask', define(SLOT.maskUnits, RECTANGLE, RECTANGLE)],
  ['filter', define(SLOT.filterUnits, RECTANGLE, RECTANGLE)],
]);

function define(units: Slot, lengths: readonly Slot[], defaults: readonly Slot[]): Definition {
  return { units, lengths, defaults: new Set(defaults) };
}

function usesPercent(drawing: Drawing, row: number, definition: Definition): boolean {
  const { source, slots } = drawing;
  const units = slots.find(row, definition.units);
  if (units < 0 || readAttribute(source, units).trim() !== 'userSpaceOnUse') return false;
  // What a gradient or pattern does not say it may take from the one it refers to, which is looked at by itself.
  const inherits = slots.find(row, SLOT.href) >= 0 || slots.find(row, SLOT.xlink) >= 0;
  return definition.lengths.some((slot) => {
    const attribute = slots.find(row, slot);
    if (attribute < 0) return !inherits && definition.defaults.has(slot);
    return readAttribute(source, attribute).includes('%');
  });
}

/** Whether any gradient, pattern, mask or filter in user space holds a percentage. */
export function definitionsUsePercent(drawing: Drawing): boolean {
  const { count, name, names } = drawing.source.elements;
  const definitions = names.map(({ namespace, local }) =>
    namespace === SVG_NAMESPACE ? (DEFINITIONS.get(local) ?? null) : null,
  );
  if (definitions.every((definition) => definition === null)) return false;
  for (let row = 0; row < count; row += 1) {
    const definition = definitions[name[row]!]!;
    if (definition !== null && usesPercent(drawing, row, definition)) return true;
  }
  return false;
}
