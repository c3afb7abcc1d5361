// Finds for every element of a sheet the element of the source that it is.
import { compareHeads, equalAsWritten, type HeadComparison } from './compare-heads.js';
import { attributeOf, type WitnessElement, type WitnessTree } from './read-tree.js';

/** Put there by pinbar. */
export const INSERTED = -1;
/** Neither pinbar's nor the source's. */
export const UNKNOWN = -2;

/** What a sheet element is. */
export type InsertedKind = 'marks' | 'stand-in' | 'definition';

/** An element of the sheet that is not what it should be. */
export interface MatchFault {
  readonly ordinal: number;
  readonly text: string;
}

/** Counterparts of a sheet's elements. */
export interface MatchResult {
  /** Ordinal in the source, INSERTED or UNKNOWN, per element of the sheet. */
  readonly counterparts: Int32Array;
  /** Per element of the source its place in the sheet, or -1. */
  readonly places: Int32Array;
  /** Start tags that are not as in the source, by place in the sheet. */
  readonly heads: ReadonlyMap<number, HeadComparison>;
  readonly faults: readonly MatchFault[];
}

interface Matching {
  readonly source: WitnessTree;
  readonly sheet: WitnessTree;
  readonly rows: Int32Array;
  readonly counterparts: Int32Array;
  readonly places: Int32Array;
  readonly heads: Map<number, HeadComparison>;
  readonly faults: MatchFault[];
  /** Per element of the source, the first child that may still be matched. */
  readonly nextChild: Int32Array;
  /** Children of the source by parent and start tag; made when first needed. */
  index: Map<number, number[]> | null;
  /** Comparisons left for guessing, so that a hostile file cannot make it slow. */
  budget: number;
}

/** What pinbar put there, by its own marking; null for anything else. */
export function insertedKind(tree: WitnessTree, element: WitnessElement): InsertedKind | null {
  if (element.kind === '') return null;
  if (element.parent === 0 && element.kind === 'g' && element.id === 'pinbar-marks') {
    return element.end === tree.elements.length ? 'marks' : null;
  }
  const mark = attributeOf(element, 'data-pinbar');
  if (mark === 'stand-in') return 'stand-in';
  return mark === 'definition' && element.kind === 'defs' ? 'definition' : null;
}

