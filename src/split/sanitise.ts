// What no sheet may hold: scripts, handlers, animation, foreign content and references to the outside.
import { type Finding, type FindingCode, finding } from '../model/finding.js';
import { locate } from '../source/locate.js';
import { readAttribute, readText } from '../source/read-attribute.js';
import { type Source, SVG_NAMESPACE, XLINK_NAMESPACE, XML_NAMESPACE } from '../source/source.js';
import { attributeSpan } from './attribute-span.js';
import { findOutsideReferences, isInsideAddress } from './css-references.js';
import type { Edit } from './edit.js';
import { ANIMATION_NAMES, KEPT_NAMES, SCRIPT_NAMES } from './svg-names.js';

/** What came of looking through the whole source once. */
export interface Sanitised {
  readonly edits: readonly Edit[];
  /** 1 for rows that are taken out with all they hold. */
  readonly removed: Uint8Array;
  /** `image` rows whose picture is a file beside the source, with the attribute that names it. */
  readonly linkedPictures: readonly { readonly row: number; readonly attribute: number; readonly address: string }[];
  /** `image` rows that lose their picture, since its address leads out of the file. */
  readonly emptiedPictures: ReadonlySet<number>;
  /** Rows of style elements whose text was cleaned. */
  readonly cleanedRows: ReadonlySet<number>;
  readonly findings: readonly Finding[];
}

type Removal = { readonly offset: number; readonly what: string };

const WORDS: Partial<Record<FindingCode, readonly [string, string]>> = {
  'split/script-removed': ['script', 'The machine needs no scripts; nothing to do unless the art was drawn by one.'],
  'split/handler-removed': ['event handler', 'The machine needs no handlers; nothing to do.'],
  'split/animation-removed': ['animation', 'The art is split as it stands without it; draw the state you want.'],
  'split/foreign-object-removed': ['foreignObject', 'Turn its content into shapes and place it again.'],
  'split/outside-reference-removed': ['reference to the outside', 'Bring what it names into the file.'],
  'split/foreign-left-out': ['element that draws nothing', 'Nothing to do.'],
};

interface Collection {
  readonly edits: Edit[];
  readonly cleanedRows: Set<number>;
  readonly emptiedPictures: Set<number>;
  readonly removals: Map<FindingCode, Removal[]>;
}

function note(into: Collection, code: FindingCode, removal: Removal): void {
  const list = into.removals.get(code);
  if (list === undefined) into.removals.set(code, [removal]);
  else list.push(removal);
}

function escapeValue(value: string): string {
  return value.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;').replace(/'/g, '&#39;');
}

/** A CSS text without what it would load, or null where it loads nothing. */
function cleanCss(css: string): { readonly text: string; readonly addresses: readonly string[] } | null {
  const found = findOutsideReferences(css);
  if (found.length === 0) return null;
  let text = '';
  let at = 0;
  for (const reference of found) {
    text += css.slice(at, reference.start) + reference.replacement;
    at = reference.end;
  }
  return { text: text + css.slice(at), addresses: found.map((reference) => reference.address) };
}

/** Why an element may not stay, or null. */
function judgeElement(namespace: string, local: string): FindingCode | null {
  if (SCRIPT_NAMES.has(local)) return 'split/script-removed';
  if (namespace !== SVG_NAMESPACE) return 'split/foreign-left-out';
  if (ANIMATION_NAMES.has(local)) return 'split/animation-removed';
  if (local === 'foreignObject') return 'split/foreign-object-removed';
  return KEPT_NAMES.has(local) ? null : 'split/foreign-left-out';
}

type AttributeDuty = 'none' | 'handler' | 'address' | 'drop' | 'css';

const PLAIN_NAMES = new Set(
  'd points transform viewBox id class x y width height cx cy r rx ry x1 y1 x2 y2 offset'.split(' '),
);
const LOADING_NAMES = new Set(
  'src srcset ping action formaction srcdoc poster data code archive background'.split(' '),
);

/** What has to be looked at in an attribute of this name. */
function dutyOf(namespace: string, local: string): AttributeDuty {
  if (local === 'href' && (namespace === '' || namespace === XLINK_NAMESPACE)) return 'address';
  if (namespace === XML_NAMESPACE && local === 'base') return 'drop';
  if (namespace === 'http://www.w3.org/2001/xml-events') return 'handler';
  if (namespace !== '') return 'none';
  if (/^on/i.test(local)) return 'handler';
  if (LOADING_NAMES.has(local)) return 'drop';
  return PLAIN_NAMES.has(local) ? 'none' : 'css';
}

const HAS_SCHEME = /^\s*(?:[a-z][a-z0-9+.-]*:|\/\/)/i;
const PAREN = 0x28;

/** Whether the raw value could call a CSS function that loads: it holds a bracket or a reference. */
function mayLoad(text: Uint8Array, start: number, end: number): boolean {
  for (let i = start; i < end; i += 1) if (text[i] === PAREN || text[i] === 0x26) return true;
  return false;
}

function removeAttribute(source: Source, attribute: number, code: FindingCode, what: string, into: Collection): void {
  const [start, end] = attributeSpan(source, attribute);
  into.edits.push({ start, end, replacement: '' });
  note(into, code, { offset: start, what });
}

interface Judging {
  readonly source: Source;
  readonly into: Collection;
  readonly linked: { row: number; attribute: number; address: string }[];
}

