// README and DEVELOPERS.md say what is there, and all of it; so do the version and the lock file.
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { EXIT } from '../../src/cli/exit-code.js';
import { PINBAR_VERSION } from '../../src/model/version.js';
import { DEFAULT_TICKET } from '../../src/ticket/default-ticket.js';
import { parse, readFiles, readText, walk } from './tree.js';

interface Manifest {
  readonly version: string;
  readonly scripts: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

const manifest = JSON.parse(readText('package.json')) as Manifest;
const readme = readText('README.md');
const manual = readText('DEVELOPERS.md');

/** Options that are declared in src/cli, from `.option('--x …')` and `new Option('--x …')`. */
function listOptions(): readonly string[] {
  const calls = readFiles(/^src\/cli\/.*\.ts$/)
    .flatMap((file) => [...walk(parse(file))])
    .filter((node) => ts.isCallExpression(node) || ts.isNewExpression(node))
    .filter((node) => /(?:^|\.|required)[oO]ption$/.test(node.expression.getText()));
  const flags = calls
    .map((call) => call.arguments?.[0])
    .filter((flag) => flag !== undefined && ts.isStringLiteral(flag));
  return [...new Set(flags.flatMap((flag) => (flag as ts.StringLiteral).text.match(/--[a-z-]+/g) ?? []))].sort();
}

describe('README', () => {
  const options = listOptions();

  it('tells every option of the command line', () => {
    expect(options.length).toBeGreaterThan(15);
    expect(options.filter((option) => !new RegExp(`${option}(?![a-z-])`).test(readme))).toEqual([]);
  });

  it('tells no option that is not there', () => {
    const told = readme.match(/(?<![\w-])--[a-z][a-z-]*/g) ?? [];
    expect([...new Set(told)].filter((option) => !options.includes(option))).toEqual([]);
  });

  it('tells every number of the checks, and its default', () => {
    const table = readme.split('### Numbers of the checks')[1]!.split('\n### ')[0]!;
    const rows = table.split('\n').filter((row) => row.startsWith('| `'));
    const told = rows.flatMap((row): (readonly [string, string])[] => {
      const [keys, values] = row.slice(2).split(' | ') as [string, string];
      const names = [...keys.matchAll(/`(\w+)`/g)].map(([, name]) => name!);
      const parts = names.length === 1 ? [values] : values.split(', ');
      return names.map((name, i) => [name, (parts[i] ?? parts[0]!).replaceAll('`', '')]);
    });
    const spell = (value: unknown): string => (Array.isArray(value) ? value.join(', ') : String(value));
    const wanted = Object.entries(DEFAULT_TICKET.checks).map(([name, value]) => [name, spell(value)]);
    expect(Object.fromEntries(told)).toEqual(Object.fromEntries(wanted));
  });

  it('tells every exit code', () => {
    const told = [...readme.matchAll(/^\| (\d+) \| /gm)].map(([, code]) => Number(code));
    expect(told).toEqual(Object.values(EXIT));
  });

  it('names only files that are there', () => {
    const named = readme.match(/(?<![\w/])(?:samples|tests)\/[\w./-]*\w/g) ?? [];
    const paths = readFiles(/^(?:samples|tests)\//).map(({ path }) => path);
    const missing = [...new Set(named)].filter(
      (name) => !paths.some((path) => path === name || path.startsWith(`${name}/`)),
    );
    expect(named.length).toBeGreaterThan(5);
    expect(missing).toEqual([]);
  });
});

describe('options', () => {
  it('are each used by a test', () => {
    const tests = readFiles(/^tests\/(?:rims|unit\/cli|findings)\/.*\.(?:ts|json)$/).map(({ text }) => text);
    expect(listOptions().filter((option) => !tests.some((text) => text.includes(option)))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  it('says of every dependency why it is there', () => {
    const names = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(names.filter((name) => !manual.includes(`| \`${name}\` |`))).toEqual([]);
  });

  it('says it of nothing that is not there', () => {
    const told = [
      ...manual
        .split('## Dependencies')[1]!
        .split('\n## ')[0]!
        .matchAll(/^\| `([^`]+)` \|/gm),
    ].map((m) => m[1]!);
    expect(told.filter((name) => !(name in manifest.dependencies) && !(name in manifest.devDependencies))).toEqual([]);
  });

  it('names only scripts that are there', () => {
    const told = [...manual.matchAll(/npm run ([a-z-]+)/g)].map(([, name]) => name!);
    expect([...new Set(told)].filter((name) => !(name in manifest.scripts))).toEqual([]);
  });
});

describe('the version', () => {
  it('is the same in the program, its package and its history', () => {
    expect(PINBAR_VERSION).toBe(manifest.version);
    expect(readText('CHANGELOG.md')).toContain(`## ${manifest.version}\n`);
  });
});

describe('the lock file', () => {
  const { packages } = JSON.parse(readText('package-lock.json')) as {
    packages: Record<
      string,
      { integrity?: string; resolved?: string; hasInstallScript?: boolean; dev?: boolean; optional?: boolean }
    >;
  };
  const entries = Object.entries(packages).filter(([path]) => path !== '');

  it('holds the hash of every package and the host of none', () => {
    expect(entries.length).toBeGreaterThan(50);
    expect(
      entries.filter(([, entry]) => !/^sha512-/.test(entry.integrity ?? '') || entry.resolved).map(([path]) => path),
    ).toEqual([]);
  });

  it('holds nothing that runs when it is installed with pinbar', () => {
    expect(entries.filter(([, entry]) => entry.hasInstallScript && !entry.dev).map(([path]) => path)).toEqual([]);
  });
});
