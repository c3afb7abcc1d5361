// Rules about what may stand in the code of src.
import ts from 'typescript';
import type { Rule } from './file-rules.js';
import { parse, placeOf, type TreeFile, walk } from './tree.js';

function findNodes(file: TreeFile, isBad: (node: ts.Node) => boolean): readonly string[] {
  return [...walk(parse(file))].filter(isBad).map((node) => `${placeOf(node)}: ${node.getText().split('\n')[0]}`);
}

/** A name that is used, not one that is declared, a key, or the part of a member behind the dot. */
function isFreeName(node: ts.Node): node is ts.Identifier {
  if (!ts.isIdentifier(node)) return false;
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  return !(ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent) || ts.isImportSpecifier(parent));
}

function isCallOf(node: ts.Node, object: string, name: string): boolean {
  return ts.isPropertyAccessExpression(node) && node.expression.getText() === object && node.name.text === name;
}

const CLOCK_AND_LOCALE = new Set(['Date', 'Intl', 'performance', 'Temporal', 'process', 'console']);

/** No clock, locale, chance, process or console: same input, same bytes. */
export const findChance: Rule = (file) =>
  findNodes(file, (node) => {
    if (isFreeName(node)) return CLOCK_AND_LOCALE.has(node.text);
    if (isCallOf(node, 'Math', 'random')) return true;
    return ts.isPropertyAccessExpression(node) && /^(?:toLocale\w*|localeCompare)$/.test(node.name.text);
  });

/** Only model/platform.ts speaks to the platform. */
export const findPlatform: Rule = (file) =>
  file.path === 'src/model/platform.ts'
    ? []
    : findNodes(file, (node) => isFreeName(node) && node.text === 'globalThis');

/** No power function: its last digit differs between versions of Node. */
export const findPower: Rule = (file) =>
  findNodes(
    file,
    (node) =>
      isCallOf(node, 'Math', 'pow') ||
      node.kind === ts.SyntaxKind.AsteriskAsteriskToken ||
      node.kind === ts.SyntaxKind.AsteriskAsteriskEqualsToken,
  );

const UNIT_NUMBERS = new Set([25.4, 2.54, 96, 72]);

/** A key of a table that is named by a number: a word, not a length. */
function isKey(node: ts.Node): boolean {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent)) return parent.name === node;
  if (ts.isBindingElement(parent)) return parent.propertyName === node;
  return ts.isElementAccessExpression(parent) && parent.argumentExpression === node;
}

/** One file knows 25.4, 72 and 96. In hexadecimal a number is a letter or a bit. */
export const findUnitNumbers: Rule = (file) =>
  file.path === 'src/geometry/units.ts'
    ? []
    : findNodes(
        file,
        (node) =>
          ts.isNumericLiteral(node) &&
          UNIT_NUMBERS.has(Number(node.text)) &&
          !/^0x/i.test(node.getText()) &&
          !isKey(node),
      );

function isExported(node: ts.Node): boolean {
  return ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword);
}

/** Everything exported says what it is; constants without a blank line between share the words of the first. */
export const findUndocumented: Rule = (file) => {
  const found: string[] = [];
  let before: ts.Statement | null = null;
  for (const node of parse(file).statements) {
    const follows: boolean = before !== null && ts.isVariableStatement(before) && ts.isVariableStatement(node);
    const adjoins: boolean = follows && node.getFullText().startsWith('\n') && !/^\s*\n\s*\n/.test(node.getFullText());
    const documented: boolean = ts.getJSDocCommentsAndTags(node).length > 0 || adjoins;
    before = documented ? node : null;
    if (isExported(node) && !documented) found.push(`${placeOf(node)}: ${node.getText().split('\n')[0]}`);
  }
  return found;
};

/** Classes only for errors. */
export const findClasses: Rule = (file) =>
  findNodes(
    file,
    (node) =>
      ts.isClassLike(node) &&
      !(node.heritageClauses ?? []).some((clause) =>
        clause.types.some((type) => /Error$/.test(type.expression.getText())),
      ),
  );

const GROWING = /^new (?:Weak)?(?:Map|Set)\b/;
const MUTABLE_TYPE = /^$|^(?:Map|Set)\b/;

/** Nothing that outlives a call and can change: no `let` outside functions, no map or set that is not read-only. */
export const findModuleState: Rule = (file) =>
  parse(file)
    .statements.filter(ts.isVariableStatement)
    .flatMap((statement) => {
      const constant = (statement.declarationList.flags & ts.NodeFlags.Const) !== 0;
      return statement.declarationList.declarations.filter((declared) => {
        if (!constant) return true;
        const made = declared.initializer;
        if (made === undefined || !ts.isNewExpression(made) || !GROWING.test(made.getText())) return false;
        const isEmpty = (made.arguments ?? []).length === 0;
        return made.getText().startsWith('new Weak') || (isEmpty && MUTABLE_TYPE.test(declared.type?.getText() ?? ''));
      });
    })
    .map((declared) => `${placeOf(declared)}: ${declared.getText().split('\n')[0]}`);

/** Names of the packages a file imports. */
export function listPackages(file: TreeFile): readonly string[] {
  const names = [...walk(parse(file))].flatMap((node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier ?? [];
    const isImport = ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword;
    return isImport ? (node.arguments[0] ?? []) : [];
  });
  return names
    .map((name) => (name as ts.StringLiteral).text)
    .filter((name) => !/^(?:\.|node:)/.test(name))
    .map((name) =>
      name
        .split('/')
        .slice(0, name.startsWith('@') ? 2 : 1)
        .join('/'),
    );
}
