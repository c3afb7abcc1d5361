// A shop with a hot folder, for the tests: drops files, runs watchers, looks at what came of them.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import type { JobEvent } from '../../../src/hot-folder/run-job.js';
import { watchFolder } from '../../../src/hot-folder/watch-folder.js';
import type { WatchCounts, WatchNews, WatchOptions } from '../../../src/hot-folder/watch-options.js';

/** The command. */
export const COMMAND: string = resolve(import.meta.dirname, '../../../bin/pinbar.js');

/** Samples of the project. */
export const SAMPLES: string = resolve(import.meta.dirname, '../../../samples');

/** In memory where the system offers that: these tests write thousands of small files. */
const SCRATCH = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

const opened: string[] = [];

afterAll(() => {
  for (const folder of opened) rmSync(folder, { recursive: true, force: true });
});

/** A new hot folder, taken away after the tests of the file. */
export function openShop(): string {
  const folder = mkdtempSync(join(SCRATCH, 'pinbar-shop-'));
  opened.push(folder);
  mkdirSync(join(folder, 'in'));
  return folder;
}

/** Small art in register, with room for marks; each number another drawing. */
export function smallArt(number: number): string {
  const size = 20 + (number % 40);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="120mm" viewBox="0 0 140 120">
<g id="Print"><rect x="30" y="30" width="${size + 6}" height="36" fill="#336699"/><!-- ${number} --></g>
<g id="Cut"><rect x="33" y="33" width="${size}" height="30" fill="none" stroke="#c2185b" stroke-width="0.2"/></g></svg>
`;
}

/** Art with a layer that nobody claims: a question. */
export function askingArt(): string {
  return smallArt(1).replace('id="Print"', 'id="Layer 7"');
}

/** Art that is refused, and can be drawn: an open cut line. */
export function badArt(): string {
  return smallArt(2).replace(
    /<rect x="33"[^>]*>/,
    '<path d="M33 33h20v20h-20v-19.5" fill="none" stroke="#c2185b" stroke-width="0.2"/>',
  );
}

/** Puts files into `in/`, by path. */
export function drop(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [name, bytes] of Object.entries(files)) {
    mkdirSync(join(folder, 'in', name, '..'), { recursive: true });
    writeFileSync(join(folder, 'in', name), bytes);
  }
}

/** All files below a folder, by path, without sockets. */
export function listTree(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.isDirectory()) return listTree(path).map((name) => join(entry.name, name));
      return entry.isFile() ? [entry.name] : [];
    })
    .sort();
}

/** Names in a room. */
export function listRoom(folder: string, room: string): readonly string[] {
  const path = join(folder, room);
  return existsSync(path)
    ? readdirSync(path)
        .filter((name) => !name.startsWith('.'))
        .sort()
    : [];
}

/** Lines of the journal. */
export function readJournal(folder: string): readonly Readonly<Record<string, unknown>>[] {
  const path = join(folder, 'journal.ndjson');
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);
}

/** Every file of `out/` with the hash of its bytes. */
export function hashOutput(folder: string): Readonly<Record<string, string>> {
  const out = join(folder, 'out');
  const hash = (name: string): string =>
    createHash('sha256')
      .update(readFileSync(join(out, name)))
      .digest('hex');
  return Object.fromEntries(listTree(out).map((name) => [name, hash(name)]));
}

/** Folders in `out/` whose files are not all there as their manifest says. */
export function listUnproved(folder: string): readonly string[] {
  return readdirSync(join(folder, 'out')).filter((name) => {
    try {
      const manifest = JSON.parse(readFileSync(join(folder, 'out', name, 'manifest.json'), 'utf8')) as {
        readonly passes: readonly { readonly file: string; readonly sha256: string }[];
        readonly proof: { readonly inRegister: boolean };
      };
      const whole = manifest.passes.every(({ file, sha256 }) => {
        const bytes = readFileSync(join(folder, 'out', name, file));
        return createHash('sha256').update(bytes).digest('hex') === sha256;
      });
      return !whole || manifest.passes.length === 0 || !manifest.proof.inRegister;
    } catch {
      return true;
    }
  });
}

/** Options that make a watcher quick. */
export function quickOptions(folder: string, options: Partial<WatchOptions> = {}): WatchOptions {
  return {
    folder: Buffer.from(folder),
    owner: null,
    takeOver: [],
    jobs: 1,
    quietMs: 60,
    patienceMs: 600_000,
    pollMs: 200,
    pollOnly: true,
    waitTicket: false,
    timeLimitMs: 60_000,
    memoryLimitMb: 1024,
    stopMs: 10_000,
    once: true,
    limits: {},
    queue: null,
    program: [COMMAND, 'run-jobs'],
    ...options,
  };
}

/** What a watcher said and counted. */
export interface Watched {
  readonly counts: WatchCounts;
  readonly news: readonly WatchNews[];
  readonly jobs: readonly JobEvent[];
}

/** Watches in this process until nothing is left to do. */
export async function watchOnce(
  folder: string,
  options: Partial<WatchOptions> = {},
  disk: FolderDisk = MACHINE_DISK,
): Promise<Watched> {
  const news: WatchNews[] = [];
  const jobs: JobEvent[] = [];
  const hooks = {
    signal: new AbortController().signal,
    onNews: (item: WatchNews) => news.push(item),
    onJob: (item: JobEvent) => jobs.push(item),
    onLook: () => undefined,
  };
  const counts = await watchFolder(quickOptions(folder, options), hooks, disk);
  return { counts, news, jobs };
}

/** A watcher in this process that goes on until it is stopped. */
export function watchOn(
  folder: string,
  options: Partial<WatchOptions> = {},
): {
  readonly jobs: readonly JobEvent[];
  readonly news: readonly WatchNews[];
  readonly stop: () => Promise<WatchCounts>;
} {
  const controller = new AbortController();
  const news: WatchNews[] = [];
  const jobs: JobEvent[] = [];
  const counts = watchFolder(quickOptions(folder, { once: false, ...options }), {
    signal: controller.signal,
    onNews: (item) => news.push(item),
    onJob: (item) => jobs.push(item),
    onLook: () => undefined,
  });
  return {
    jobs,
    news,
    stop: () => {
      controller.abort();
      return counts;
    },
  };
}

/** Waits until something is so. */
export async function until(isSo: () => boolean, what: string, ms = 20_000): Promise<void> {
  for (const end = Date.now() + ms; !isSo(); ) {
    if (Date.now() > end) throw new Error(`waited in vain until ${what}`);
    await new Promise((next) => setTimeout(next, 20));
  }
}

/** Runs the command to its end. */
export function runCommand(...args: readonly string[]): {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
} {
  // Killed where it hangs: who never looks at signals again would hold up all tests.
  const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...args], {
    encoding: 'utf8',
    timeout: 60_000,
    killSignal: 'SIGKILL',
  });
  return { status, out: stdout, err: stderr };
}

/** Starts the command. */
export function startCommand(...args: readonly string[]): {
  readonly pid: number;
  readonly ended: Promise<number | null>;
  readonly kill: (signal: NodeJS.Signals) => void;
  readonly err: () => string;
} {
  const child = spawn(process.execPath, [COMMAND, ...args], { stdio: ['ignore', 'ignore', 'pipe'] });
  let err = '';
  child.stderr.on('data', (chunk) => {
    err += String(chunk);
  });
  const ended = new Promise<number | null>((done) => child.once('exit', done));
  return { pid: child.pid!, ended, kill: (signal) => child.kill(signal), err: () => err };
}
