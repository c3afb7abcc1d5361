// Which deliveries are ready: at rest, there to their end, with the ticket that they wait for.
import { listTicketPaths, MOST_TICKET_BYTES } from './choose-ticket.js';
import { endsWell, ticketEndsWell } from './ends-well.js';
import { FILE_TRIES, FILE_TRIES_APART_MS, isBroken } from './file-trouble.js';
import { codeOf, type FolderDisk, joinPath, type Look } from './folder-disk.js';
import type { Layout } from './layout.js';
import { isAtRest, lookAgain, type Seen } from './rest-watch.js';
import { type Delivery, scanIn } from './scan-in.js';

/** What a watcher remembers of the files it saw, by path. */
export interface ReadyMemory {
  readonly seen: Map<string, Seen>;
  /** Marks of files that were looked at when they were at rest, and whether they are there to their end. */
  readonly whole: Map<string, { readonly mark: string; readonly ends: boolean }>;
  /** Files at rest that the disk could not read: how often, and when it is asked again. */
  readonly broken: Map<string, { readonly mark: string; readonly tries: number; readonly at: number }>;
  /** Files that were named as not ready, by what they lack: where they lie. */
  readonly named: Map<string, string>;
}

/** Why a file is not ready. */
export type Lack =
  | 'not-complete'
  | 'ticket-not-complete'
  | 'no-ticket'
  | 'not-readable'
  | 'ticket-not-readable'
  | 'link-or-device'
  | 'too-deep';

/** Where to look, what is remembered of it, and what is asked of a file. */
export interface Finder {
  readonly disk: FolderDisk;
  readonly layout: Layout;
  readonly memory: ReadyMemory;
  readonly quietMs: number;
  readonly patienceMs: number;
  readonly waitTicket: boolean;
  /** Art that has more bytes is never read: a job says so. */
  readonly mostBytes: number;
}

/** A file that is not taken, and has not been for the set time. */
export interface Lacking {
  readonly from: readonly Buffer[];
  readonly lack: Lack;
}

/** What a look found. */
export interface ReadyLook {
  /** How many deliveries lie there. */
  readonly deliveries: number;
  /** Oldest first, by when this watcher saw them. */
  readonly ready: readonly Delivery[];
  /** Not at rest yet, or at rest and not whole. */
  readonly unready: readonly Lacking[];
  /** How many do not rest yet. */
  readonly moving: number;
  /** Of those not ready: named now for the first time. */
  readonly news: readonly Lacking[];
  /** How long the oldest lies there, ms. */
  readonly oldestMs: number;
}

/** A memory without anything in it. */
export function emptyMemory(): ReadyMemory {
  return { seen: new Map(), whole: new Map(), broken: new Map(), named: new Map() };
}

function keyOfPath(path: Buffer): string {
  return path.toString('latin1');
}

/** Looks at a file once per mark: reading it again would say the same. */
async function isWhole({ disk, memory, mostBytes }: Finder, path: Buffer, look: Look): Promise<boolean> {
  const key = keyOfPath(path);
  const known = memory.whole.get(key);
  if (known?.mark === look.mark) return known.ends;
  const isTicket = path.toString('latin1').endsWith('.json');
  if (look.bytes > (isTicket ? MOST_TICKET_BYTES : mostBytes)) return true;
  const bytes = disk.read(path);
  const ends = isTicket ? ticketEndsWell(bytes) : await endsWell(bytes);
  memory.whole.set(key, { mark: look.mark, ends });
  return ends;
}

type FileVerdict = 'ready' | 'moving' | 'not-complete' | 'not-readable';

/** What the disk does not read after some tries is taken, so that a report says so. */
function judgeBroken({ memory }: Finder, path: Buffer, mark: string, now: number): FileVerdict {
  const before = memory.broken.get(keyOfPath(path));
  const tries = (before?.mark === mark ? before.tries : 0) + 1;
  memory.broken.set(keyOfPath(path), { mark, tries, at: now + FILE_TRIES_APART_MS });
  return tries < FILE_TRIES ? 'moving' : 'ready';
}

function lookAt({ disk }: Finder, path: Buffer): Look | 'not-readable' | null {
  try {
    return disk.look(path);
  } catch (error) {
    // Nothing can be done to it, not even a rename.
    if (isBroken(error)) return 'not-readable';
    throw error;
  }
}

