// Small files through a hot folder against the same files through one library call each: a ratio, and how the watcher's memory grows.
//   node tests/bench/hot-folder.js [FILES]
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const { split } = await import('../../dist/index.js');

const FILES = Number(process.argv[2] ?? 1000);
const COMMAND = resolve(import.meta.dirname, '../../bin/pinbar.js');
const shop = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'pinbar-bench-'));

/** A small drawing in two layers; each number another one. */
function draw(number) {
  const size = 20 + (number % 40);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="120mm" viewBox="0 0 140 120">
<g id="Print"><rect x="30" y="30" width="${size + 6}" height="36" fill="#336699"/><!-- ${number} --></g>
<g id="Cut"><rect x="33" y="33" width="${size}" height="30" fill="none" stroke="#c2185b" stroke-width="0.2"/></g></svg>
`;
}

/** Memory that a process holds, MB; 0 where the system does not say. */
function readMegabytes(pid) {
  try {
    return Math.round(Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1]) / 1024);
  } catch {
    return 0;
  }
}

const texts = Array.from({ length: FILES }, (_, i) => draw(i));
const calls = performance.now();
for (const [i, text] of texts.entries()) await split(Buffer.from(text), undefined, { fileName: `f${i}.svg` });
const callSeconds = (performance.now() - calls) / 1000;

mkdirSync(join(shop, 'in'));
for (const [i, text] of texts.entries()) writeFileSync(join(shop, 'in', `f${i}.svg`), text);
const began = performance.now();
const args = [COMMAND, 'watch', shop, '--once', '--quiet-time', '0.1', '--poll-only', '--log-level', 'silent'];
const watch = spawn(process.execPath, args, { stdio: 'ignore' });
const memory = [];
const look = setInterval(() => {
  const done = existsSync(join(shop, 'done')) ? readdirSync(join(shop, 'done')).length : 0;
  memory.push({ done, megabytes: readMegabytes(watch.pid) });
}, 500);
await new Promise((next) => watch.once('exit', next));
clearInterval(look);
const folderSeconds = (performance.now() - began) / 1000;
const done = readdirSync(join(shop, 'done')).length;
rmSync(shop, { recursive: true });

/** The greatest memory in a part of the run. */
function peak(from, to) {
  return Math.max(
    0,
    ...memory.filter((item) => item.done >= FILES * from && item.done < FILES * to).map((item) => item.megabytes),
  );
}

const figures = {
  files: FILES,
  done,
  callsSeconds: Number(callSeconds.toFixed(1)),
  folderSeconds: Number(folderSeconds.toFixed(1)),
  ratio: Number((folderSeconds / callSeconds).toFixed(2)),
  megabytesInSecondQuarter: peak(0.25, 0.5),
  megabytesInLastQuarter: peak(0.75, 1.01),
};
process.stdout.write(`${JSON.stringify(figures, null, 2)}\n`);
