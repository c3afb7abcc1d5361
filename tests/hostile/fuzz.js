// Runs the fuzzer longer than the tests do, from a new seed: `npm run fuzz -- 5000000 [seed]`.
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { join } from 'node:path';

const [runs = '2000000', seed = String(randomInt(2 ** 31))] = process.argv.slice(2);
process.stdout.write(`${runs} runs from seed ${seed}\n`);
const vitest = join(import.meta.dirname, '../../node_modules/vitest/vitest.mjs');
const { status } = spawnSync(process.execPath, [vitest, 'run', 'tests/hostile/fuzz.test.ts'], {
  stdio: 'inherit',
  env: { ...process.env, PINBAR_FUZZ_RUNS: runs, PINBAR_FUZZ_SEED: seed },
});
process.exitCode = status ?? 1;
