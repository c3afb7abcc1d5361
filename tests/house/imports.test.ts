// The import table is held by the program as it stands, and every line of it bites.
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type IConfiguration, type ICruiseResult } from 'dependency-cruiser';
import { afterAll, describe, expect, it } from 'vitest';
import { ROOT, readText } from './tree.js';

const config = createRequire(import.meta.url)('../../.dependency-cruiser.cjs') as IConfiguration;
const scratch = mkdtempSync(join(tmpdir(), 'pinbar-imports-'));

afterAll(() => rmSync(scratch, { recursive: true }));

/** Names of the rules that files of a folder break. */
async function listBroken(baseDir: string): Promise<readonly string[]> {
  const { options, ...ruleSet } = config;
  const { tsConfig: _, ...others } = options!;
  const { output } = await cruise(['src'], { ...others, baseDir, validate: true, ruleSet });
  const { violations } = (output as ICruiseResult).summary;
  return [
    ...new Set(violations.map(({ rule, from, to }) => (baseDir === ROOT ? `${rule.name}: ${from} ${to}` : rule.name))),
  ];
}

/** A house of two files and a door that reaches both. */
async function breakTable(from: string, to: string, line?: string): Promise<readonly string[]> {
  const folder = mkdtempSync(join(scratch, 'house-'));
  const put = (path: string, text: string): void => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  put('package.json', '{"type":"module","dependencies":{}}');
  put('tests/case.ts', 'export type Case = 1;');
  put(`src/${to}.ts`, 'export type A = 1;');
  const up = '../'.repeat(from.split('/').length - 1) || './';
  put(`src/${from}.ts`, line ?? `import type { A } from '${up}${to}.js';\nexport type B = A;`);
  if (from !== 'index')
    put('src/index.ts', `export type { B } from './${from}.js';\nexport type { A } from './${to}.js';`);
  return listBroken(folder);
}

const roomRules = config.forbidden!.filter(({ name }) => name!.startsWith('room-'));
const allowedOf = (comment: string): readonly string[] => comment.replace(/^.* may import /, '').split(', ');
const rooms = roomRules.map(({ name, comment }) => ({ room: name!.slice(5), allowed: allowedOf(comment!) }));
const trespasses = rooms.flatMap(({ room, allowed }) =>
  rooms
    .map((other) => other.room)
    .filter((to) => to !== room && !allowed.includes(to))
    .map((to) => ({ room, to })),
);

describe('imports', () => {
  it('have a line for every room, and no line without a room', () => {
    const there = readdirSync(join(ROOT, 'src'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
    const filled = there.map(({ name }) => name).filter((name) => readdirSync(join(ROOT, 'src', name)).length > 0);
    expect(filled.sort()).toEqual(
      [...rooms.map(({ room }) => room), 'cli', 'disk', 'hot-folder', 'page', 'road'].sort(),
    );
  });

  it('keep to the table', async () => {
    expect(await listBroken(ROOT)).toEqual([]);
  }, 60_000);

  it('of every trespass are found', async () => {
    const missed: string[] = [];
    for (const { room, to } of trespasses) {
      const broken = await breakTable(`${room}/b`, `${to}/a`);
      if (!broken.includes(`room-${room}`)) missed.push(`${room} -> ${to}`);
    }
    expect(trespasses.length).toBeGreaterThan(100);
    expect(missed).toEqual([]);
  }, 120_000);

  it.each([
    ['a stage that knows the road', 'write/b', 'pipeline', undefined, 'room-write'],
    ['a stage that knows a rim', 'write/b', 'cli/a', undefined, 'room-write'],
    ['a room without a line', 'attic/b', 'model/a', undefined, 'known-rooms'],
    ['a road that knows a rim', 'pipeline', 'cli/a', undefined, 'road'],
    ['a part of the road that knows the whole', 'road/b', 'pipeline', undefined, 'road-below-pipeline'],
    ['a rim that knows a stage', 'cli/b', 'split/a', undefined, 'rim-cli'],
    ['a page that knows a stage', 'page/b', 'split/a', undefined, 'rim-page'],
    ['a road that knows the page', 'pipeline', 'page/a', undefined, 'road'],
    ['a hot folder that knows the command', 'hot-folder/b', 'cli/a', undefined, 'rim-hot-folder'],
    ['a shared part of the rims that knows one', 'disk/b', 'cli/a', undefined, 'rim-disk'],
    [
      'a built-in module in the core',
      'write/b',
      'model/a',
      "import 'node:fs';\nexport type B = 1;",
      'no-platform-in-core',
    ],
    [
      'a package that is not declared',
      'write/b',
      'model/a',
      "import 'vitest';\nexport type B = 1;",
      'no-undeclared-package',
    ],
    ['a file that is not there', 'write/b', 'model/a', "import './c.js';\nexport type B = 1;", 'no-unresolved'],
    [
      'a test in the program',
      'write/b',
      'model/a',
      "export type { Case as B } from '../../tests/case.js';",
      'no-tests-in-source',
    ],
    [
      'a circle of types',
      'write/b',
      'write/a',
      "import type { B as C } from '../index.js';\nexport type B = C;",
      'no-circle',
    ],
    ['a file that nobody reaches', 'index', 'write/a', "export type { A } from './pipeline.js';", 'no-unreachable'],
    ['a file without any tie', 'index', 'write/a', 'export type A = 1;', 'no-orphan'],
  ])('of %s are found', async (_name, from, to, line, rule) => {
    expect(await breakTable(from, to, line)).toContain(rule);
  });

  it('are told in DEVELOPERS.md as they are held', () => {
    const manual = readText('DEVELOPERS.md');
    for (const { room, allowed } of rooms) {
      expect(manual).toMatch(new RegExp(`^\\| \`${room}/\` \\| [^|]+ \\| ${allowed.join(', ')} \\|$`, 'm'));
    }
  });
});
