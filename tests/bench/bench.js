// npm run bench: time and memory of a job against the floor and against the script that most people would write.
// Each figure is the best of several fresh processes, whole, as a user waits for them. Exit code 1 if a target is missed.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { drawLayered } from './draw-layered.js';

const HERE = import.meta.dirname;
const COMMAND = resolve(HERE, '../../bin/pinbar.js');
const RESULT = resolve(HERE, '../../out/bench.json');
const MB = 1024 * 1024;
const SIZES_MB = [1, 10, 50];

/** Ways to do the job; `slow` ones run less often on large files. */
const WAYS = [
  { way: 'floor', label: 'read and write the same bytes' },
  { way: 'naive', label: 'parse, delete, serialise, per pass', slow: true },
  { way: 'split', label: 'pinbar, not read back' },
  { way: 'read-back', label: 'pinbar, read back' },
  { way: 'both', label: 'pinbar, both judges', slow: true },
];

const scratch = mkdtempSync(join(tmpdir(), 'pinbar-bench-'));
const file = join(scratch, 'bench.svg');
const made = join(scratch, 'made');

/** Runs a process and says how long all of it took, ms. */
function time(args) {
  const begin = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  const wallMs = performance.now() - begin;
  if (status !== 0) throw new Error(`${args.join(' ')}\n${stdout}${stderr}`);
  return { wallMs, stdout };
}

/** Best of several runs of one way; the first run only warms the disk cache. */
function measure(way, runs) {
  let best = { wallMs: Infinity, ms: Infinity, cpuMs: Infinity, peakMb: Infinity };
  for (let run = 0; run < runs; run += 1) {
    mkdirSync(made);
    const { wallMs, stdout } = time([join(HERE, 'job.js'), way, file, made]);
    const found = { ...JSON.parse(stdout), wallMs };
    rmSync(made, { recursive: true });
    if (run > 0)
      best = Object.fromEntries(Object.entries(best).map(([key, least]) => [key, Math.min(least, found[key])]));
  }
  return best;
}

/** One line of the table. */
function printWay(label, found, floor) {
  const times = ['wallMs', 'ms', 'cpuMs'].map((key) => {
    return `${found[key].toFixed(0).padStart(9)} ${(found[key] / floor[key]).toFixed(1).padStart(6)} x`;
  });
  process.stdout.write(`  ${label.padEnd(36)}${times.join('')}${found.peakMb.toFixed(0).padStart(9)} MB\n`);
}

function measureSize(sizeMb) {
  const { bytes, shapes } = drawLayered(sizeMb * MB);
  writeFileSync(file, bytes);
  const inputMb = bytes.length / MB;
  process.stdout.write(
    `\n${inputMb.toFixed(1)} MB, ${shapes} shapes, ${Math.round(bytes.length / shapes)} bytes each\n`,
  );
  const ways = {};
  for (const { way, label, slow } of WAYS) {
    ways[way] = measure(way, slow === true && sizeMb > 10 ? 2 : 6);
    printWay(label, ways[way], ways.floor);
  }
  return { inputMb, shapes, ways };
}

/** Start-up: the best of many, since it is short. */
function measureVersion() {
  const best = { node: Infinity, version: Infinity };
  for (let run = 0; run < 21; run += 1) {
    best.node = Math.min(best.node, time(['-e', '0']).wallMs);
    best.version = Math.min(best.version, time([COMMAND, '--version']).wallMs);
  }
  process.stdout.write(`\nnode -e 0 ${best.node.toFixed(0)} ms, pinbar --version ${best.version.toFixed(0)} ms\n`);
  return best;
}

function judge(sizes, start) {
  const { inputMb, ways } = sizes.at(-1);
  return [
    { what: 'split / floor', is: ways.split.wallMs / ways.floor.wallMs, atMost: 5 },
    { what: 'split / naive', is: ways.split.wallMs / ways.naive.wallMs, atMost: 1 / 15 },
    { what: 'read back / floor', is: ways['read-back'].wallMs / ways.floor.wallMs, atMost: 15 },
    { what: 'peak memory of read back, MB', is: ways['read-back'].peakMb, atMost: 2.5 * inputMb + 80 },
    { what: '--version / node -e 0', is: start.version / start.node, atMost: 1.5 },
  ].map((target) => ({ ...target, met: target.is <= target.atMost }));
}

try {
  process.stdout.write(
    `${'whole process, ms'.padStart(56)}${'work inside, ms'.padStart(18)}${'processor, ms'.padStart(18)}${'peak'.padStart(12)}\n`,
  );
  const sizes = SIZES_MB.map(measureSize);
  const start = measureVersion();
  const targets = judge(sizes, start);
  process.stdout.write('\n');
  for (const { what, is, atMost, met } of targets) {
    process.stdout.write(
      `  ${what.padEnd(32)}${is.toFixed(3).padStart(9)}  at most ${atMost.toFixed(3)}  ${met ? 'met' : 'MISSED'}\n`,
    );
  }
  mkdirSync(resolve(RESULT, '..'), { recursive: true });
  const machine = { node: process.version, cpu: cpus()[0]?.model ?? '', cores: cpus().length };
  writeFileSync(RESULT, `${JSON.stringify({ machine, sizes, start, targets }, null, 2)}\n`);
  process.exitCode = targets.every(({ met }) => met) ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
