// Computed styles, ids and references of all elements, definitions included.
import { readAttribute } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE } from '../source/source.js';
import { type AttributeSlots, SLOT } from './attribute-slots.js';
import type { Cascade } from './cascade.js';
import type { FindingLog } from './finding-log.js';
import type { Style } from './style.js';
import { readReferenceId } from './uses.js';

/** What is read of every element. */
export interface ElementStyles {
  /** By row; a foreign element has its parent's. */
  readonly styles: readonly Style[];
  readonly references: ReadonlyMap<number, readonly string[]>;
  readonly hiders: ReadonlySet<number>;
}

/** Elements whose link is to somewhere to go, not to something to draw. */
const LINK_ONLY: ReadonlySet<string> = new Set(
  'a script animate animateColor animateMotion animateTransform set discard'.split(' '),
);

/** First row with each id. */
export function listIds(source: Source, slots: AttributeSlots): ReadonlyMap<string, number> {
  const { count } = source.elements;
  const rows = new Map<string, number>();
  for (let row = 0; row < count; row += 1) {
    const attribute = slots.find(row, SLOT.id);
    if (attribute < 0) continue;
    const id = readAttribute(source, attribute);
    if (!rows.has(id)) rows.set(id, row);
  }
  return rows;
}

function addReference(list: readonly string[], id: string | null): readonly string[] {
  return id === null || list.includes(id) ? list : [...list, id];
}

interface Reading {
  readonly source: Source;
  readonly cascade: Cascade;
  readonly styles: Style[];
  readonly hiders: Set<number>;
}

/**
 * Whether an element sets visibility to hidden itself: it is hidden and its parent is not, or it would be in a visible parent.
 */
function setsHidden(reading: Reading, row: number, style: Style, parent: Style | null): boolean {
  if (style.visibility === 'visible') return false;
  if (parent === null || parent.visibility === 'visible') return true;
  const { elements } = reading.source;
  for (let at = elements.parent[row]!; at >= 0; at = elements.parent[at]!) {
    const around = reading.styles[at]!;
    if (around.visibility === 'visible') return reading.cascade.computeStyle(row, around).visibility !== 'visible';
  }
  return reading.cascade.computeStyle(row, null).visibility !== 'visible';
}

/** Reads styles and references in document order. */
export function readStyles(
  grounds: {
    readonly source: Source;
    readonly slots: AttributeSlots;
    readonly codes: Uint8Array;
    readonly cascade: Cascade;
    readonly ids: ReadonlyMap<string, number>;
  },
  log: FindingLog,
): ElementStyles {
  const { source, slots, cascade } = grounds;
  const { count, parent, name, names } = source.elements;
  const isSvg = names.map(({ namespace }) => namespace === SVG_NAMESPACE);
  const isDrawnLink = names.map(({ namespace, local }) => namespace === SVG_NAMESPACE && !LINK_ONLY.has(local));
  const mayLink = slots.has(SLOT.href) || slots.has(SLOT.xlink);
  const styles: Style[] = new Array(count);
  const hiders = new Set<number>();
  const references = new Map<number, readonly string[]>();
  const reading: Reading = { source, cascade, styles, hiders };
  for (let row = 0; row < count; row += 1) {
    const around = row === 0 ? null : styles[parent[row]!]!;
    const kind = name[row]!;
    if (!isSvg[kind] && around !== null) {
      styles[row] = around;
      continue;
    }
    const style = cascade.computeStyle(row, around);
    styles[row] = style;
    if (style.display === 'none' || setsHidden(reading, row, style, around)) hiders.add(row);
    const id = mayLink && isDrawnLink[kind] ? readReferenceId(grounds, row) : null;
    const named = addReference(style.references, id);
    if (named.length === 0) continue;
    references.set(row, named);
    for (const target of named) if (!grounds.ids.has(target)) log.note('resolve/reference-missing', target, row);
  }
  return { styles, references, hiders };
}
