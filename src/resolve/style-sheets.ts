// Style sheets and style attributes, read into rules.
import { type CssNode, generate, type List, parse, type Selector, walk } from './css-reader.js';
import type { Declaration } from './expand-declaration.js';
import { answerMedia } from './media-query.js';

/** A compound selector and the combinator before it, `''` before the first. */
export interface SelectorStep {
  readonly combinator: string;
  /** Without comments; a type selector that asks for any namespace stands without its `*|`. */
  readonly compound: string;
}

/** One selector of a rule. */
export interface SheetSelector {
  /** Without comments. */
  readonly text: string;
  readonly tree: Selector;
  readonly steps: readonly SelectorStep[];
  /** Names of all pseudo-classes in it, nested ones included, in lower case. */
  readonly pseudoClasses: readonly string[];
  readonly pseudoElement: boolean;
}

/** A rule that applies in print, in the order of the sheet. */
export interface SheetRule {
  readonly selectors: readonly SheetSelector[];
  readonly declarations: readonly Declaration[];
  /** Line in the sheet, from 1. */
  readonly line: number;
}

/** Something in a sheet that is not applied. */
export interface SheetTrouble {
  readonly text: string;
  readonly why: 'unreadable' | 'media-unknown' | 'at-rule-unknown' | 'nested';
  readonly line: number;
}

/** What a sheet says. */
export interface Sheet {
  readonly rules: readonly SheetRule[];
  readonly troubles: readonly SheetTrouble[];
  /** Selectors of all rules, also of those that do not apply. */
  readonly selectorCount: number;
  readonly structural: boolean;
}

/** At-rules that hold no rule for an element of the page, or that are taken out of the sheets. */
export const SILENT_AT_RULES: ReadonlySet<string> = new Set([
  'charset',
  'import',
  'namespace',
  'font-face',
  'page',
  'keyframes',
  '-webkit-keyframes',
  '-moz-keyframes',
  'counter-style',
  'font-feature-values',
  'font-palette-values',
  'color-profile',
  'view-transition',
]);

