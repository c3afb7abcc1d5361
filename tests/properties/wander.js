// Runs every test with properties from new seeds: `npm run wander [-- ROUNDS]`. A counterexample names its seed.
import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..', '..');
const rounds = Number(process.argv[2] ?? 1);

const files = readdirSync(join(root, 'tests'), { recursive: true })
  .filter((path) => path.endsWith('.test.ts'))
  .map((path) => join('tests', path))
  .filter((path) => readFileSync(join(root, path), 'utf8').includes("'fast-check'"));

for (let round = 1; round <= rounds; round += 1) {
  const seed = randomInt(1, 2 ** 31);
  process.stdout.write(`Round ${round} of ${rounds}, PROPERTY_SEED=${seed}, ${files.length} files\n`);
  const { status } = spawnSync('npx', ['vitest', 'run', '--reporter=dot', ...files], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, PROPERTY_SEED: String(seed) },
  });
  if (status !== 0) process.exitCode = 1;
}
