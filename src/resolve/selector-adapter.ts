// Selectors matched against the element table.
import { compile, type Options } from 'css-select';
import { PinbarError } from '../model/trouble.js';
import { findAttribute, readAttribute, readText } from '../source/read-attribute.js';
import { type Source, XML_NAMESPACE } from '../source/source.js';
import { findSiblingPlaces, isInSeries, readSeries, type Series, type SiblingPlaces } from './sibling-places.js';
import type { SelectorStep } from './style-sheets.js';

/** An element as the matcher sees it. One object per row, so that results can be kept by it. */
interface ElementNode {
  readonly row: number;
}

/** Whether the element of a row matches. */
export type RowTest = (row: number) => boolean;

/** Compiles selectors for one file. */
export interface SelectorCompiler {
  /** The test, or null where the selector is not known. */
  compileSelector(steps: readonly SelectorStep[]): RowTest | null;
}

/** Looks at neighbours and parents that all selectors may take together: some for every file, and more for every element in it. */
const LOOKS_FOR_ALL = 20_000_000;
const LOOKS_PER_ELEMENT = 200;
/** A look at an attribute reads its value, and takes as long as so many others. */
const ATTRIBUTE_LOOKS = 5;

/** States that a printed page is never in. */
const NEVER: readonly string[] = [
  'visited',
  'hover',
  'active',
  'focus',
  'focus-within',
  'focus-visible',
  'target',
  'target-within',
  'checked',
  'disabled',
  'indeterminate',
  'placeholder-shown',
  'fullscreen',
];

/** Selectors over the element table of a source; class names are parted as HTML parts them. */
export function createSelectorCompiler(source: Source): SelectorCompiler {
  const nodes: ElementNode[] = new Array(source.elements.count);
  const nodeOf = (row: number): ElementNode => {
    nodes[row] ??= { row };
    return nodes[row];
  };
  const allowed = LOOKS_FOR_ALL + LOOKS_PER_ELEMENT * source.elements.count;
  const budget = { left: allowed, allowed };
  const options: Options<ElementNode, ElementNode> = {
    xmlMode: true,
    adapter: createAdapter(source, nodeOf, budget),
    pseudos: {},
  };
  const test = (text: string): RowTest => {
    const query = compile<ElementNode, ElementNode>(text, options);
    return (row) => query(nodeOf(row));
  };
  const followers: RowTest[] = [];
  options.pseudos = createPseudos(source, test);
  // A function of two parameters is one that must have an argument.
  options.pseudos[FOLLOWING] = (node, value) => followers[Number(value)]!(node.row);
  return {
    compileSelector(steps) {
      try {
        return test(rewriteFollowing(steps, (before) => followers.push(findFollowers(source, test(before))) - 1));
      } catch (error) {
        if (error instanceof PinbarError) throw error;
        return null;
      }
    },
  };
}

/** Stands in for `before ~` in front of a compound: walking all earlier siblings of every element is quadratic. */
const FOLLOWING = '-pinbar-following';

/** The selector with every `~` outside of parentheses turned into a pseudo-class of the compound after it. */
function rewriteFollowing(steps: readonly SelectorStep[], keep: (before: string) => number): string {
  let text = '';
  for (const { combinator, compound } of steps) {
    text = combinator === '~' ? `${compound}:${FOLLOWING}(${keep(text)})` : `${text}${combinator}${compound}`;
  }
  return text;
}

/** Whether an earlier sibling passes a test. The table is walked once, when first asked. */
function findFollowers(source: Source, test: RowTest): RowTest {
  const { count, next, parent } = source.elements;
  const column = lazily(() => {
    const follows = new Uint8Array(count);
    for (let row = 0; row < count; row++) {
      const after = next[row]!;
      if (after >= count || parent[after] !== parent[row] || follows[after] === 1) continue;
      if (follows[row] === 1 || test(row)) follows[after] = 1;
    }
    return follows;
  });
  return (row) => column()[row] === 1;
}

type Adapter = NonNullable<Options<ElementNode, ElementNode>['adapter']>;

function createAdapter(
  source: Source,
  nodeOf: (row: number) => ElementNode,
  budget: { left: number; readonly allowed: number },
): Adapter {
  const { elements } = source;
  const families = new Map<number, ElementNode[]>();
  const previous = lazily(() => findPrevious(source));
  const spend = (looks: number): void => {
    budget.left -= looks;
    if (budget.left < 0) throw tooManyLooks(budget.allowed);
  };
  const childrenOf = (row: number): ElementNode[] => {
    const known = families.get(row);
    if (known !== undefined) return known;
    const children: ElementNode[] = [];
    for (let child = row + 1; child < elements.next[row]!; child = elements.next[child]!) children.push(nodeOf(child));
    families.set(row, children);
    return children;
  };
  const attributeOf = (node: ElementNode, name: string): string | undefined => {
    spend(ATTRIBUTE_LOOKS);
    const attribute = findNamed(source, node.row, name);
    return attribute < 0 ? undefined : readClassSafely(name, readAttribute(source, attribute));
  };
  return {
    isTag: (node): node is ElementNode => node !== null,
    getAttributeValue: attributeOf,
    hasAttrib: (node, name) => findNamed(source, node.row, name) >= 0,
    getName: (node) => elements.names[elements.name[node.row]!]!.local,
    getParent(node) {
      spend(1);
      const parent = elements.parent[node.row]!;
      return parent < 0 ? null : nodeOf(parent);
    },
    getChildren(node) {
      const children = childrenOf(node.row);
      spend(children.length);
      return children;
    },
    getSiblings(node) {
      const parent = elements.parent[node.row]!;
      const siblings = parent < 0 ? [node] : childrenOf(parent);
      spend(siblings.length);
      return siblings;
    },
    prevElementSibling(node) {
      spend(1);
      const before = previous()[node.row]!;
      return before < 0 ? null : nodeOf(before);
    },
    getText: (node) => readText(source, node.row),
    removeSubsets: (list) => list,
  };
}