/** An address must stay in the file; a picture beside the file is a case of its own. */
function judgeAddress(judging: Judging, row: number, attribute: number, shown: string): void {
  const { source, into, linked } = judging;
  const value = readAttribute(source, attribute);
  if (isInsideAddress(value)) return;
  const isPicture = source.elements.names[source.elements.name[row]!]!.local === 'image';
  if (isPicture && !HAS_SCHEME.test(value)) linked.push({ row, attribute, address: value });
  else {
    removeAttribute(source, attribute, 'split/outside-reference-removed', shown, into);
    if (isPicture) into.emptiedPictures.add(row);
  }
}

/** Takes out of a declaration list or presentation attribute what it would load. */
function judgeCss(judging: Judging, attribute: number): void {
  const { source, into } = judging;
  const { valueStart, valueEnd } = source.elements.attributes;
  const clean = cleanCss(readAttribute(source, attribute));
  if (clean === null) return;
  const start = valueStart[attribute]!;
  into.edits.push({ start, end: valueEnd[attribute]!, replacement: escapeValue(clean.text) });
  for (const what of clean.addresses) note(into, 'split/outside-reference-removed', { offset: start, what });
}

function judgeAttribute(judging: Judging, row: number, attribute: number, duty: AttributeDuty): void {
  const { source, into } = judging;
  const { names, name } = source.elements.attributes;
  const { qualified } = names[name[attribute]!]!;
  const shown = `${qualified}="${readAttribute(source, attribute).slice(0, 80)}"`;
  if (duty === 'handler') removeAttribute(source, attribute, 'split/handler-removed', qualified, into);
  else if (duty === 'drop') removeAttribute(source, attribute, 'split/outside-reference-removed', shown, into);
  else if (duty === 'address') judgeAddress(judging, row, attribute, shown);
  else judgeCss(judging, attribute);
}

/** Takes out of a style element what it would load. */
function judgeStyle(source: Source, row: number, into: Collection): void {
  const { headEnd, tailStart, start } = source.elements;
  const clean = cleanCss(readText(source, row));
  if (clean === null) return;
  into.cleanedRows.add(row);
  into.edits.push({ start: headEnd[row]!, end: tailStart[row]!, replacement: escapeValue(clean.text) });
  for (const address of clean.addresses) {
    note(into, 'split/outside-reference-removed', { offset: start[row]!, what: address });
  }
}

function describe(source: Source, code: FindingCode, removals: readonly Removal[]): Finding {
  const [word, remedy] = WORDS[code]!;
  const first = removals[0]!;
  const lines = removals.slice(0, 20).map((removal) => locate(source, removal.offset).line);
  const count = removals.length;
  const whats = [...new Set(removals.map((removal) => removal.what))].slice(0, 5).join(', ');
  const named = whats === word ? '' : ` (${whats})`;
  const more =
    count > 1
      ? `${count} times a${/^[aeiou]/.test(word) ? 'n' : ''} ${word}`
      : `A${/^[aeiou]/.test(word) ? 'n' : ''} ${word}`;
  return finding(code, {
    message: `${more}${named} on line${count > 1 ? 's' : ''} ${lines.join(', ')}${count > 20 ? ' and on' : ''}: left out of the sheets, which hold nothing that runs, moves or loads.`,
    remedy,
    place: locate(source, first.offset),
    data: { count, lines, what: whats },
  });
}

/** Stylesheet instructions before the root load from outside; sheets carry no instructions at all. */
function judgeInstructions(source: Source, into: Collection): void {
  for (const [start] of source.instructions) {
    const isSheet = /^<\?xml-stylesheet/.test(String.fromCharCode(...source.text.subarray(start, start + 16)));
    note(into, isSheet ? 'split/outside-reference-removed' : 'split/foreign-left-out', {
      offset: start,
      what: isSheet ? 'xml-stylesheet instruction' : 'processing instruction',
    });
  }
}

/**
 * Looks through every element and attribute once for what no sheet may hold.
 *
 * @returns Edits for all sheets alike, and one finding per kind with count and lines.
 */
export function sanitise(source: Source): Sanitised {
  const { elements } = source;
  const { attributes } = elements;
  const into: Collection = { edits: [], cleanedRows: new Set(), emptiedPictures: new Set(), removals: new Map() };
  const linked: { row: number; attribute: number; address: string }[] = [];
  const judging: Judging = { source, into, linked };
  const removed = new Uint8Array(elements.count);
  const verdicts = elements.names.map((name) => judgeElement(name.namespace, name.local));
  const isStyle = elements.names.map((name) => name.namespace === SVG_NAMESPACE && name.local === 'style');
  const duties = attributes.names.map((name) => dutyOf(name.namespace, name.local));
  judgeInstructions(source, into);
  let row = 0;
  while (row < elements.count) {
    const name = elements.name[row]!;
    const verdict = verdicts[name]!;
    if (verdict !== null && row > 0) {
      removed.fill(1, row, elements.next[row]!);
      into.edits.push({ start: elements.start[row]!, end: elements.end[row]!, replacement: '' });
      note(into, verdict, { offset: elements.start[row]!, what: elements.names[name]!.qualified });
      row = elements.next[row]!;
      continue;
    }
    if (isStyle[name]) judgeStyle(source, row, into);
    for (let a = elements.attributeStart[row]!; a < elements.attributeStart[row + 1]!; a += 1) {
      const duty = duties[attributes.name[a]!]!;
      if (duty === 'none') continue;
      if (duty === 'css' && !mayLoad(source.text, attributes.valueStart[a]!, attributes.valueEnd[a]!)) continue;
      judgeAttribute(judging, row, a, duty);
    }
    row += 1;
  }
  const findings = [...into.removals].map(([code, removals]) => describe(source, code, removals));
  const { edits, cleanedRows, emptiedPictures } = into;
  return { edits, cleanedRows, emptiedPictures, removed, linkedPictures: linked, findings };
}
