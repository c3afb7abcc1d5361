// npm run oracles: asks the browser about every file and prints what was compared; with --record its answers are written down.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');
const isRecording = process.argv.includes('--record');
mkdirSync(join(import.meta.dirname, 'browser/recorded'), { recursive: true });
const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
const update = isRecording ? ['--update'] : [];
const { status } = spawnSync(process.execPath, [vitest, 'run', 'tests/oracles', ...update], {
  cwd: ROOT,
  stdio: 'inherit',
  env: { ...process.env, ORACLES: isRecording ? 'record' : 'tell' },
});
process.exitCode = status ?? 1;
