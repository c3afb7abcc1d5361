// Whether an element of a sheet still is what it was in the source: its name and its attributes.
import { permittedValue } from './active-content.js';
import type { WitnessElement } from './read-tree.js';

/** A property that pinbar pins by an appended declaration. */
export type Override = 'fill' | 'stroke' | 'display' | 'visibility';

/** What came of comparing two start tags. */
export interface HeadComparison {
  /** In plain words; empty where nothing differs beyond what pinbar may change. */
  readonly differences: readonly string[];
  readonly overrides: readonly Override[];
}

const EQUAL: HeadComparison = { differences: [], overrides: [] };
const OVERRIDE =
  /^\s*;?\s*(?:(fill|stroke)\s*:\s*none|(display)\s*:\s*inline|(visibility)\s*:\s*visible)\s*!important\s*;?\s*/;
/** The size of the root is judged as an artboard, not as text. */
const BOARD_NAMES = new Set(['width', 'height', 'viewBox']);

/** The overrides appended to a style, or null where something else stands there. */
function readOverrides(tail: string): readonly Override[] | null {
  const found: Override[] = [];
  let rest = tail;
  while (/[^\s;]/.test(rest)) {
    const match = OVERRIDE.exec(rest);
    if (match === null) return null;
    found.push((match[1] ?? match[2] ?? match[3]) as Override);
    rest = rest.slice(match[0].length);
  }
  return found;
}

/** Whether names and values are the same, one after the other; the quick answer for most elements. */
export function equalAsWritten(sheet: WitnessElement, source: WitnessElement): boolean {
  const { attributeNames: names, attributeValues: values } = sheet;
  if (sheet.name !== source.name || names.length !== source.attributeNames.length) return false;
  for (let i = 0; i < names.length; i += 1) {
    if (names[i] !== source.attributeNames[i] || values[i] !== source.attributeValues[i]) return false;
  }
  return true;
}

function shorten(value: string): string {
  return value.length > 60 ? `${value.slice(0, 57)}...` : value;
}

function shownName(name: string): string {
  return name.slice(name.lastIndexOf(' ') + 1);
}

/** An embedded picture stands for the file it was linked from. */
function isEmbedded(sheet: WitnessElement, name: string, value: string): boolean {
  return sheet.kind === 'image' && /(?:^|[ :])href$/.test(name) && /^data:image\//i.test(value);
}

interface Comparing {
  readonly sheet: WitnessElement;
  readonly wanted: Map<string, string>;
  readonly differences: string[];
  readonly overrides: Override[];
}

function compareStyle(comparing: Comparing, value: string): void {
  const before = comparing.wanted.get('style') ?? '';
  comparing.wanted.delete('style');
  const tail = value.startsWith(before) ? readOverrides(value.slice(before.length)) : null;
  if (tail === null) comparing.differences.push(`style is "${shorten(value)}", in the source "${shorten(before)}"`);
  else comparing.overrides.push(...tail);
}

function compareAttribute(comparing: Comparing, source: WitnessElement, name: string, value: string): void {
  const { wanted, differences } = comparing;
  const before = wanted.get(name);
  wanted.delete(name);
  if (before === value) return;
  if (before === undefined) {
    const at = source.attributeNames.indexOf(name);
    if (at >= 0 && isEmbedded(comparing.sheet, name, value)) return;
    // A forbidden attribute that was kept is reported where forbidden content is.
    if (at >= 0 && source.attributeValues[at] === value) return;
    differences.push(`${shownName(name)}="${shorten(value)}" is not in the source`);
    return;
  }
  differences.push(`${shownName(name)} is "${shorten(value)}", in the source "${shorten(before)}"`);
}

function wantedAttributes(source: WitnessElement, isRoot: boolean): Map<string, string> {
  const wanted = new Map<string, string>();
  for (let i = 0; i < source.attributeNames.length; i += 1) {
    const name = source.attributeNames[i]!;
    if (isRoot && BOARD_NAMES.has(name)) continue;
    const value = permittedValue(source, name, source.attributeValues[i]!);
    if (value !== null) wanted.set(name, value);
  }
  return wanted;
}

/** Compares two start tags; the root may gain namespace declarations and has its size judged elsewhere. */
export function compareHeads(sheet: WitnessElement, source: WitnessElement): HeadComparison {
  if (equalAsWritten(sheet, source)) return EQUAL;
  if (sheet.name !== source.name)
    return { differences: [`it is a ${sheet.local}, in the source a ${source.local}`], overrides: [] };
  const isRoot = source.parent < 0;
  const comparing: Comparing = { sheet, wanted: wantedAttributes(source, isRoot), differences: [], overrides: [] };
  for (let i = 0; i < sheet.attributeNames.length; i += 1) {
    const name = sheet.attributeNames[i]!;
    const value = sheet.attributeValues[i]!;
    if (isRoot && (BOARD_NAMES.has(name) || (name.includes('/xmlns/ ') && !comparing.wanted.has(name)))) continue;
    if (name === 'style') compareStyle(comparing, value);
    else compareAttribute(comparing, source, name, value);
  }
  for (const [name, value] of comparing.wanted) {
    comparing.differences.push(`${shownName(name)}="${shorten(value)}" of the source is missing`);
  }
  return comparing;
}
