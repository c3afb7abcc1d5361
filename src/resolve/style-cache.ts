// Styles that are computed once for all elements that set the same.
import type { Source } from '../source/source.js';
import type { WeighedRule } from './rule-index.js';
import type { Style } from './style.js';

/** Rules of an element, the weightiest last; null where there are no style sheets. */
export type MatchedRules<Content> = readonly WeighedRule<Content>[] | null;

/** What a style hangs on besides the relevant attributes of its row. */
export interface StyleKey<Content> {
  readonly row: number;
  readonly parent: Style | null;
  readonly rules: MatchedRules<Content>;
}

/** Styles by key. */
export interface StyleCache<Content> {
  /** The style of a row, computed when no element with the same was seen before. */
  findStyle(row: number, parent: Style | null, rules: MatchedRules<Content>): Style;
}

/** What a cache is made of. */
export interface StyleCacheParts<Content> {
  /** For every attribute name of the source, 0 where the attribute does not count. */
  readonly relevance: Uint8Array;
  /** Whatever else of an element counts, as a number. */
  kindOf(row: number): number;
  compute(key: StyleKey<Content>): Style;
}

interface Entry<Content> extends StyleKey<Content> {
  readonly style: Style;
  readonly after: Entry<Content> | undefined;
  readonly depth: number;
}

/** Most styles that share a hash and are still looked through. */
const LONGEST_CHAIN = 32;

/** A cache over the raw bytes of attributes: no text is made of what was seen before. */
export function createStyleCache<Content>(source: Source, parts: StyleCacheParts<Content>): StyleCache<Content> {
  const { relevance } = parts;
  const families = new Map<Style | null, Map<number, Entry<Content>>>();
  let lastParent: Style | null | undefined;
  let lastFamily = new Map<number, Entry<Content>>();

  function familyOf(parent: Style | null): Map<number, Entry<Content>> {
    if (parent === lastParent) return lastFamily;
    let family = families.get(parent);
    if (family === undefined) {
      family = new Map();
      families.set(parent, family);
    }
    lastParent = parent;
    lastFamily = family;
    return family;
  }

  return {
    findStyle(row, parent, rules) {
      const family = familyOf(parent);
      const kind = parts.kindOf(row);
      let hash = hashAttributes(source, relevance, row) ^ kind;
      if (rules !== null) for (const rule of rules) hash = Math.imul(hash ^ rule.order, PRIME);
      const first = family.get(hash);
      for (let entry = first; entry !== undefined; entry = entry.after) {
        if (!equalAttributes(source, relevance, entry.row, row)) continue;
        if (parts.kindOf(entry.row) === kind && equalRules(entry.rules, rules)) return entry.style;
      }
      const style = parts.compute({ row, parent, rules });
      const depth = (first?.depth ?? 0) + 1;
      if (depth <= LONGEST_CHAIN) family.set(hash, { row, parent, rules, style, after: first, depth });
      return style;
    },
  };
}

/** Multiplier of the hash by Fowler, Noll and Vo. */
const PRIME = 16777619;

function hashAttributes(source: Source, relevance: Uint8Array, row: number): number {
  const { text, elements } = source;
  const { name, valueStart, valueEnd } = elements.attributes;
  let hash = PRIME;
  const last = elements.attributeStart[row + 1]!;
  for (let a = elements.attributeStart[row]!; a < last; a++) {
    if (relevance[name[a]!] === 0) continue;
    hash = Math.imul(hash ^ name[a]!, PRIME);
    const end = valueEnd[a]!;
    for (let at = valueStart[a]!; at < end; at++) hash = Math.imul(hash ^ text[at]!, PRIME);
  }
  return hash;
}

function equalAttributes(source: Source, relevance: Uint8Array, one: number, other: number): boolean {
  const { attributeStart, attributes } = source.elements;
  const { name } = attributes;
  let a = attributeStart[one]!;
  let b = attributeStart[other]!;
  const aEnd = attributeStart[one + 1]!;
  const bEnd = attributeStart[other + 1]!;
  for (;;) {
    while (a < aEnd && relevance[name[a]!] === 0) a++;
    while (b < bEnd && relevance[name[b]!] === 0) b++;
    if (a === aEnd || b === bEnd) return a === aEnd && b === bEnd;
    if (name[a] !== name[b] || !equalValues(source, a, b)) return false;
    a++;
    b++;
  }
}

function equalRules(one: MatchedRules<unknown>, other: MatchedRules<unknown>): boolean {
  if (one === other) return true;
  if (one === null || other === null || one.length !== other.length) return false;
  return one.every((rule, index) => rule === other[index]);
}

function equalValues(source: Source, a: number, b: number): boolean {
  const { valueStart, valueEnd } = source.elements.attributes;
  const start = valueStart[a]!;
  const shift = valueStart[b]! - start;
  const end = valueEnd[a]!;
  if (valueEnd[b]! - end !== shift) return false;
  for (let at = start; at < end; at++) if (source.text[at] !== source.text[at + shift]) return false;
  return true;
}
