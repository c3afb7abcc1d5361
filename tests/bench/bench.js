// npm run bench: time and memory of a job against the floor, the script that most people would write, and two quicker readers.
// Each figure is the best of several fresh processes, whole, as a user waits for them. Exit code 1 if a target is missed.
// npm run bench -- --sizes 1,10 measures these sizes (MB) alone, and judges no target that needs others.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { drawLayered } from './draw-layered.js';
import { drawLines } from './draw-lines.js';
import { judge } from './targets.js';

const HERE = import.meta.dirname;
const COMMAND = resolve(HERE, '../../bin/pinbar.js');
const RESULT = resolve(HERE, '../../out/bench.json');
const MB = 1024 * 1024;
const MANY = 1000;
const LINES = [
  { kind: 'scattered', count: 100_000 },
  { kind: 'grid', count: 100_000 },
  // Four sides each: 100,000 lines to cut.
  { kind: 'labels', count: 25_000 },
  { kind: 'labels', count: 100_000 },
];

const asked = process.argv.indexOf('--sizes');
const SIZES_MB = asked < 0 ? [1, 10, 50, 200] : process.argv[asked + 1].split(',').map(Number);

/** Ways to do the job; `slow` ones run once on large files. */
const WAYS = [
  { way: 'floor', label: 'read and write the same bytes' },
  { way: 'least', label: 'and look at each, read numbers, hash' },
  { way: 'naive', label: 'parse, delete, serialise, per pass', slow: true },
  { way: 'cheerio', label: 'the same with cheerio', slow: true },
  { way: 'txml', label: 'the same with txml', slow: true },
  { way: 'split', label: 'pinbar, not read back' },
  { way: 'checked', label: 'pinbar, checked, not read back', slow: true },
  { way: 'read-back', label: 'pinbar, read back' },
  // The second judge reads up to 64 MiB.
  { way: 'both', label: 'pinbar, both judges', slow: true, mostMb: 64 },
];

const scratch = mkdtempSync(join(tmpdir(), 'pinbar-bench-'));
const file = join(scratch, 'bench.svg');
const made = join(scratch, 'made');

/** Runs a process and says how long all of it took, ms. */
function time(args) {
  const begin = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--max-old-space-size=8192', ...args], {
    encoding: 'utf8',
  });
  const wallMs = performance.now() - begin;
  if (status !== 0) throw new Error(`${args.join(' ')}\n${stdout}${stderr}`);
  return { wallMs, stdout };
}

/** Best of several runs of one way; where there are several, the first only warms the disk cache. */
function measure(way, runs, input = file) {
  let best = { wallMs: Infinity, ms: Infinity, cpuMs: Infinity, peakMb: Infinity };
  for (let run = runs === 1 ? 1 : 0; run <= (runs === 1 ? 1 : runs - 1); run += 1) {
    mkdirSync(made);
    const { wallMs, stdout } = time([join(HERE, 'job.js'), way, input, made]);
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
  for (const { way, label, slow, mostMb = Infinity } of WAYS) {
    if (inputMb > mostMb) continue;
    const runs = slow !== true || sizeMb <= 10 ? 6 : sizeMb <= 50 ? 2 : 1;
    ways[way] = measure(way, runs);
    printWay(label, ways[way], ways.floor);
  }
  return { sizeMb, inputMb, shapes, ways };
}

/** A thousand files of 5 to 50 kB, one after the other in one process. */
function measureMany() {
  const folder = join(scratch, 'many');
  mkdirSync(folder);
  for (let i = 0; i < MANY; i += 1) {
    const { bytes } = drawLayered((5 + (45 * i) / MANY) * 1024, 100 + i);
    writeFileSync(join(folder, `file-${i}.svg`), bytes);
  }
  process.stdout.write(`\n${MANY} files of 5 to 50 kB in one process, files a second\n`);
  const rates = {};
  for (const way of ['many-naive', 'many-split', 'many-both']) {
    rates[way] = MANY / (measure(way, 2, folder).ms / 1000);
    process.stdout.write(`  ${way.padEnd(36)}${rates[way].toFixed(0).padStart(9)}\n`);
  }
  return rates;
}

/** Drawings of many lines, each a burden of another kind for the checks. */
function measureLines() {
  process.stdout.write('\nmany lines: the split, and with the checks, ms\n');
  return LINES.map(({ kind, count }) => {
    writeFileSync(file, drawLines(kind, count));
    const [plain, checked] = ['split', 'checked'].map((way) => measure(way, 3));
    const ratio = checked.wallMs / plain.wallMs;
    process.stdout.write(
      `  ${`${count} ${kind}`.padEnd(36)}${plain.wallMs.toFixed(0).padStart(9)}${checked.wallMs.toFixed(0).padStart(9)}${ratio.toFixed(1).padStart(7)} x${checked.peakMb.toFixed(0).padStart(9)} MB\n`,
    );
    return { kind, count, plain, checked, ratio };
  });
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

try {
  process.stdout.write(
    `${'whole process, ms'.padStart(56)}${'work inside, ms'.padStart(18)}${'processor, ms'.padStart(18)}${'peak'.padStart(12)}\n`,
  );
  const sizes = SIZES_MB.map(measureSize);
  const many = measureMany();
  const lines = measureLines();
  const start = measureVersion();
  const targets = judge(new Map(sizes.map((size) => [size.sizeMb, size])), { many, lines, start });
  process.stdout.write('\n');
  for (const { what, is, atMost, met } of targets) {
    process.stdout.write(
      `  ${what.padEnd(40)}${is.toFixed(3).padStart(9)}  at most ${atMost.toFixed(3)}  ${met ? 'met' : 'MISSED'}\n`,
    );
  }
  mkdirSync(resolve(RESULT, '..'), { recursive: true });
  const machine = { node: process.version, cpu: cpus()[0]?.model ?? '', cores: cpus().length };
  writeFileSync(RESULT, `${JSON.stringify({ machine, sizes, many, lines, start, targets }, null, 2)}\n`);
  process.exitCode = targets.every(({ met }) => met) ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
