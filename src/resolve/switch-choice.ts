// Conditional processing: which children of a switch, and which elements at all, are drawn.
import { readAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { type AttributeSlots, SLOT } from './attribute-slots.js';
import { NOTHING, SYMBOL } from './element-codes.js';

/** The language the reader is taken to speak. A fixed one, so that the same file gives the same sheets everywhere. */
const LANGUAGE = 'en';

/** What the choice looks at. */
export interface ConditionGrounds {
  readonly source: Source;
  readonly slots: AttributeSlots;
  readonly codes: Uint8Array;
}

/** Whether any element of the file has a condition. */
export function hasConditions(slots: AttributeSlots): boolean {
  return slots.has(SLOT.systemLanguage) || slots.has(SLOT.requiredExtensions);
}

/**
 * Whether the conditions on an element hold: no extension is known, and the language is English; `requiredFeatures` always holds.
 *
 * @source SVG 2, section 5.8
 */
export function conditionsHold(grounds: ConditionGrounds, row: number): boolean {
  if (grounds.slots.find(row, SLOT.requiredExtensions) >= 0) return false;
  const language = grounds.slots.find(row, SLOT.systemLanguage);
  if (language < 0) return true;
  return readAttribute(grounds.source, language)
    .split(',')
    .map((tag) => tag.trim().toLowerCase())
    .some((tag) => tag === LANGUAGE || tag.startsWith(`${LANGUAGE}-`));
}

/** The child that a switch draws, or -1. */
export function chooseChild(grounds: ConditionGrounds, row: number): number {
  const { next, name } = grounds.source.elements;
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    const code = grounds.codes[name[child]!]!;
    if (code !== NOTHING && code !== SYMBOL && conditionsHold(grounds, child)) return child;
  }
  return -1;
}
