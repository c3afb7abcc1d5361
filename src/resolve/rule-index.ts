// Which rules of the style sheets match an element.
import { calculateForAST } from '@bramus/specificity/core';
import { findAttribute, readAttribute } from '../source/read-attribute.js';
import type { Source } from '../source/source.js';
import { createSelectorCompiler, type RowTest } from './selector-adapter.js';
import type { SheetSelector } from './style-sheets.js';

/** One selector with what its rule says; later and weightier ones win. */
export interface WeighedRule<Content> {
  readonly content: Content;
  /** Specificity as one number. */
  readonly weight: number;
  readonly order: number;
}

/** Finds the rules of an element. */
export interface RuleIndex<Content> {
  /** Adds a rule; the answer names the first selector that is not known, and then nothing is added. */
  addRule(selectors: readonly SheetSelector[], content: Content): string | null;
  /** Matching selectors, the weightiest last. Equal lists are often the same array. */
  matchRules(row: number): readonly WeighedRule<Content>[];
}

interface Entry<Content> extends WeighedRule<Content> {
  /** Null where the bucket says it all. */
  readonly test: RowTest | null;
}

/** Longest selector and deepest nesting in it that are looked at, so that matching cannot exhaust the stack. */
const LONGEST_SELECTOR = 4_000;
const DEEPEST_SELECTOR = 32;

/** Pseudo-classes of Selectors 4 that can be told from the file; states of a screen never hold. */
const KNOWN_PSEUDO =
  /^(?:root|empty|nth-child|nth-last-child|nth-of-type|nth-last-of-type|first-child|last-child|only-child|first-of-type|last-of-type|only-of-type|not|is|where|matches|has|lang|scope|link|any-link|visited|hover|active|focus|focus-within|focus-visible|target|target-within|checked|disabled|indeterminate|placeholder-shown|fullscreen)$/;
/** Pseudo-elements are no elements of the file: their rules match none. */
const PSEUDO_ELEMENT = /^(?:before|after|first-line|first-letter)$/;

/** An empty index over the elements of a source. */
export function createRuleIndex<Content>(source: Source): RuleIndex<Content> {
  const compiler = createSelectorCompiler(source);
  const buckets = new Map<string, Entry<Content>[]>();
  const memo = new Map<string, Candidates<Content>>();
  const counts = { order: 0, withIds: false };
  const { elements } = source;

  function addRule(selectors: readonly SheetSelector[], content: Content): string | null {
    const read: { readonly bucket: string; readonly entry: Entry<Content> }[] = [];
    for (const selector of selectors) {
      const verdict = judgeSelector(selector);
      if (verdict === 'never') continue;
      const { bucket, isWhole } = findBucket(selector);
      const test = verdict === 'unknown' || isWhole ? null : compiler.compileSelector(selector.steps);
      if (verdict === 'unknown' || (test === null && !isWhole)) return selector.text;
      const { a, b, c } = calculateForAST(selector.tree).toObject();
      const weight = (a * 4096 + b) * 4096 + c;
      read.push({ bucket, entry: { content, weight, order: counts.order, test } });
    }
    counts.order++;
    for (const { bucket, entry } of read) {
      const list = buckets.get(bucket);
      if (list === undefined) buckets.set(bucket, [entry]);
      else list.push(entry);
      counts.withIds ||= bucket.startsWith('#');
    }
    return null;
  }

  function findCandidates(name: string, classText: string, id: string): Candidates<Content> {
    const classes = new Set(classText.split(/[ \t\n\f\r]+/).filter((each) => each !== ''));
    const keys = ['*', name, ...[...classes].map((each) => `.${each}`), ...(id === '' ? [] : [`#${id}`])];
    const entries = keys.flatMap((key) => buckets.get(key) ?? []);
    entries.sort((one, other) => one.weight - other.weight || one.order - other.order);
    return { entries, isSure: entries.every((entry) => entry.test === null) };
  }

  function matchRules(row: number): readonly WeighedRule<Content>[] {
    const classRow = findAttribute(source, row, 'class');
    const idRow = counts.withIds ? findAttribute(source, row, 'id') : -1;
    const classText = classRow < 0 ? '' : readAttribute(source, classRow);
    const written = idRow < 0 ? '' : readAttribute(source, idRow);
    const id = buckets.has(`#${written}`) ? written : '';
    const nameIndex = elements.name[row]!;
    const key = `${nameIndex} ${id} ${classText}`;
    let candidates = memo.get(key);
    if (candidates === undefined) {
      candidates = findCandidates(elements.names[nameIndex]!.local, classText, id);
      memo.set(key, candidates);
    }
    if (candidates.isSure) return candidates.entries;
    return candidates.entries.filter((entry) => entry.test === null || entry.test(row));
  }

  return { addRule, matchRules };
}

interface Candidates<Content> {
  readonly entries: readonly Entry<Content>[];
  /** No entry needs a test. */
  readonly isSure: boolean;
}

/** Whether a selector can match at all, or is one that nobody here knows. */
function judgeSelector(selector: SheetSelector): 'known' | 'unknown' | 'never' {
  if (selector.text.length > LONGEST_SELECTOR || nestingOf(selector.text) > DEEPEST_SELECTOR) return 'unknown';
  if (selector.tree.children.first?.type === 'Combinator') return 'unknown';
  const isElement = (name: string): boolean => PSEUDO_ELEMENT.test(name);
  if (selector.pseudoClasses.some((name) => !isElement(name) && !KNOWN_PSEUDO.test(name))) return 'unknown';
  return selector.pseudoElement || selector.pseudoClasses.some(isElement) ? 'never' : 'known';
}

function nestingOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const character of text) {
    if (character === '(') deepest = Math.max(deepest, ++depth);
    else if (character === ')') depth--;
  }
  return deepest;
}

/** The narrowest bucket of the last compound, and whether being in it is all that the selector asks. */
function findBucket(selector: SheetSelector): { readonly bucket: string; readonly isWhole: boolean } {
  const nodes = selector.tree.children.toArray();
  const cut = nodes.findLastIndex((node) => node.type === 'Combinator');
  const last = nodes.slice(cut + 1);
  const isWhole = cut < 0 && last.length === 1;
  // Names stand as written: those with an escape are left to the test.
  const id = last.find((node) => node.type === 'IdSelector' && !node.name.includes('\\'));
  if (id?.type === 'IdSelector') return { bucket: `#${id.name}`, isWhole };
  const className = last.find((node) => node.type === 'ClassSelector' && !node.name.includes('\\'));
  if (className?.type === 'ClassSelector') return { bucket: `.${className.name}`, isWhole };
  const type = last.find((node) => node.type === 'TypeSelector');
  if (type === undefined || type.name.includes('\\')) return { bucket: '*', isWhole: false };
  const name = type.name.replace(/^\*\|/, '');
  return { bucket: name.slice(name.indexOf('|') + 1), isWhole: isWhole && !name.includes('|') };
}
