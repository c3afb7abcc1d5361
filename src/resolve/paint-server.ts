// What gradients and patterns give.
import type { Artwork } from '../model/artwork.js';
import type { ServerFacts } from '../model/drawn-facts.js';
import { elementName, readAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { SLOT } from './attribute-slots.js';
import type { Drawing } from './drawing.js';
import { readLength } from './length.js';
import { isResolved } from './resolve.js';
import { readReferenceId } from './uses.js';

/** Rows of the children of an element that count, by their names. */
function hasChild(source: Source, row: number, counts: (local: string) => boolean): boolean {
  const { next } = source.elements;
  for (let child = row + 1; child < next[row]!; child = next[child]!) {
    if (counts(elementName(source, child).local)) return true;
  }
  return false;
}

const SILENT: ReadonlySet<string> = new Set(['title', 'desc', 'metadata']);

/** A side that is said to be nothing or less, on the pattern that says it. */
function isFlat(drawing: Drawing, row: number, slot: typeof SLOT.width | typeof SLOT.height): boolean | null {
  const attribute = drawing.slots.find(row, slot);
  if (attribute < 0) return null;
  const length = readLength(readAttribute(drawing.source, attribute), { fontSize: 16, percentBase: 1 });
  return length !== null && !(length > 0);
}

/** What is not said on one server is taken from the one it refers to. */
function chainOf(drawing: Drawing, first: number): { readonly rows: readonly number[]; readonly circular: boolean } {
  const rows: number[] = [];
  for (let row: number | undefined = first; row !== undefined; ) {
    if (rows.includes(row)) return { rows, circular: true };
    rows.push(row);
    const id = readReferenceId(drawing, row);
    row = id === null ? undefined : drawing.ids.get(id);
  }
  return { rows, circular: false };
}

function judge(drawing: Drawing, first: number): ServerFacts {
  const { source } = drawing;
  const { rows, circular } = chainOf(drawing, first);
  const isPattern = elementName(source, first).local === 'pattern';
  if (!isPattern) {
    if (rows.some((row) => hasChild(source, row, (local) => local === 'stop'))) return 'paints';
    return circular ? 'circle' : 'no-stops';
  }
  for (const slot of [SLOT.width, SLOT.height]) {
    const said = rows.map((row) => isFlat(drawing, row, slot)).find((flat) => flat !== null);
    if (said !== false) return 'no-size';
  }
  if (rows.some((row) => hasChild(source, row, (local) => !SILENT.has(local)))) return 'paints';
  return circular ? 'circle' : 'no-content';
}

/**
 * A reader of what gradients and patterns give; each is looked at once.
 *
 * @param artwork - Made by `resolve`.
 * @source SVG 2, sections 14.2 and 14.3
 */
export function createServerReader(artwork: Artwork): (id: string) => ServerFacts {
  const known = new Map<string, ServerFacts>();
  return (id) => {
    const row = artwork.ids.get(id);
    if (row === undefined || !isResolved(artwork)) return 'not-there';
    const facts = known.get(id) ?? judge(artwork.geometry, row);
    known.set(id, facts);
    return facts;
  };
}
