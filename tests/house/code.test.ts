// The rules of the house, over every file; each rule is also shown a file that breaks it.
import { describe, expect, it } from 'vitest';
import {
  findChance,
  findClasses,
  findModuleState,
  findPlatform,
  findPower,
  findUndocumented,
  findUnitNumbers,
  listPackages,
} from './code-rules.js';
import {
  findBadName,
  findBarrel,
  findLongFile,
  findLongFunctions,
  findMissingPurpose,
  type Rule,
} from './file-rules.js';
import { readFiles, readText } from './tree.js';

const SOURCE = /^src\/.*(?<!\.d)\.ts$/;
const CORE = /^src\/(?!(?:cli|disk|hot-folder|page)\/).*(?<!\.d)\.ts$/;
const WRITERS = /^src\/(?:geometry|mark|split|write)\/.*\.ts$/;
const CODE = /^(?:src|bin|tests)\/.*(?<!\.d)\.[jt]s$/;

interface Case {
  readonly name: string;
  readonly rule: Rule;
  readonly where: RegExp;
  /** Files that break the rule; the path is src/room/file.ts unless said. */
  readonly breaks: readonly (string | { readonly path: string })[];
}

const LONG = 'x;\n'.repeat(61);

const CASES: readonly Case[] = [
  { name: 'at most 300 lines', rule: findLongFile, where: SOURCE, breaks: ['x;\n'.repeat(301)] },
  {
    name: 'at most 60 lines a function',
    rule: findLongFunctions,
    where: SOURCE,
    breaks: [`function f() {${LONG}}`, `const f = () => {${LONG}};`, `const o = { f() {${LONG}} };`],
  },
  {
    name: 'a first line that says what it is for',
    rule: findMissingPurpose,
    where: CODE,
    breaks: ["import x from 'x';", '/** Doc. */', '//', ''],
  },
  {
    name: 'a name in kebab case that says something',
    rule: findBadName,
    where: /^(?:src|bin|tests)\/.*\.[jt]s$/,
    breaks: [
      { path: 'src/room/pathBox.ts' },
      { path: 'src/room/path_box.ts' },
      { path: 'src/utils/box.ts' },
      { path: 'src/room/helpers.ts' },
    ],
  },
  { name: 'no folder barrels', rule: findBarrel, where: SOURCE, breaks: [{ path: 'src/room/index.ts' }] },
  {
    name: 'no clock, locale, chance, process or console in the core',
    rule: findChance,
    where: CORE,
    breaks: [
      'new Date();',
      'Math.random();',
      'a.toLocaleString();',
      'a.localeCompare(b);',
      'Intl.Collator;',
      'performance.now();',
      'process.env;',
      'console.log(1);',
    ],
  },
  { name: 'one file speaks to the platform', rule: findPlatform, where: CORE, breaks: ['globalThis.x;'] },
  {
    name: 'no power function in geometry and writers',
    rule: findPower,
    where: WRITERS,
    breaks: ['Math.pow(2, 3);', '2 ** 3;', 'a **= 2;'],
  },
  {
    name: 'one file knows 25.4, 72 and 96',
    rule: findUnitNumbers,
    where: SOURCE,
    breaks: ['const a = b / 25.4;', 'f(96);', 'const dpi = 72.0;', 'const o = b * 2.54;', 'const o = { in: 25.4 };'],
  },
  {
    name: 'a docstring for everything exported',
    rule: findUndocumented,
    where: SOURCE,
    breaks: [
      '// x\nexport const a = 1;',
      'export function f() {}',
      'export interface I {}',
      'export type T = 1;',
      '/** x */\nexport const a = 1;\n\nexport const b = 2;',
    ],
  },
  {
    name: 'classes only for errors, and for shapes whose boxes wait (see DEVELOPERS.md)',
    rule: findClasses,
    where: /^src\/(?!resolve\/resolved-shape\.ts$).*(?<!\.d)\.ts$/,
    breaks: ['class A {}', 'class B extends A {}'],
  },
  {
    name: 'no state outside functions',
    rule: findModuleState,
    where: SOURCE,
    breaks: ['let a = 1;', 'const a = new Map();', 'const a = new WeakMap();', 'const a: Set<1> = new Set();'],
  },
];

describe.each(CASES)('$name', ({ rule, where, breaks }) => {
  it('holds everywhere', () => {
    const files = readFiles(where);
    expect(files.length).toBeGreaterThan(5);
    expect(files.flatMap(rule)).toEqual([]);
  });

  it.each(breaks)('bites (%#)', (broken) => {
    const file = typeof broken === 'string' ? { path: 'src/room/file.ts', text: broken } : { ...broken, text: '' };
    expect(rule(file)).toHaveLength(1);
  });
});

describe('packages', () => {
  const entries = readFiles(SOURCE).flatMap((file) =>
    [...new Set(listPackages(file))].map((name) => ({ name, path: file.path })),
  );

  it('enter by one file each', () => {
    const names = [...new Set(entries.map(({ name }) => name))];
    const doors = names.map((name) => ({
      name,
      paths: entries.filter((entry) => entry.name === name).map((e) => e.path),
    }));
    expect(doors.filter(({ paths }) => paths.length > 1)).toEqual([]);
  });

  it('are all in use and all declared', () => {
    const first = readText('DEVELOPERS.md').split('## Dependencies')[1]!.split('And for building')[0]!;
    const told = [...first.matchAll(/^\| `([^`]+)` \|/gm)].map(([, name]) => name!);
    expect([...new Set(entries.map(({ name }) => name))].sort()).toEqual(told.sort());
    const { dependencies } = JSON.parse(readText('package.json')) as { dependencies: Record<string, string> };
    expect(Object.keys(dependencies).filter((name) => !told.includes(name))).toEqual([]);
  });
});

describe('tests', () => {
  it('of a unit mirror a file of src', () => {
    const sources = readFiles(SOURCE).map(({ path }) => path);
    const lost = readFiles(/^tests\/unit\/.*\.test\.ts$/)
      .map(({ path }) => path.replace(/^tests\/unit\/(.*)\.test\.ts$/, 'src/$1.ts'))
      .filter((path) => !sources.includes(path));
    expect(lost).toEqual([]);
  });
});
