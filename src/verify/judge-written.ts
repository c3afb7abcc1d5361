// The first judge over copies that are written out: each is the pass under ids of its own, and no id stands twice.
import type { Artwork } from '../model/artwork.js';
import { encodeUtf8, equalBytes } from '../model/platform.js';
import { elementName, findAttribute, readAttribute, readText } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE, XML_NAMESPACE } from '../source/source.js';

/** Elements that carry type. */
const TYPE = new Set(['text', 'tspan', 'textPath', 'tref', 'a']);

/** 1 for the rows of a pass that a copy must hold: drawn shapes, the groups around them and the type in them. */
export function markNeeded(source: Source, artwork: Artwork): Uint8Array {
  const { count, parent } = source.elements;
  const needed = new Uint8Array(count);
  for (const shape of artwork.shapes) {
    if (!shape.draws || shape.hidden) continue;
    for (let row = shape.carrier; row >= 0 && needed[row] === 0; row = parent[row]!) needed[row] = 1;
  }
  for (let row = 1; row < count; row += 1) {
    const { local, namespace } = elementName(source, row);
    const isType = namespace === SVG_NAMESPACE && TYPE.has(local) && TYPE.has(elementName(source, parent[row]!).local);
    if (isType && needed[parent[row]!] === 1) needed[row] = 1;
  }
  return needed;
}

/** Attributes that name an element, as rows of the attribute table. */
function idsOf(source: Source, row: number): readonly number[] {
  return [findAttribute(source, row, 'id'), findAttribute(source, row, 'id', XML_NAMESPACE)].filter(
    (attribute) => attribute >= 0,
  );
}

/** The start tag of an element with a suffix behind its ids. */
function headWith(source: Source, row: number, suffix: string): Uint8Array {
  const { start, headEnd, attributes } = source.elements;
  const ends = idsOf(source, row)
    .filter((attribute) => attributes.valueEnd[attribute]! > attributes.valueStart[attribute]!)
    .map((attribute) => attributes.valueEnd[attribute]! - start[row]!)
    .sort((a, b) => a - b);
  const head = source.text.subarray(start[row]!, headEnd[row]!);
  if (ends.length === 0) return head;
  const put = encodeUtf8(suffix);
  const whole = new Uint8Array(head.length + ends.length * put.length);
  let at = 0;
  for (const [i, end] of ends.entries()) {
    whole.set(head.subarray(at, end), at + i * put.length);
    whole.set(put, end + i * put.length);
    at = end;
  }
  whole.set(head.subarray(at), at + ends.length * put.length);
  return whole;
}

/** A copy within a sheet. */
export interface CopyPlace {
  readonly source: Source;
  /** What holds the art of the copy. */
  readonly row: number;
  readonly suffix: string;
}

/**
 * What tells a copy from the pass, as words behind its name; null where nothing does.
 *
 * Start tags must be those of the pass to the byte, with the suffix behind ids, in the same order below the same parents; what is not
 * needed may be missing.
 */
export function findUnlike(pass: Source, needed: Uint8Array, copy: CopyPlace): string | null {
  const { elements } = pass;
  const sheet = copy.source.elements;
  const places = new Int32Array(elements.count).fill(-1);
  places[0] = copy.row;
  const end = sheet.next[copy.row]!;
  let at = copy.row + 1;
  for (let row = 1; row < elements.count; ) {
    const isHere =
      at < end &&
      sheet.parent[at] === places[elements.parent[row]!] &&
      equalBytes(headWith(pass, row, copy.suffix), copy.source.text.subarray(sheet.start[at]!, sheet.headEnd[at]!));
    if (!isHere && needed[row] === 1) return `does not hold <${elementName(pass, row).qualified}> as the pass has it`;
    if (!isHere) {
      row = elements.next[row]!;
      continue;
    }
    if (TYPE.has(elementName(pass, row).local) && readText(pass, row) !== readText(copy.source, at))
      return 'says something else than the pass';
    places[row] = at;
    at += 1;
    row += 1;
  }
  return at === end ? null : 'holds something that the pass does not have';
}

/** An id that the sheet has twice though the pass has it once; null where there is none. */
export function findDoubledId(sheet: Source, suffixes: readonly string[], pass: Source): string | null {
  const listOf = (source: Source): readonly string[] => {
    const ids: string[] = [];
    for (let row = 0; row < source.elements.count; row += 1)
      for (const attribute of idsOf(source, row)) ids.push(readAttribute(source, attribute));
    return ids;
  };
  const once = new Set<string>();
  // Where the designer gave an id twice, each copy has it twice under its own name.
  const allowed = new Set<string>(['']);
  for (const id of listOf(pass)) {
    if (once.has(id)) for (const suffix of suffixes) allowed.add(id + suffix);
    once.add(id);
  }
  const seen = new Set<string>();
  for (const id of listOf(sheet)) {
    if (seen.has(id) && !allowed.has(id)) return id;
    seen.add(id);
  }
  return null;
}
