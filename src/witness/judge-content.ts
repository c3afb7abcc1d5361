// Whether what a sheet keeps is whole, unchanged, and finds everything it refers to.
import { isRemovable, listForbidden, withoutLoading } from './active-content.js';
import type { Override } from './compare-heads.js';
import { describeElement, noteDifference } from './judge-notes.js';
import { INSERTED, insertedKind } from './match-elements.js';
import { attributeOf, CHILD_SIGN, type WitnessElement, type WitnessTree, XLINK } from './read-tree.js';
import type { SheetCase } from './sheet-case.js';

const TEXT_KINDS = new Set(['text', 'tspan', 'textPath', 'tref', 'altGlyph', 'style', 'title', 'desc']);
const LOCAL_URL = /url\(\s*(?:"#([^"]*)"|'#([^']*)'|#([^)\s]*))\s*\)/g;

/** Ids that an element refers to by its attributes. */
export function listReferences(element: WitnessElement): readonly string[] {
  let found: string[] | null = null;
  for (let i = 0; i < element.attributeNames.length; i += 1) {
    const name = element.attributeNames[i]!;
    const value = element.attributeValues[i]!;
    const isHref = name === 'href' || (name.startsWith(XLINK) && name.endsWith('href'));
    if (isHref) {
      const address = value.trim();
      if (address.startsWith('#')) found = [...(found ?? []), address.slice(1)];
    } else if (name !== 'd' && value.includes('url(')) {
      for (const match of value.matchAll(LOCAL_URL)) {
        found = [...(found ?? []), (match[1] ?? match[2] ?? match[3])!];
      }
    }
  }
  return found ?? [];
}

/** What a sheet is still to be looked at for. */
interface Wholeness {
  readonly sheet: SheetCase;
  /** 1 for elements of the source already held against the sheet. */
  readonly seen: Uint8Array;
}

/** Everything inside a source element that may not be left out is on the sheet. */
function checkWhole(whole: Wholeness, top: number): void {
  const { sheet, seen } = whole;
  const { elements } = sheet.source.tree;
  if (seen[top] === 1) return;
  let i = top;
  while (i < elements[top]!.end) {
    const element = elements[i]!;
    if (i > top && (seen[i] === 1 || isRemovable(element))) {
      i = element.end;
      continue;
    }
    seen[i] = 1;
    if (sheet.match.places[i]! < 0) {
      noteDifference(sheet.notes, elements[top]!, `has lost ${describeElement(element)} of the source, which it needs`);
      i = element.end;
    } else {
      i += 1;
    }
  }
}

/** Whether an element or one around it may be left out of every sheet. */
function isGone(tree: WitnessTree, ordinal: number): boolean {
  for (let at = ordinal; at >= 0; at = tree.elements[at]!.parent) {
    if (at > 0 && isRemovable(tree.elements[at]!)) return true;
  }
  return false;
}

/** What an id means in the source is what it means here, with all it holds. */
export function checkReference(sheet: SheetCase, seen: Uint8Array, element: WitnessElement, id: string): void {
  const wanted = sheet.source.tree.ids.get(id);
  if (wanted === undefined || isGone(sheet.source.tree, wanted)) return;
  const place = sheet.tree.ids.get(id);
  if (place === undefined) {
    noteDifference(sheet.notes, element, `refers to "#${id}", which the source has and this file does not`);
  } else if (sheet.match.counterparts[place] !== wanted) {
    noteDifference(sheet.notes, element, `refers to "#${id}", which is another element here than in the source`);
  } else {
    checkWhole({ sheet, seen }, wanted);
  }
}

/** The text an element should have here: what was taken out leaves no sign. */
function expectedText(sheet: SheetCase, original: WitnessElement): string {
  const { source, match } = sheet;
  if (original.text === '') return '';
  if (original.kind === 'style') return withoutLoading(original.text.replaceAll(CHILD_SIGN, ''));
  const parts = original.text.split(CHILD_SIGN);
  let text = parts[0]!;
  let child = original.ordinal + 1;
  for (let i = 1; i < parts.length; i += 1) {
    text += (match.places[child]! >= 0 ? CHILD_SIGN : '') + parts[i];
    child = source.tree.elements[child]?.end ?? child;
  }
  return text;
}