async function judgeFile(finder: Finder, path: Buffer, now: number): Promise<FileVerdict> {
  const { memory, quietMs } = finder;
  const look = lookAt(finder, path);
  if (look === null) return 'moving';
  if (look === 'not-readable') return look;
  const key = keyOfPath(path);
  const seen = lookAgain(memory.seen.get(key), look, now);
  memory.seen.set(key, seen);
  if (!isAtRest(seen, now, quietMs)) return 'moving';
  const broken = memory.broken.get(key);
  if (broken?.mark === look.mark && now < broken.at) return broken.tries < FILE_TRIES ? 'moving' : 'ready';
  try {
    return (await isWhole(finder, path, look)) ? 'ready' : 'not-complete';
  } catch (error) {
    const code = codeOf(error);
    // A file that cannot be read is taken, if its folder lets it go, and set aside with the reason.
    if (code === 'EACCES' || code === 'EPERM') return 'ready';
    if (code === 'ENOENT' || code === 'EINVAL' || code === 'ELOOP') return 'moving';
    if (isBroken(error)) return judgeBroken(finder, path, look.mark, now);
    throw error;
  }
}

function folderOf({ path, from }: Delivery): Buffer {
  return path.subarray(0, path.length - from.at(-1)!.length - 1);
}

interface Pair {
  readonly delivery: Delivery;
  /** Where the ticket lies that counts for it. */
  readonly ticket: Buffer | null;
}

async function judge(
  finder: Finder,
  { delivery, ticket: path }: Pair,
  now: number,
): Promise<'ready' | 'moving' | Lack> {
  const art = await judgeFile(finder, delivery.path, now);
  if (art !== 'ready') return art;
  if (delivery.beside === null && finder.waitTicket) return 'no-ticket';
  if (path === null) return 'ready';
  const ticket = await judgeFile(finder, path, now);
  return ticket === 'ready' || ticket === 'moving' ? ticket : `ticket-${ticket}`;
}

/** Where the ticket lies that counts for a delivery; null where there is none. */
function findTicketPath(finder: Finder, delivery: Delivery): Buffer | null {
  if (delivery.beside !== null) return joinPath(folderOf(delivery), delivery.beside);
  const isThere = (path: Buffer): boolean => {
    const look = lookAt(finder, path);
    return look === 'not-readable' || look?.kind === 'file';
  };
  return listTicketPaths(finder.layout, delivery.from.slice(0, -1)).find(isThere) ?? null;
}

/** Forgets what no longer lies there, and that it was named: the next of its name is another delivery. */
function forget(memory: ReadyMemory, present: ReadonlySet<string>, names: ReadonlySet<string>): void {
  for (const map of [memory.seen, memory.whole, memory.broken]) {
    for (const key of map.keys()) if (!present.has(key)) map.delete(key);
  }
  for (const [key, name] of memory.named) if (!names.has(name)) memory.named.delete(key);
}

function keyOfNames(from: readonly Buffer[]): string {
  return from.map((name) => name.toString('latin1')).join('/');
}

/**
 * Scans `in/` and judges what lies there.
 *
 * @param now - A clock that only goes forward, ms.
 * @throws Errors of the system about `in/` itself.
 */
export async function findReady(finder: Finder, now: number): Promise<ReadyLook> {
  const { disk, layout, memory } = finder;
  const { deliveries, refused } = scanIn(disk, layout.in);
  const ready: { readonly delivery: Delivery; readonly first: number }[] = [];
  const unready: Lacking[] = [...refused];
  const news: Lacking[] = [];
  const present = new Set<string>();
  let [moving, oldest] = [0, now];
  const nameOnce = (item: Lacking): void => {
    const name = keyOfNames(item.from);
    const key = `${item.lack} ${name}`;
    if (!memory.named.has(key)) news.push(item);
    memory.named.set(key, name);
  };
  for (const item of unready) nameOnce(item);
  for (const delivery of deliveries) {
    present.add(keyOfPath(delivery.path));
    const ticket = findTicketPath(finder, delivery);
    if (ticket !== null) present.add(keyOfPath(ticket));
    const verdict = await judge(finder, { delivery, ticket }, now);
    const first = memory.seen.get(keyOfPath(delivery.path))?.first ?? now;
    oldest = Math.min(oldest, first);
    if (verdict === 'ready') ready.push({ delivery, first });
    else if (verdict === 'moving') moving++;
    else {
      const item: Lacking = { from: delivery.from, lack: verdict };
      unready.push(item);
      if (now - first >= finder.patienceMs) nameOnce(item);
    }
  }
  forget(memory, present, new Set([...deliveries, ...refused].map(({ from }) => keyOfNames(from))));
  ready.sort((a, b) => a.first - b.first || Buffer.compare(a.delivery.path, b.delivery.path));
  return {
    ...{ deliveries: deliveries.length, ready: ready.map(({ delivery }) => delivery) },
    ...{ unready, moving, news, oldestMs: now - oldest },
  };
}
