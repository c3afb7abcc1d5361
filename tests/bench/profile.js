// Where the time of a job goes: node tests/bench/profile.js [WAY] [MB], by folder of src and by function.
// The engine's own sampling profiler looks; a job under it takes some longer than without.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawLayered } from './draw-layered.js';

const MB = 1024 * 1024;
const MOST_FUNCTIONS = 25;
const [way = 'split', sizeMb = '50'] = process.argv.slice(2);

/** The profile of one job in a process of its own. */
function profile(scratch) {
  const file = join(scratch, 'bench.svg');
  const made = join(scratch, 'made');
  writeFileSync(file, drawLayered(Number(sizeMb) * MB).bytes);
  mkdirSync(made);
  const options = ['--cpu-prof', `--cpu-prof-dir=${scratch}`, '--max-old-space-size=8192'];
  const { status, stderr } = spawnSync(
    process.execPath,
    [...options, join(import.meta.dirname, 'job.js'), way, file, made],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
  const name = readdirSync(scratch).find((entry) => entry.endsWith('.cpuprofile'));
  return JSON.parse(readFileSync(join(scratch, name), 'utf8'));
}

/** The file of src of each line of a joined file: the joiner names each before its text. */
function readOrigins(url) {
  let origin = '';
  return readFileSync(fileURLToPath(url), 'utf8')
    .split('\n')
    .map((line) => {
      origin = /^\/\/#region (\S+)/.exec(line)?.[1] ?? /^\/\/ (\S+\/\S+\.[jt]s)$/.exec(line)?.[1] ?? origin;
      return origin;
    });
}

const origins = new Map();

/** Where a function stands: a folder of src, a library, or the engine. */
function placeOf({ functionName, url, lineNumber }) {
  if (functionName === '(garbage collector)') return 'collecting garbage';
  if (!url.startsWith('file:')) return 'engine: loading, reading, writing';
  if (!url.includes('/dist/')) return 'the benchmark';
  if (!origins.has(url)) origins.set(url, readOrigins(url));
  const origin = origins.get(url)[lineNumber] ?? '';
  return (
    /(?:^|\/)(src\/[^/]+)\//.exec(origin)?.[1] ?? (/node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(origin)?.[1] || 'joined')
  );
}

function add(sums, key, value) {
  sums.set(key, (sums.get(key) ?? 0) + value);
}

function print(title, sums, total, most) {
  process.stdout.write(`\n${title}\n`);
  for (const [key, us] of [...sums].sort((a, b) => b[1] - a[1]).slice(0, most)) {
    process.stdout.write(
      `${(us / 1000).toFixed(0).padStart(8)} ms ${((100 * us) / total).toFixed(1).padStart(5)} %  ${key}\n`,
    );
  }
}

const scratch = mkdtempSync(join(tmpdir(), 'pinbar-profile-'));
try {
  const { nodes, samples, timeDeltas } = profile(scratch);
  const frames = new Map(nodes.map(({ id, callFrame }) => [id, callFrame]));
  const [places, functions] = [new Map(), new Map()];
  let total = 0;
  for (const [at, id] of samples.entries()) {
    const frame = frames.get(id);
    if (frame.functionName === '(idle)') continue;
    total += timeDeltas[at];
    const place = placeOf(frame);
    add(places, place, timeDeltas[at]);
    add(functions, `${frame.functionName || '(no name)'}, ${place}`, timeDeltas[at]);
  }
  process.stdout.write(`${way} of ${sizeMb} MB: ${(total / 1000).toFixed(0)} ms\n`);
  print('by place', places, total, Infinity);
  print('by function', functions, total, MOST_FUNCTIONS);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