function checkText(sheet: SheetCase, element: WitnessElement, original: WitnessElement): void {
  const isText = TEXT_KINDS.has(element.kind) || (element.kind === 'a' && TEXT_KINDS.has(parentKind(sheet, element)));
  if (!isText || element.text === original.text) return;
  const expected = expectedText(sheet, original);
  const here = element.kind === 'style' ? element.text.replaceAll(CHILD_SIGN, '') : element.text;
  if (here === expected || (expected.trim() === '' && here.trim() === '')) return;
  noteDifference(sheet.notes, element, 'holds another text than in the source');
}

function parentKind(sheet: SheetCase, element: WitnessElement): string {
  return sheet.tree.elements[element.parent]?.kind ?? '';
}

function sayOverrides(part: string | undefined, mayShow: boolean, overrides: readonly Override[]): string | null {
  for (const override of overrides) {
    if (override === 'display' || override === 'visibility') {
      if (!mayShow) return `has its ${override} overridden, but nothing in it was to be shown`;
    } else if (part === undefined || part === 'whole' || part === override) {
      return `has its ${override} taken away, but was to keep it`;
    }
  }
  return null;
}

function checkHead(sheet: SheetCase, element: WitnessElement, mayShow: ReadonlySet<number>): void {
  const head = sheet.match.heads.get(element.ordinal);
  if (head === undefined) return;
  for (const difference of head.differences) {
    noteDifference(sheet.notes, element, `is not as in the source: ${difference}`);
  }
  const counterpart = sheet.match.counterparts[element.ordinal]!;
  const said = sayOverrides(sheet.claim.drawn.get(counterpart), mayShow.has(counterpart), head.overrides);
  if (said !== null) noteDifference(sheet.notes, element, said);
}

/** What pinbar put there is what it says it is. */
function checkInserted(sheet: SheetCase, element: WitnessElement): void {
  const kind = insertedKind(sheet.tree, element);
  if (kind !== 'stand-in') return;
  const style = attributeOf(element, 'style') ?? '';
  if (element.end !== element.ordinal + 1 || element.text !== '') {
    noteDifference(sheet.notes, element, 'is a stand-in, but is not empty');
  }
  if (!/(?:^|;)\s*display\s*:\s*none\s*!important\s*;?\s*$/.test(style)) {
    noteDifference(sheet.notes, element, 'is a stand-in, but is not kept from being drawn');
  }
}

/** A file holds nothing that runs, moves or loads, and no document type. */
function checkForbidden(sheet: SheetCase): void {
  const { tree, notes } = sheet;
  if (tree.hasDoctype) noteDifference(notes, null, 'holds a document type declaration');
  for (const target of tree.instructions) noteDifference(notes, null, `holds the processing instruction "${target}"`);
  for (const element of tree.elements) {
    for (const what of listForbidden(element)) noteDifference(notes, element, `holds ${what}`);
  }
}

/**
 * Judges everything a sheet keeps, drawn or not.
 *
 * @param mayShow - Elements of the source that may have display or visibility overridden.
 * @returns Per element of the source, whether it was found to be there whole.
 */
export function judgeContent(sheet: SheetCase, mayShow: ReadonlySet<number>): Uint8Array {
  const { match, tree, source, claim, notes } = sheet;
  const seen = new Uint8Array(source.tree.elements.length);
  for (const fault of match.faults) noteDifference(notes, tree.elements[fault.ordinal]!, fault.text);
  checkForbidden(sheet);
  for (const element of tree.elements) {
    const counterpart = match.counterparts[element.ordinal]!;
    if (counterpart === INSERTED) checkInserted(sheet, element);
    if (counterpart < 0) continue;
    const original = source.tree.elements[counterpart]!;
    checkHead(sheet, element, mayShow);
    checkText(sheet, element, original);
    for (const id of listReferences(element)) checkReference(sheet, seen, element, id);
  }
  for (const ordinal of claim.drawn.keys()) if (match.places[ordinal]! >= 0) checkWhole({ sheet, seen }, ordinal);
  checkStyleSheets(sheet);
  return seen;
}

/** Every style sheet of the source is on every sheet, in order: the match holds the order. */
function checkStyleSheets(sheet: SheetCase): void {
  for (const element of sheet.source.tree.elements) {
    if (element.kind !== 'style' || isGone(sheet.source.tree, element.ordinal)) continue;
    if (sheet.match.places[element.ordinal]! < 0) {
      noteDifference(sheet.notes, element, 'of the source is missing; it may paint what is kept');
    }
  }
}
