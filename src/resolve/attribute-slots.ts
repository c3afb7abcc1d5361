// Finds attributes by number instead of by name.
import { type Source, XLINK_NAMESPACE } from '../source/source.js';

/** The attributes the walk looks at; `xlink` is `xlink:href`, all others are without a namespace. */
export const SLOT = {
  id: 1,
  class: 2,
  href: 3,
  xlink: 4,
  transform: 5,
  d: 6,
  points: 7,
  x: 8,
  y: 9,
  width: 10,
  height: 11,
  cx: 12,
  cy: 13,
  r: 14,
  rx: 15,
  ry: 16,
  x1: 17,
  y1: 18,
  x2: 19,
  y2: 20,
  fx: 21,
  fy: 22,
  fr: 23,
  viewBox: 24,
  preserveAspectRatio: 25,
  refX: 26,
  refY: 27,
  clipPathUnits: 28,
  systemLanguage: 29,
  requiredExtensions: 30,
  gradientUnits: 31,
  patternUnits: 32,
  maskUnits: 33,
  filterUnits: 34,
} as const;

/** Number of an attribute; see `SLOT`. */
export type Slot = (typeof SLOT)[keyof typeof SLOT];

/** Attribute rows by slot. */
export interface AttributeSlots {
  /** Attribute row of an element, or -1. */
  find(row: number, slot: Slot): number;
  /** Whether any element of the file has it. */
  has(slot: Slot): boolean;
}

/** Gives every attribute name of a file its slot once, so that a look-up compares no names. */
export function createAttributeSlots(source: Source): AttributeSlots {
  const { attributeStart, attributes } = source.elements;
  const { name } = attributes;
  const numbers = new Map<string, number>(Object.entries(SLOT));
  const present = new Uint8Array(64);
  const slots = Uint8Array.from(attributes.names, ({ local, namespace }) => {
    if (namespace === '' && local !== 'xlink') return numbers.get(local) ?? 0;
    return namespace === XLINK_NAMESPACE && local === 'href' ? SLOT.xlink : 0;
  });
  for (const slot of slots) present[slot] = 1;
  return {
    find(row, slot) {
      if (present[slot] === 0) return -1;
      const end = attributeStart[row + 1]!;
      for (let a = attributeStart[row]!; a < end; a += 1) if (slots[name[a]!] === slot) return a;
      return -1;
    },
    has: (slot) => present[slot] === 1,
  };
}
