// The last line of a run is its count, and what was skipped is named with the reason.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from './tree.js';

const REPORTER = join(ROOT, 'tests', 'house', 'count-reporter.ts');
const CONFIG = `export default { test: { include: ['*.test.ts'], reporters: ['default', ${JSON.stringify(REPORTER)}] } };`;
const WITNESSES = join(ROOT, 'tests', 'house', 'witnesses.ts');

/** Two that pass, one that fails, and one that needs a witness which is nowhere. */
const TESTS = `import { expect, it, vi } from 'vitest';
vi.mock('node:fs', () => ({ existsSync: () => false }));
const { describeWith } = await import(${JSON.stringify(WITNESSES)});
it('a', () => expect(1).toBe(1));
it('b', () => expect(1).toBe(1));
it('c', () => expect(1).toBe(2));
describeWith('librsvg', 'd', () => it('e', () => expect(1).toBe(2)));
`;

let folder = '';

// Inside the project, so that the packages are found from there.
beforeAll(() => {
  mkdirSync(join(ROOT, 'out'), { recursive: true });
  folder = mkdtempSync(join(ROOT, 'out', 'reporter-'));
  writeFileSync(join(folder, 'vitest.config.ts'), CONFIG);
  writeFileSync(join(folder, 'case.test.ts'), TESTS);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(ci: boolean): { readonly lines: readonly string[]; readonly err: string; readonly status: number | null } {
  const { CI: _, ...others } = process.env;
  const env = { ...others, NO_COLOR: '1', ...(ci ? { CI: 'true' } : {}) };
  const vitest = join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
  const ran = spawnSync(process.execPath, [vitest, 'run'], { cwd: folder, env, encoding: 'utf8' });
  return { lines: ran.stdout.trimEnd().split('\n'), err: ran.stderr, status: ran.status };
}

describe('a run', { timeout: 60_000 }, () => {
  it('ends with its count, and names what was skipped for want of a witness', () => {
    const { lines, status } = run(false);
    expect(lines.at(-1)).toBe('2 passed, 1 failed, 1 skipped');
    expect(lines).toContain('SKIPPED d (librsvg is missing; Debian package librsvg2-tests) > e');
    expect(status).toBe(1);
  });

  it('skips nothing on CI', () => {
    const { lines, err } = run(true);
    expect(lines.at(-1)).toBe('2 passed, 2 failed, 0 skipped');
    expect(err).toContain('librsvg is missing; Debian package librsvg2-tests');
  });
});