function hashText(seed: number, text: string): number {
  let hash = seed;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** A number for a start tag below a parent; style is left out, since pinbar may append to it. */
function hashHead(parent: number, element: WitnessElement): number {
  let hash = hashText((0x811c9dc5 ^ parent) >>> 0, element.name);
  for (const name of ['d', 'points', 'id', 'class', 'transform', 'x', 'y', 'cx', 'cy']) {
    const value = attributeOf(element, name);
    if (value !== null) hash = hashText(hash, `${name}=${value}`);
  }
  return hash;
}

function indexSource(matching: Matching): Map<number, number[]> {
  if (matching.index !== null) return matching.index;
  const index = new Map<number, number[]>();
  for (const element of matching.source.elements) {
    const hash = hashHead(element.parent, element);
    const list = index.get(hash);
    if (list === undefined) index.set(hash, [element.ordinal]);
    else list.push(element.ordinal);
  }
  matching.index = index;
  return index;
}

function isSame(element: WitnessElement, candidate: WitnessElement): boolean {
  if (element.name !== candidate.name || element.id !== candidate.id) return false;
  return compareHeads(element, candidate).differences.length === 0;
}

/** Whether what a sheet element holds can be found, in order, inside a source element. A guess for telling twins apart. */
function mayHold(matching: Matching, ordinal: number, candidate: number): boolean {
  const { sheet, source } = matching;
  const end = source.elements[candidate]!.end;
  let at = candidate + 1;
  for (let i = ordinal + 1; i < sheet.elements[ordinal]!.end; i += 1) {
    const element = sheet.elements[i]!;
    if (insertedKind(sheet, element) !== null) continue;
    while (at < end && matching.budget > 0 && !isSame(element, source.elements[at]!)) {
      at += 1;
      matching.budget -= 1;
    }
    if (matching.budget <= 0) return true;
    if (at >= end) return false;
    at += 1;
  }
  return true;
}

function isCandidate(matching: Matching, candidate: number, parent: number): boolean {
  const element = matching.source.elements[candidate];
  return element !== undefined && element.parent === parent && candidate >= matching.nextChild[parent]!;
}

/** Looks for an equal start tag among the children of a source element that come next. */
function searchTwin(matching: Matching, element: WitnessElement, parent: number): number {
  for (const candidate of indexSource(matching).get(hashHead(parent, element)) ?? []) {
    matching.budget -= 1;
    if (matching.budget <= 0) return UNKNOWN;
    if (!isCandidate(matching, candidate, parent)) continue;
    const head = compareHeads(element, matching.source.elements[candidate]!);
    if (head.differences.length === 0 && mayHold(matching, element.ordinal, candidate)) return candidate;
  }
  return UNKNOWN;
}

/** The element of the source that this one was before it was altered, or UNKNOWN. */
function guessAltered(matching: Matching, element: WitnessElement, parent: number): number {
  const { source, rows } = matching;
  const byId = element.id === '' ? undefined : source.ids.get(element.id);
  for (const candidate of [byId ?? UNKNOWN, rows[element.ordinal] ?? UNKNOWN]) {
    if (
      candidate >= 0 &&
      isCandidate(matching, candidate, parent) &&
      source.elements[candidate]!.name === element.name
    ) {
      return candidate;
    }
  }
  return UNKNOWN;
}

function sayUnknown(matching: Matching, element: WitnessElement, parent: number): string {
  for (const candidate of indexSource(matching).get(hashHead(parent, element)) ?? []) {
    if (!equalAsWritten(element, matching.source.elements[candidate]!)) continue;
    return matching.places[candidate]! >= 0
      ? 'stands here a second time; the source has it once'
      : 'stands in another order than in the source';
  }
  return 'is not in the source at this place';
}

function findCounterpart(matching: Matching, element: WitnessElement, parent: number): number {
  const { source, rows, heads, faults } = matching;
  const hint = rows[element.ordinal] ?? UNKNOWN;
  if (hint >= 0 && isCandidate(matching, hint, parent)) {
    const head = compareHeads(element, source.elements[hint]!);
    if (head.differences.length === 0) {
      if (head.overrides.length > 0) heads.set(element.ordinal, head);
      return hint;
    }
  }
  if (hint < 0 && insertedKind(matching.sheet, element) !== null) return INSERTED;
  let found = searchTwin(matching, element, parent);
  if (found < 0) found = guessAltered(matching, element, parent);
  if (found < 0 && insertedKind(matching.sheet, element) !== null) return INSERTED;
  if (found < 0) {
    faults.push({ ordinal: element.ordinal, text: sayUnknown(matching, element, parent) });
    return UNKNOWN;
  }
  heads.set(element.ordinal, compareHeads(element, source.elements[found]!));
  return found;
}

/** Where the children of a sheet element belong in the source: through definition wrappers, INSERTED below marks. */
function sourceParentOf(matching: Matching, parent: number): number {
  let at = parent;
  while (at >= 0 && matching.counterparts[at] === INSERTED) {
    if (insertedKind(matching.sheet, matching.sheet.elements[at]!) !== 'definition') return INSERTED;
    at = matching.sheet.elements[at]!.parent;
  }
  return at < 0 ? UNKNOWN : matching.counterparts[at]!;
}

function checkClaim(matching: Matching): void {
  const { rows, sheet, counterparts, faults } = matching;
  if (rows.length !== sheet.elements.length) {
    const text = `holds ${sheet.elements.length} elements, but the claim names ${rows.length}`;
    faults.push({ ordinal: 0, text });
    return;
  }
  for (let i = 0; i < rows.length; i += 1) {
    const found = counterparts[i]!;
    if (found === UNKNOWN || rows[i] === found) continue;
    const said = rows[i]! < 0 ? 'something pinbar put there' : `element ${rows[i]} of the source`;
    const seen = found < 0 ? 'something pinbar put there' : `element ${found} of the source`;
    faults.push({ ordinal: i, text: `is claimed to be ${said}, but the second judge finds ${seen}` });
  }
}

/**
 * Walks both trees in document order and finds what each element of the sheet is in the source.
 *
 * A sheet's elements are a subsequence of the source's, below the same parents. The claim serves as a first guess and is
 * never believed: a counterpart counts where parent, order, name and attributes agree.
 *
 * @param rows - The claim: per element of the sheet its ordinal in the source, or -1.
 */
export function matchElements(source: WitnessTree, sheet: WitnessTree, rows: Int32Array): MatchResult {
  const size = source.elements.length;
  const matching: Matching = {
    source,
    sheet,
    rows,
    counterparts: new Int32Array(sheet.elements.length).fill(UNKNOWN),
    places: new Int32Array(size).fill(-1),
    heads: new Map(),
    faults: [],
    nextChild: Int32Array.from({ length: size }, (_, i) => i + 1),
    index: null,
    budget: 1_000_000 + 20 * (size + sheet.elements.length),
  };
  matching.counterparts[0] = 0;
  matching.places[0] = 0;
  matching.heads.set(0, compareHeads(sheet.elements[0]!, source.elements[0]!));
  for (let i = 1; i < sheet.elements.length; i += 1) {
    const element = sheet.elements[i]!;
    const parent = sourceParentOf(matching, element.parent);
    const found = parent < 0 ? parent : findCounterpart(matching, element, parent);
    matching.counterparts[i] = found;
    if (found >= 0) {
      matching.places[found] = i;
      matching.nextChild[parent] = source.elements[found]!.end;
    }
  }
  checkClaim(matching);
  return matching;
}
