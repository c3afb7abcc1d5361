// npm run crash: every call of a four-job run under every fault; takes an hour.
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
const { status } = spawnSync(process.execPath, [vitest, 'run', 'tests/crash'], {
  cwd: ROOT,
  stdio: 'inherit',
  env: { ...process.env, CRASH: 'all' },
});
process.exitCode = status ?? 1;
