// A watcher whose system calls fail or kill it, one chosen call at a time, and what must hold whatever happens.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { witnessPath } from '../house/witnesses.js';
import {
  askingArt,
  badArt,
  COMMAND,
  hashOutput,
  listTree,
  listUnproved,
  readJournal,
  smallArt,
} from '../rims/hot-folder/shop.js';

/** Calls by which a watcher changes its folder. */
export const CALLS = ['mkdir', 'rename', 'link', 'unlink', 'rmdir', 'openat', 'pwrite64', 'fsync', 'bind'] as const;

/** What is done to a call: an error once, the same from there on, or the end of the process. */
export const FAULTS = ['SIGKILL', 'ENOSPC', 'ENOSPC+', 'EIO', 'EACCES', 'EROFS', 'EMFILE'] as const;

/** A call and what is done to it. */
export interface Fault {
  readonly call: (typeof CALLS)[number];
  readonly fault: (typeof FAULTS)[number];
  /** Which of these calls, from 1. */
  readonly when: number;
}

const SCRATCH = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();

/** Four jobs, one for each way to end: done, done before, set aside, asked about; one of them with a ticket beside it. */
const DELIVERIES: Readonly<Record<string, string>> = {
  'a.svg': smallArt(1),
  'b.svg': badArt(),
  'b.ticket.json': '{"pinbar": 1, "severities": {"check/outline-open": "error"}}',
  'c.svg': smallArt(1),
  'film/d.svg': askingArt(),
};

/** A hot folder with the four jobs, or without one of them. */
export function openBrokenShop(without: string | null = null): string {
  const shop = mkdtempSync(join(SCRATCH, 'pinbar-crash-'));
  mkdirSync(join(shop, 'in/film'), { recursive: true });
  for (const name of Object.keys(DELIVERIES)) if (name !== without) deliver(shop, name);
  return shop;
}

/** Drops one of the four jobs. */
export function deliver(shop: string, name: string): void {
  writeFileSync(join(shop, 'in', name), DELIVERIES[name]!);
}

const ARGS = ['--once', '--poll-only', '--jobs', '1', '--quiet-time', '0.01', '--poll', '0.05', '--log-level', 'debug'];

/** Runs a watcher to its end or death, with a fault or none; says whether it struck, and how many such calls were made. */
export function runBroken(
  shop: string,
  fault: Fault | null,
): { readonly struck: boolean; readonly made: number; readonly log: string } {
  const seen = `${shop}.strace`;
  const command = [process.execPath, COMMAND, 'watch', shop, ...ARGS];
  const inject = fault === null ? [] : sayFault(fault);
  const strace = fault === null ? [] : [witnessPath('strace'), '-qq', '-o', seen, ...inject];
  const [program, ...args] = [...strace, ...command] as [string, ...string[]];
  const { stderr } = spawnSync(program, args, { encoding: 'utf8', timeout: 60_000, killSignal: 'SIGKILL' });
  if (fault === null) return { struck: false, made: 0, log: stderr };
  const trace = readFileSync(seen, 'utf8');
  rmSync(seen);
  const made = trace.split('\n').filter((line) => line.startsWith(`${fault.call}(`)).length;
  return { struck: /INJECTED|killed by SIGKILL/.test(trace), made, log: stderr };
}

function sayFault({ call, fault, when }: Fault): readonly string[] {
  const what = fault === 'SIGKILL' ? 'signal=SIGKILL' : `error=${fault.replace('+', '')}`;
  return ['-e', `trace=${call}`, '-e', `inject=${call}:${what}:when=${when}${fault.endsWith('+') ? '+' : ''}`];
}

/** The calls of an undisturbed run, one a line, with the paths of what they use. */
export function traceRun(shop: string): readonly string[] {
  const file = `${shop}.trace`;
  const command = [process.execPath, COMMAND, 'watch', shop, ...ARGS];
  const calls = [...CALLS, 'close'].join(',');
  spawnSync(witnessPath('strace'), ['-qq', '-y', '-s', '0', '-e', `trace=${calls}`, '-o', file, ...command], {
    timeout: 60_000,
  });
  const lines = readFileSync(file, 'utf8').split('\n');
  rmSync(file);
  return lines;
}

/** Which calls of a trace touch the hot folder: how many of the same name came before, from 1. */
export function listFaultPlaces(trace: readonly string[], shop: string): readonly Pick<Fault, 'call' | 'when'>[] {
  const counts = new Map<string, number>();
  const places: Pick<Fault, 'call' | 'when'>[] = [];
  for (const line of trace) {
    const call = CALLS.find((name) => line.startsWith(`${name}(`));
    if (call === undefined) continue;
    const when = (counts.get(call) ?? 0) + 1;
    counts.set(call, when);
    if (line.includes(shop) || call === 'bind') places.push({ call, when });
  }
  return places;
}

function hashesOf(paths: readonly string[]): readonly string[] {
  return paths.map((path) => createHash('sha256').update(readFileSync(path)).digest('hex')).sort();
}

function listDelivered(shop: string): readonly string[] {
  const rooms = ['in', 'work', 'done', 'failed', 'waiting'];
  return rooms
    .flatMap((room) => listTree(join(shop, room)).map((path) => join(shop, room, path)))
    .filter((path) => /\.svg$|ticket\.json$/.test(path) && !/\/report\/|\/\.out\//.test(path));
}

/** Faults of a folder that must hold at every instant: each delivery once, nothing in `out/` without its proof, nothing done without output. */
export function findLosses(shop: string): readonly string[] {
  const losses: string[] = [];
  const wanted = Object.values(DELIVERIES).map((text) => createHash('sha256').update(text).digest('hex'));
  const there = hashesOf(listDelivered(shop));
  if (there.join() !== [...wanted].sort().join())
    losses.push(`delivered ${wanted.length}, there are ${listDelivered(shop).join(', ')}`);
  const out = join(shop, 'out');
  const unproved = existsSync(out) ? listUnproved(shop) : [];
  if (unproved.length > 0) losses.push(`not proved: ${unproved.join(', ')}`);
  const made = existsSync(out)
    ? readdirSync(out).map((name) => readFileSync(join(out, name, 'manifest.json'), 'utf8'))
    : [];
  const done = existsSync(join(shop, 'done'))
    ? listTree(join(shop, 'done')).filter((path) => path.endsWith('.svg'))
    : [];
  for (const hash of hashesOf(done.map((path) => join(shop, 'done', path)))) {
    if (!made.some((manifest) => manifest.includes(hash))) losses.push(`done without output: ${hash}`);
  }
  return losses;
}

/** How a folder looks when all is settled. */
export interface Settled {
  readonly rooms: readonly string[];
  readonly output: Readonly<Record<string, string>>;
  readonly endings: readonly string[];
}

/** The folder as it is now. */
export function describeSettled(shop: string): Settled {
  const rooms = ['in', 'work', 'done', 'failed', 'waiting'].flatMap((room) =>
    listTree(join(shop, room))
      .filter((path) => !path.includes('.keys'))
      .map((path) => join(room, path)),
  );
  const endings = readJournal(shop).map(({ name, ending }) => `${String(name)} ${String(ending)}`);
  return { rooms, output: hashOutput(shop), endings: [...new Set(endings)].sort() };
}

/** A copy of a folder, to look at later. */
export function keepShop(shop: string): string {
  const copy = `${shop}.kept`;
  cpSync(shop, copy, { recursive: true });
  return copy;
}
