// Style sheets as the second judge reads them: rules of plain selectors (name, id, classes), the rest known as not understood.
import type { WitnessElement, WitnessTree } from './read-tree.js';
import { attributeOf } from './read-tree.js';

/** A declared value. */
export interface Declared {
  readonly value: string;
  readonly important: boolean;
}

/** One selector of a rule. */
export interface StyleRule {
  /** Element name or ''. */
  readonly tag: string;
  readonly id: string;
  readonly classes: readonly string[];
  /** True for a selector or a condition that is not understood: it may match anything. */
  readonly isOpaque: boolean;
  readonly weight: number;
  /** Place among the rules of the file. */
  readonly order: number;
  readonly declarations: ReadonlyMap<string, Declared>;
}

/** All rules of a file, found by the plainest thing an element must have to match. */
export interface StyleBook {
  readonly rules: readonly StyleRule[];
  readonly byKey: ReadonlyMap<string, readonly StyleRule[]>;
  /** Properties that a rule sets whose selector is not understood. */
  readonly opaqueProperties: ReadonlySet<string>;
  /** Text of all sheets. */
  readonly text: string;
}

/** Rules that a sheet of copies says once more for the ids of the copies: as rules they count, but they change no text to compare. */
const COPY_RULES = 'pinbar-copy-rules';

const PLAIN_SELECTOR = /^(\*|[A-Za-z][\w-]*)?((?:[.#][\w\u0080-\uffff-]+)*)$/;

/** Declarations of a block or a style attribute; an important one wins over a later plain one. */
export function readDeclarations(body: string): ReadonlyMap<string, Declared> {
  const declarations = new Map<string, Declared>();
  for (const part of body.split(';')) {
    const colon = part.indexOf(':');
    if (colon < 0) continue;
    const property = part.slice(0, colon).trim().toLowerCase();
    const raw = part.slice(colon + 1).trim();
    const value = raw.replace(/\s*!\s*important$/i, '');
    const important = value !== raw;
    if (declarations.get(property)?.important === true && !important) continue;
    declarations.set(property, { value, important });
  }
  return declarations;
}

interface RuleGround {
  readonly isConditional: boolean;
  readonly order: number;
  readonly declarations: ReadonlyMap<string, Declared>;
}

function readSelector(text: string, ground: RuleGround): StyleRule {
  const { isConditional, order, declarations } = ground;
  const match = PLAIN_SELECTOR.exec(text);
  if (match === null || text === '' || isConditional) {
    return { tag: '', id: '', classes: [], isOpaque: true, weight: 0, order, declarations };
  }
  const tag = match[1] === undefined || match[1] === '*' ? '' : match[1];
  const parts = match[2]!.match(/[.#][^.#]+/g) ?? [];
  const ids = parts.filter((part) => part.startsWith('#')).map((part) => part.slice(1));
  const classes = parts.filter((part) => part.startsWith('.')).map((part) => part.slice(1));
  const weight = ids.length * 1_000_000 + classes.length * 1_000 + (tag === '' ? 0 : 1);
  return { tag, id: ids[0] ?? '', classes, isOpaque: ids.length > 1, weight, order, declarations };
}

/** Reads the rules of one sheet; blocks inside a condition count as not understood. */
function readRules(css: string, into: StyleRule[]): void {
  const text = css.replace(/\/\*[\s\S]*?\*\//g, ' ').replace(/<!--|-->/g, ' ');
  const brace = /[{};]/g;
  let start = 0;
  let depth = 0;
  let head = '';
  for (let match = brace.exec(text); match !== null; match = brace.exec(text)) {
    const piece = text.slice(start, match.index).trim();
    if (match[0] === ';') {
      // A semicolon outside a block ends an at-rule; inside, it parts declarations.
      if (head === '') start = match.index + 1;
      continue;
    }
    start = match.index + 1;
    if (match[0] === '{') {
      if (piece.startsWith('@')) depth += 1;
      else head = piece;
    } else if (head !== '') {
      const declarations = readDeclarations(piece);
      for (const selector of head.split(',')) {
        into.push(readSelector(selector.trim(), { isConditional: depth > 0, order: into.length, declarations }));
      }
      head = '';
    } else if (depth > 0) depth -= 1;
  }
}

function keyOf(rule: StyleRule): string {
  if (rule.id !== '') return `#${rule.id}`;
  if (rule.classes.length > 0) return `.${rule.classes[0]}`;
  return rule.tag === '' ? '*' : rule.tag;
}

/** Reads all style sheets of a file. */
export function readStyleBook(tree: WitnessTree): StyleBook {
  const rules: StyleRule[] = [];
  const texts: string[] = [];
  for (const element of tree.elements) {
    if (element.kind !== 'style') continue;
    if (!element.id.startsWith(COPY_RULES)) texts.push(element.text);
    readRules(element.text, rules);
  }
  const byKey = new Map<string, StyleRule[]>();
  const opaqueProperties = new Set<string>();
  for (const rule of rules) {
    if (rule.isOpaque) {
      for (const property of rule.declarations.keys()) opaqueProperties.add(property);
      continue;
    }
    const list = byKey.get(keyOf(rule));
    if (list === undefined) byKey.set(keyOf(rule), [rule]);
    else list.push(rule);
  }
  return { rules, byKey, opaqueProperties, text: texts.join('\n').trim() };
}

/** Class names of an element. */
export function classesOf(element: WitnessElement): readonly string[] {
  return (
    attributeOf(element, 'class')
      ?.split(/\s+/)
      .filter((name) => name !== '') ?? []
  );
}

/** The understood rules that match an element, weakest first. */
export function matchRules(book: StyleBook, element: WitnessElement): readonly StyleRule[] {
  if (book.rules.length === 0) return [];
  const classes = classesOf(element);
  const keys = ['*', element.local, `#${element.id}`, ...classes.map((name) => `.${name}`)];
  const found: StyleRule[] = [];
  for (const key of new Set(keys)) {
    for (const rule of book.byKey.get(key) ?? []) {
      const fits =
        (rule.tag === '' || rule.tag === element.local) &&
        (rule.id === '' || rule.id === element.id) &&
        rule.classes.every((name) => classes.includes(name));
      if (fits) found.push(rule);
    }
  }
  return found.length < 2 ? found : found.sort((a, b) => a.weight - b.weight || a.order - b.order);
}
