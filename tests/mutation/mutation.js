// Breaks the code of a room on purpose, one place at a time, and counts what its tests do not notice.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const ROOMS = ['geometry', 'source', 'verify'];
const USAGE = `npm run mutation [-- ${ROOMS.join(' | ')} [file.ts ...]]`;

const root = join(import.meta.dirname, '..', '..');
const stryker = join(
  dirname(createRequire(import.meta.url).resolve('@stryker-mutator/core/package.json')),
  'bin',
  'stryker.js',
);

/** Mutates the files of a room, all of them where none are named; true where enough mutants were noticed. */
function mutate(room, files) {
  const folder = `reports/mutation/${room}`;
  const mutated = files.length === 0 ? [`src/${room}/**/*.ts`] : files.map((file) => `src/${room}/${file}`);
  const options = ['--mutate', mutated.join(','), '--incrementalFile', `${folder}/incremental.json`];
  const { status } = spawnSync(process.execPath, [stryker, 'run', 'stryker.config.json', ...options], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, PINBAR_ROOM: room },
  });
  return status === 0;
}

const [room, ...files] = process.argv.slice(2);
if (room !== undefined && !ROOMS.includes(room)) {
  process.stderr.write(`${USAGE}\n`);
  process.exitCode = 64;
} else {
  const rooms = room === undefined ? ROOMS : [room];
  process.exitCode = rooms.map((name) => mutate(name, files)).every(Boolean) ? 0 : 1;
}
