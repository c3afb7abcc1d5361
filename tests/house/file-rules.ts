// Rules about a file as a whole: its name, its first line, its length, how long its functions are.
import ts from 'typescript';
import { parse, placeOf, type TreeFile, walk } from './tree.js';

/** A rule: says what is wrong with a file, one line each. */
export type Rule = (file: TreeFile) => readonly string[];

const LINES_PER_FILE = 300;
const LINES_PER_FUNCTION = 60;
const EMPTY_NAMES = /^(?:utils?|helpers?|managers?|common|misc|shared|tools?)$/;

function countLines(text: string): number {
  return text.trimEnd().split('\n').length;
}

/** At most 300 lines. */
export const findLongFile: Rule = ({ path, text }) => {
  const lines = countLines(text);
  return lines > LINES_PER_FILE ? [`${path}: ${lines} lines`] : [];
};

/** At most 60 lines a function, declarations inside counted with it. */
export const findLongFunctions: Rule = (file) =>
  [...walk(parse(file))]
    .filter((node) => ts.isFunctionLike(node) && 'body' in node && node.body !== undefined)
    .map((node) => ({ node, lines: countLines(node.getText()) }))
    .filter(({ lines }) => lines > LINES_PER_FUNCTION)
    .map(({ node, lines }) => `${placeOf(node)}: a function of ${lines} lines`);

/** `// What it is for.` in the first line; after it where a program begins with `#!`. */
export const findMissingPurpose: Rule = ({ path, text }) => {
  const [first, second] = text.split('\n');
  const purpose = first?.startsWith('#!') ? second : first;
  return /^\/\/ \S.*[.:;,?!)\w]$/.test(purpose ?? '') ? [] : [`${path}: ${purpose}`];
};

/** Kebab case, and a word that says what is in it. */
export const findBadName: Rule = ({ path }) => {
  const parts = path.split('/').map((part) => part.replace(/(?:\.(?:d|test|config))?\.(?:[cm]?[jt]s|svg|json)$/, ''));
  const bad = parts.filter((part) => EMPTY_NAMES.test(part) || !/^\.?[a-z0-9]+(?:-[a-z0-9]+)*$/.test(part));
  return bad.map((part) => `${path}: ${part}`);
};

/** No folder barrels: the only index is the door. */
export const findBarrel: Rule = ({ path }) =>
  /(?:^|\/)index\.[jt]s$/.test(path) && path !== 'src/index.ts' ? [path] : [];