/** The sibling before every row, or -1. */
function findPrevious(source: Source): Int32Array {
  const { count, next, parent } = source.elements;
  const previous = new Int32Array(count).fill(-1);
  for (let row = 0; row < count; row++) {
    const after = next[row]!;
    if (after < count && parent[after] === parent[row]) previous[after] = row;
  }
  return previous;
}

/** Names in selectors have no namespace, but for the `xml:lang` that `:lang()` looks at. */
function findNamed(source: Source, row: number, name: string): number {
  return name === 'xml:lang' ? findAttribute(source, row, 'lang', XML_NAMESPACE) : findAttribute(source, row, name);
}

/** The matcher parts class names at every Unicode blank; those that HTML does not know are taken out of its sight. */
function readClassSafely(name: string, value: string): string {
  return name === 'class' ? value.replace(/[^\S \t\n\f\r]/g, '\uE000') : value;
}

function tooManyLooks(looks: number): PinbarError {
  return new PinbarError('limit/selectors', {
    message: `Matching the style sheets takes more than ${looks} looks at elements, which is more than is allowed.`,
    remedy: 'Style the elements by class, or take rules with ~ and long lists of neighbours out of the style sheet.',
    data: { looks },
  });
}

const LINK = '-pinbar-link';
const NOWHERE = '-pinbar-nowhere';

type Pseudo = (node: ElementNode, value?: string | null) => boolean;

/** Pseudo-classes of position from columns, since walking the siblings of each element anew is quadratic. */
function createPseudos(source: Source, compileTest: (text: string) => RowTest): Record<string, Pseudo | string> {
  const { elements } = source;
  const all = (): boolean => true;
  const kindOf = (row: number): number => elements.name[row]!;
  const amongAll = lazily(() => findSiblingPlaces(elements, () => 0, all));
  const amongType = lazily(() => findSiblingPlaces(elements, kindOf, all));
  const pseudos: Record<string, Pseudo | string> = {
    'first-child': (node) => amongAll().fromFirst[node.row] === 1,
    'last-child': (node) => amongAll().fromLast[node.row] === 1,
    'only-child': (node) => amongAll().fromFirst[node.row] === 1 && amongAll().fromLast[node.row] === 1,
    'first-of-type': (node) => amongType().fromFirst[node.row] === 1,
    'last-of-type': (node) => amongType().fromLast[node.row] === 1,
    'only-of-type': (node) => amongType().fromFirst[node.row] === 1 && amongType().fromLast[node.row] === 1,
    'nth-of-type': makeNth((series, row) => isInSeries(series, amongType().fromFirst[row]!)),
    'nth-last-of-type': makeNth((series, row) => isInSeries(series, amongType().fromLast[row]!)),
    'nth-child': makeNthChild(amongAll, 'fromFirst', listed),
    'nth-last-child': makeNthChild(amongAll, 'fromLast', listed),
    empty: (node) => elements.next[node.row] === node.row + 1 && readText(source, node.row) === '',
    // The matcher has aliases of its own for these names; only an alias goes before them.
    [LINK]: isLink,
    link: `:${LINK}`,
    'any-link': `:${LINK}`,
    [NOWHERE]: () => false,
  };
  for (const name of NEVER) pseudos[name] = `:${NOWHERE}`;
  const lists = new Map<string, SiblingPlaces>();
  function listed(selectors: string): SiblingPlaces {
    const places = lists.get(selectors) ?? findSiblingPlaces(elements, () => 0, compileTest(selectors));
    lists.set(selectors, places);
    return places;
  }
  function isLink(node: ElementNode): boolean {
    const { attributeStart, attributes, names, name } = elements;
    if (names[name[node.row]!]!.local !== 'a') return false;
    for (let a = attributeStart[node.row]!; a < attributeStart[node.row + 1]!; a++) {
      if (attributes.names[attributes.name[a]!]!.local === 'href') return true;
    }
    return false;
  }
  return pseudos;
}

function lazily<Value>(make: () => Value): () => Value {
  let value: Value | undefined;
  return () => {
    value ??= make();
    return value;
  };
}

/** A pseudo-class of two parameters is one that must have an argument. */
function makeNth(test: (series: Series, row: number) => boolean): Pseudo {
  const known = new Map<string, Series | null>();
  return (node, value) => {
    const text = value ?? '';
    let series = known.get(text);
    if (series === undefined) {
      series = readSeries(text);
      known.set(text, series);
    }
    return series !== null && test(series, node.row);
  };
}

/** With `of`, only siblings that the list matches are counted. @source Selectors 4, section 14.3 */
function makeNthChild(
  amongAll: () => SiblingPlaces,
  side: keyof SiblingPlaces,
  listed: (selectors: string) => SiblingPlaces,
): Pseudo {
  const known = new Map<string, { readonly series: Series | null; readonly selectors: string | null }>();
  return (node, value) => {
    const text = value ?? '';
    let parts = known.get(text);
    if (parts === undefined) {
      const match = /^([^a-z]*(?:odd|even|[\d+-]*n)?[^a-z]*?)\s+of(?![\w-])\s*(\S.*)$/is.exec(text);
      parts = { series: readSeries(match?.[1] ?? text), selectors: match?.[2] ?? null };
      known.set(text, parts);
    }
    if (parts.series === null) return false;
    const places = parts.selectors === null ? amongAll() : listed(parts.selectors);
    return isInSeries(parts.series, places[side][node.row]!);
  };
}
