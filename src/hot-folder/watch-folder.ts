// The watcher: looks, takes what is ready, and goes on until it is told to stop or, once, until nothing is left to do.
import { setTimeout } from 'node:timers/promises';
import { hangBell } from './change-bell.js';
import { explainTrouble, isFolderTrouble } from './explain-trouble.js';
import { type FolderDisk, MACHINE_DISK } from './folder-disk.js';
import { openDesk } from './job-desk.js';
import type { JobFeed } from './job-feed.js';
import { openOffers, openOrders } from './job-queue.js';
import { openJournalCheck } from './journal-check.js';
import { type Layout, layOut, openRooms } from './layout.js';
import { mostBytesOf } from './most-bytes.js';
import { defaultOwner, openRoom, type Room } from './owner.js';
import { emptyMemory, type Finder } from './ready-files.js';
import type { Runner } from './run-job.js';
import { type Station, sayJob } from './station.js';
import { refuseTwin } from './take-over.js';
import type { WatchCounts, WatchOptions } from './watch-options.js';
import {
  endRests,
  FIRST_REST_MS,
  LONGEST_REST_MS,
  noteUnread,
  takeRest,
  tell,
  type Watch,
  type WatchHooks,
} from './watch-state.js';
import { restTime, settleOrder, turn } from './watch-turn.js';
import { createPool, type WorkerPool } from './worker-pool.js';

/** A run that is to end gives up after so many rests in a row. */
const MOST_RESTS_ONCE = 3;

async function loop(watch: Watch): Promise<void> {
  const { hooks, options, change } = watch;
  while (!hooks.signal.aborted) {
    try {
      const finished = await turn(watch);
      if (options.once && finished) return;
    } catch (error) {
      if (!isFolderTrouble(error)) throw error;
      takeRest(watch, error);
    }
    if (options.once && watch.rests >= MOST_RESTS_ONCE) return;
    await change.wait(restTime(watch));
  }
}

/** Ends what runs, or leaves it whole for the next who looks. */
async function stop(watch: Watch, pool: WorkerPool): Promise<void> {
  const { desk, options } = watch;
  desk.close();
  const done = new AbortController();
  void setTimeout(options.stopMs, undefined, { signal: done.signal }).then(pool.stop, () => undefined);
  await desk.settled();
  done.abort();
  pool.stop();
}

function openStation(disk: FolderDisk, layout: Layout, room: Room, onLine: Station['onLine']): Station {
  let count = 0;
  return {
    disk,
    layout,
    home: room.home,
    owner: room.record.owner,
    nextId: () => {
      count++;
      return `${room.tag}-${count}`;
    },
    now: () => new Date().toISOString(),
    onLine,
  };
}

function openFinder({ quietMs, patienceMs, waitTicket, limits }: WatchOptions, { disk, layout }: Station): Finder {
  const mostBytes = mostBytesOf(limits);
  return { disk, layout, memory: emptyMemory(), quietMs, patienceMs, waitTicket, mostBytes };
}

function prepare(options: WatchOptions, hooks: WatchHooks, disk: FolderDisk, room: Room, pool: WorkerPool): Watch {
  const layout = layOut(options.folder);
  const journal = openJournalCheck(disk, layout, room.record);
  const station = openStation(disk, layout, room, journal.note);
  const counts = { done: 0, duplicate: 0, failed: 0, waiting: 0, left: 0 };
  const change = hangBell(options, station.layout, hooks.signal);
  const runner: Runner = {
    station,
    ask: pool.run,
    limits: options.limits,
    keys: new Map(),
    onEvent: (event) => {
      if (event.kind in counts) counts[event.kind as keyof typeof counts]++;
      if (event.kind !== 'lost' && event.kind !== 'again') endRests(watch);
      if (event.kind !== 'again') settleOrder(watch, event.id);
      if (event.kind !== 'again') watch.unread.delete(event.id);
      hooks.onJob(event);
      change.ring();
    },
  };
  const desk = openDesk({
    runner,
    size: options.jobs,
    onTrouble: (error, job) => {
      tell(watch, 'debug', 'held', { name: sayJob(job), message: explainTrouble(error) });
      takeRest(watch, error);
      change.ring();
    },
    onUnread: (error, job) => {
      const again = noteUnread(watch, job.record.id);
      if (again) tell(watch, 'warn', 'not readable', { name: sayJob(job), message: error.message });
      change.ring();
      return again;
    },
  });
  const times = { scannedAt: 0, restsUntil: 0, rests: 0, roomsAt: Number.NEGATIVE_INFINITY, others: 0 };
  const watch: Watch = {
    options,
    hooks,
    room,
    station,
    runner,
    journal,
    desk,
    finder: openFinder(options, station),
    answers: new Map(),
    denied: new Map(),
    told: new Set(),
    feed: null,
    orders: new Map(),
    counts,
    held: [],
    unread: new Map(),
    ready: [],
    change,
    ...times,
  };
  return watch;
}

function openFeed(watch: Watch): Promise<JobFeed> | null {
  const { queue, jobs } = watch.options;
  if (queue === null) return null;
  const onError = (error: Error): void => tell(watch, 'debug', 'queue', { message: error.message });
  if (queue.side === 'watch') return openOffers(queue.url, onError);
  return openOrders(queue.url, jobs, { onOrder: watch.change.ring, onError });
}

/** Opens the rooms, and waits for them as long as they cannot be opened. */
async function enter(options: WatchOptions, hooks: WatchHooks, disk: FolderDisk): Promise<Room | null> {
  const layout = layOut(options.folder);
  for (let tries = 1; !hooks.signal.aborted; tries++) {
    try {
      openRooms(disk, layout);
      const room = await openRoom(disk, layout, options.owner ?? defaultOwner());
      if (tries > 1) hooks.onNews({ level: 'info', event: 'going on', facts: {} });
      return room;
    } catch (error) {
      if (!isFolderTrouble(error)) throw error;
      if (tries === 1) hooks.onNews({ level: 'error', event: 'resting', facts: { message: explainTrouble(error) } });
      if (options.once && tries >= MOST_RESTS_ONCE) return null;
      await setTimeout(Math.min(LONGEST_REST_MS, FIRST_REST_MS * tries), undefined, { signal: hooks.signal }).catch(
        () => undefined,
      );
    }
  }
  return null;
}

/**
 * Watches a folder.
 *
 * @returns What it counted, when it was told to stop, or once when nothing was left to do.
 * @throws PinbarError `use/wrong` where a living watcher has the same name.
 */
export async function watchFolder(
  options: WatchOptions,
  hooks: WatchHooks,
  disk: FolderDisk = MACHINE_DISK,
): Promise<WatchCounts> {
  const none = { done: 0, duplicate: 0, failed: 0, waiting: 0, left: 0 };
  const room = await enter(options, hooks, disk);
  if (room === null) return { ...none, resting: true };
  const { jobs, program, timeLimitMs, memoryLimitMb } = options;
  const pool = createPool({ size: jobs, program, timeLimitMs, memoryLimitMb });
  const watch = prepare(options, hooks, disk, room, pool);
  try {
    if (options.owner !== null) await refuseTwin(watch.station, room.record);
    tell(watch, 'info', 'watching', { owner: room.record.owner, jobs });
    watch.feed = await openFeed(watch);
    await loop(watch);
  } finally {
    await stop(watch, pool);
    await watch.feed?.close();
    watch.change.close();
    try {
      await watch.journal.settle();
      room.release();
    } catch (error) {
      tell(watch, 'debug', 'not released', { message: explainTrouble(error) });
    }
  }
  return { ...watch.counts, resting: watch.rests > 0 };
}
