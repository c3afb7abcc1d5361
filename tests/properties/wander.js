// Runs every test with properties from new seeds, and asks the browser about new documents: `npm run wander [-- ROUNDS]`.
// What fails names its seed or its document.
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

/** Runs tests with some variables of the environment; true where all passed. */
function run(args, variables) {
  const { status } = spawnSync('npx', ['vitest', 'run', '--reporter=dot', ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...variables },
  });
  return status === 0;
}

for (let round = 1; round <= rounds; round += 1) {
  const seed = randomInt(1, 2 ** 31);
  const first = 1 + randomInt(2 ** 20) * 500;
  process.stdout.write(`Round ${round} of ${rounds}: PROPERTY_SEED=${seed} DOCUMENTS_FROM=${first}\n`);
  const isSteady = run(files, { PROPERTY_SEED: String(seed) });
  const browser = ['tests/oracles/browser/browser.test.ts', '-t', 'asked about generated'];
  const isAgreed = run(browser, { DOCUMENTS_FROM: String(first) });
  if (!isSteady || !isAgreed) process.exitCode = 1;
}
