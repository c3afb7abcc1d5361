// The files of the project as the house tests look at them.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';

/** Folder of the project. */
export const ROOT: string = resolve(import.meta.dirname, '../..');

/** What is made by tools, or not ours. */
const NOT_OURS = new Set(['.git', 'node_modules', 'dist', 'out', 'reports', '.stryker-tmp']);

/** A file of the project; the path is from the root, with slashes. */
export interface TreeFile {
  readonly path: string;
  readonly text: string;
}

/** All files below a folder, by path. */
export function listFiles(folder: string = ROOT): readonly string[] {
  return readdirSync(folder)
    .filter((name) => !NOT_OURS.has(name) && !name.endsWith('.passes'))
    .sort()
    .flatMap((name) => {
      const path = join(folder, name);
      return statSync(path).isDirectory() ? listFiles(path) : [relative(ROOT, path).replaceAll('\\', '/')];
    });
}

/** Reads files whose path fits a pattern. */
export function readFiles(pattern: RegExp): readonly TreeFile[] {
  return listFiles()
    .filter((path) => pattern.test(path))
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }));
}

/** Reads one file. */
export function readText(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** The syntax tree of a file. */
export function parse({ path, text }: TreeFile): ts.SourceFile {
  return ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
}

/** Every node of a tree, parents first. */
export function* walk(node: ts.Node): Generator<ts.Node> {
  yield node;
  for (const child of node.getChildren()) yield* walk(child);
}

/** Where a node stands, as `path:line`. */
export function placeOf(node: ts.Node): string {
  const file = node.getSourceFile();
  return `${file.fileName}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
}