const STRUCTURAL_NAME = /^(?:nth-|first-|last-|only-)|^(?:empty|has)$/i;
const STRUCTURAL_TEXT = /[+~]|:(?:nth-|first-|last-|only-|empty|has\()/i;
/** Longest stretch of a sheet that a message shows. */
const SHOWN = 60;

/** Reads a style sheet as for print. Never throws: what cannot be read is a trouble. */
export function readStyleSheet(text: string): Sheet {
  const reading: Reading = { text, rules: [], troubles: [], selectorCount: 0, structural: false };
  try {
    const tree = parse(text, { parseValue: false, parseCustomProperty: false, positions: true });
    scanSelectors(tree, reading);
    if (tree.type === 'StyleSheet') readRules(tree.children, reading);
  } catch (error) {
    // Nesting beyond what the reader can follow; nothing else is expected.
    if (!(error instanceof RangeError)) throw error;
    reading.structural ||= STRUCTURAL_TEXT.test(text);
    reading.troubles.push({ text: shorten(text), why: 'unreadable', line: 1 });
  }
  return reading;
}

interface Reading {
  readonly text: string;
  readonly rules: SheetRule[];
  readonly troubles: SheetTrouble[];
  selectorCount: number;
  structural: boolean;
}

/** Counts selectors and looks for structural ones, everywhere in the sheet. */
function scanSelectors(tree: CssNode, reading: Reading): void {
  walk(tree, (node) => {
    if (node.type === 'Rule') {
      if (node.prelude.type === 'SelectorList') reading.selectorCount += node.prelude.children.size;
      else reading.structural ||= STRUCTURAL_TEXT.test(node.prelude.value);
    } else if (node.type === 'Combinator') reading.structural ||= node.name === '+' || node.name === '~';
    else if (node.type === 'PseudoClassSelector') reading.structural ||= STRUCTURAL_NAME.test(node.name);
  });
}

function readRules(nodes: List<CssNode>, reading: Reading): void {
  nodes.forEach((node) => {
    if (node.type === 'Rule') readRule(node, reading);
    else if (node.type === 'Atrule') readAtRule(node, reading);
    else if (node.type === 'Raw') addTrouble(reading, node, 'unreadable');
  });
}

function readAtRule(node: CssNode & { readonly type: 'Atrule' }, reading: Reading): void {
  const name = node.name.toLowerCase();
  if (SILENT_AT_RULES.has(name)) return;
  const block = node.block;
  if (name !== 'media' || block === null) {
    // A bare `@layer a, b;` names layers, and without their blocks nothing changes.
    if (block !== null) addTrouble(reading, node, 'at-rule-unknown');
    return;
  }
  const answer = answerMedia(node.prelude === null ? '' : generate(node.prelude));
  if (answer === 'holds') readRules(block.children, reading);
  else if (answer === 'unknown') addTrouble(reading, node, 'media-unknown');
}

function readRule(node: CssNode & { readonly type: 'Rule' }, reading: Reading): void {
  const { prelude } = node;
  if (prelude.type !== 'SelectorList') {
    addTrouble(reading, node, 'unreadable');
    return;
  }
  const selectors: SheetSelector[] = [];
  prelude.children.forEach((child) => {
    if (child.type === 'Selector') selectors.push(readSelector(child));
  });
  const declarations = readDeclarations(node.block.children, reading);
  reading.rules.push({ selectors, declarations, line: node.loc?.start.line ?? 1 });
}

function readSelector(tree: Selector): SheetSelector {
  const pseudoClasses: string[] = [];
  let pseudoElement = false;
  walk(tree, (node) => {
    if (node.type === 'PseudoElementSelector') pseudoElement = true;
    if (node.type === 'PseudoClassSelector') pseudoClasses.push(node.name.toLowerCase());
  });
  return { text: generate(tree), tree, steps: readSteps(tree), pseudoClasses, pseudoElement };
}

function readSteps(tree: Selector): readonly SelectorStep[] {
  const steps: { combinator: string; compound: string }[] = [{ combinator: '', compound: '' }];
  tree.children.forEach((node) => {
    if (node.type === 'Combinator') steps.push({ combinator: node.name, compound: '' });
    else steps.at(-1)!.compound += node.type === 'TypeSelector' ? node.name.replace(/^\*\|/, '') : generate(node);
  });
  return steps;
}

function readDeclarations(nodes: List<CssNode>, reading: Reading): readonly Declaration[] {
  const declarations: Declaration[] = [];
  nodes.forEach((node) => {
    if (node.type === 'Declaration') declarations.push(makeDeclaration(node));
    else if (node.type === 'Raw') addTrouble(reading, node, 'unreadable');
    else if (node.type === 'Rule' || node.type === 'Atrule') addTrouble(reading, node, 'nested');
  });
  return declarations;
}

function makeDeclaration(node: CssNode & { readonly type: 'Declaration' }): Declaration {
  const value = node.value.type === 'Raw' ? node.value.value : generate(node.value);
  const important = node.important === true || `${node.important}`.toLowerCase() === 'important';
  return { name: node.property, text: stripComments(value), important };
}

/** A value without comments and blanks around it. */
export function stripComments(value: string): string {
  return (value.includes('/*') ? value.replace(/\/\*[\s\S]*?\*\//g, ' ') : value).trim();
}

function addTrouble(reading: Reading, node: CssNode, why: SheetTrouble['why']): void {
  const start = node.loc?.start;
  const shown = start === undefined ? '' : reading.text.slice(start.offset, node.loc!.end.offset);
  if (/^[;\s]*$/.test(shown)) return;
  reading.troubles.push({ text: shorten(shown), why, line: start?.line ?? 1 });
}

function shorten(text: string): string {
  const line = text
    .slice(0, 4 * SHOWN)
    .replace(/\s+/g, ' ')
    .trim();
  return line.length <= SHOWN && text.length <= 4 * SHOWN ? line : `${line.slice(0, SHOWN - 3)}...`;
}

/** Declarations of a style attribute and the stretches that cannot be read. Never throws. */
export function readStyleAttribute(text: string): {
  readonly declarations: readonly Declaration[];
  readonly unreadable: readonly string[];
} {
  const plain = readPlainDeclarations(text);
  if (plain !== null) return { declarations: plain, unreadable: [] };
  const reading: Reading = { text, rules: [], troubles: [], selectorCount: 0, structural: false };
  let declarations: readonly Declaration[] = [];
  try {
    const tree = parse(text, {
      context: 'declarationList',
      parseValue: false,
      parseCustomProperty: false,
      positions: true,
    });
    if (tree.type === 'DeclarationList') declarations = readDeclarations(tree.children, reading);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { declarations: [], unreadable: [shorten(text)] };
  }
  return { declarations, unreadable: reading.troubles.map((trouble) => trouble.text) };
}

/** The common case without strings, escapes, comments, `!` or blocks; null where it is not that. */
function readPlainDeclarations(text: string): readonly Declaration[] | null {
  if (/["'\\{}[\]!@/]|\([^)]*[;(]/.test(text)) return null;
  const declarations: Declaration[] = [];
  for (const part of text.split(';')) {
    const match = /^\s*([a-z_-][\w-]*)\s*:([^:]*)$/i.exec(part);
    if (match !== null) {
      const value = match[2]!.trim();
      if (value === '' && !match[1]!.startsWith('--')) return null;
      declarations.push({ name: match[1]!, text: value, important: false });
    } else if (part.trim() !== '') return null;
  }
  return declarations;
}
