// One turn of a watcher: what was left, what is answered, what is ready.
import { createHash } from 'node:crypto';
import { claimJob } from './claim-job.js';
import { FileTrouble, isUnreadable } from './file-trouble.js';
import { codeOf, joinPath } from './folder-disk.js';
import { openRooms } from './layout.js';
import { clearRoom, sweepDrafts } from './owner.js';
import { findReady, type ReadyLook } from './ready-files.js';
import { listAnswered, listJobs, recoverJob, recoverUnknown, resumeJob, takeOver } from './recover-jobs.js';
import { tellJob } from './run-job.js';
import { sayLack } from './say-lack.js';
import { type Delivery, findDelivery, sayNames } from './scan-in.js';
import type { HeldJob } from './station.js';
import { listLeftRooms } from './take-over.js';
import { endRests, noteUnread, tell, tellLeft, type Watch } from './watch-state.js';

/** How often rooms of others are looked at, ms. */
const ROOMS_EVERY_MS = 30_000;
/** How long a delivery that its folder does not let go of is left, ms. */
const DENIED_FOR_MS = 30_000;
/** How long a scan is good for as long as there is something left of it, ms. */
const SCAN_HOLDS_MS = 1000;
/** From how many of the oldest one is picked where others are at work, so that watchers seldom reach for the same file. */
const PICK_FROM = 16;

/** A job folder in our room, as a job to be started; null where there is nothing to start, or not yet. */
function recover(watch: Watch, folder: Buffer): HeldJob | null {
  const { station, runner } = watch;
  const id = folder.subarray(folder.lastIndexOf('/') + 1).toString();
  const onLost: Parameters<typeof recoverJob>[2] = (job, facts) => tellJob(runner, job, 'failed', facts);
  try {
    return recoverJob(station, folder, onLost);
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error;
    if (!noteUnread(watch, id)) recoverUnknown(station, folder, onLost);
    return null;
  }
}

/** Gathers what lies in our room and does not run: trouble left it there. */
function gatherHeld(watch: Watch): void {
  const { station, desk, held, unread } = watch;
  for (const name of listJobs(station, station.home)) {
    const id = name.toString();
    const before = unread.get(id);
    if (desk.holds(id) || held.some(({ job }) => job.record.id === id)) continue;
    if (before !== undefined && performance.now() < before.at) continue;
    const job = recover(watch, joinPath(station.home, name));
    if (job === null) continue;
    held.push({ job, alone: false });
    if (before !== undefined) unread.set(id, { ...before, at: Number.POSITIVE_INFINITY });
  }
}

/** When a job of which a file could not be read is tried again. */
function nextTry(watch: Watch): number {
  return Math.min(Number.POSITIVE_INFINITY, ...[...watch.unread.values()].map(({ at }) => at));
}

/** Takes over what others left: alone where they died of it, perhaps. */
async function adopt(watch: Watch): Promise<void> {
  const { station, options, room, held } = watch;
  watch.roomsAt = performance.now();
  const { left: rooms, others } = await listLeftRooms(station, room.record, options);
  watch.others = others;
  await sweepDrafts(station.disk, station.layout);
  for (const left of rooms) {
    const folders = takeOver(station, left.home);
    if (folders.length > 0) tell(watch, 'warn', 'took over', { from: left.name, jobs: folders.length });
    for (const folder of folders) {
      const job = recover(watch, folder);
      if (job !== null) held.push({ job, alone: left.died });
    }
    clearRoom(station.disk, left.home);
  }
}

function startHeld(watch: Watch): void {
  const { held, desk } = watch;
  while (held.length > 0 && (held[0]!.alone || desk.free() > 0)) {
    const { job, alone } = held.shift()!;
    desk.start(job, { interrupted: true, alone });
  }
}

/** Parked jobs whose answers rest go on. Returns how many are not there yet. */
function resumeAnswered(watch: Watch): number {
  const { station, answers, desk, options } = watch;
  const now = performance.now();
  let open = 0;
  const onUnread = (folder: Buffer): void => {
    tellLeft(watch, folder.subarray(station.layout.folder.length + 1).toString(), 'not-readable');
  };
  for (const { folder, mark } of listAnswered(station, onUnread)) {
    const key = folder.toString('latin1');
    const before = answers.get(key);
    const seen = before?.mark === mark ? before : { mark, since: now };
    answers.set(key, seen);
    if (now - seen.since < options.quietMs || desk.free() < 1) {
      open++;
      continue;
    }
    answers.delete(key);
    const taken = resumeJob(station, folder);
    const job = taken === null ? null : recover(watch, taken);
    if (job !== null) desk.start(job, { interrupted: false, alone: false });
  }
  return open;
}

/** Tells the queue that nothing more comes of a job here. */
export function settleOrder(watch: Watch, key: string): void {
  watch.orders.get(key)?.();
  watch.orders.delete(key);
}

function moveOrder(watch: Watch, path: string, id: string): void {
  const settle = watch.orders.get(path);
  watch.orders.delete(path);
  if (settle !== undefined) watch.orders.set(id, settle);
}

/** A delivery that the queue names; null where its folder does not show it any more, which the next scan sees to. */
function findOrdered({ station }: Watch, from: readonly Buffer[]): Delivery | null {
  try {
    return findDelivery(station.disk, station.layout.in, from);
  } catch (error) {
    if (isUnreadable(error) || codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** What came out of the queue is ready; what is not there any more was done by another. */
function takeOrders(watch: Watch): void {
  for (const { from, settle } of watch.feed?.take?.() ?? []) {
    const delivery = findOrdered(watch, from);
    if (delivery === null || watch.orders.has(delivery.path.toString('latin1'))) {
      settle();
      continue;
    }
    watch.orders.set(delivery.path.toString('latin1'), settle);
    watch.ready.push(delivery);
  }
  takeReady(watch);
}

/** What is ready goes into the queue, by path and hash; the folder is scanned again, so what the queue loses is offered again. */
function offerReady(watch: Watch): void {
  const { disk } = watch.station;
  const most = watch.finder.mostBytes;
  const found = watch.ready.splice(0).flatMap((delivery) => {
    try {
      return [
        {
          delivery,
          sha256: createHash('sha256')
            .update(disk.read(delivery.path, 0, most))
            .digest('hex'),
        },
      ];
    } catch (error) {
      // Whoever takes it reads it no better, and sets it aside.
      if (isUnreadable(error)) return [{ delivery, sha256: '' }];
      // Taken by a worker since it was seen.
      if (codeOf(error) === 'ENOENT') return [];
      throw error;
    }
  });
  watch.feed?.offer?.(found);
}

/** Takes as many as there are workers; the rest is left for others. Returns whether something is to be looked at again. */
function takeReady(watch: Watch): boolean {
  let again = false;
  const { station, desk, ready, finder, options } = watch;
  while (desk.free() > 0 && ready.length > 0 && !watch.hooks.signal.aborted) {
    const index =
      watch.others === 0 || options.jobs >= ready.length
        ? 0
        : Math.floor(Math.random() * Math.min(PICK_FROM, ready.length));
    const delivery = ready.splice(index, 1)[0]!;
    const path = delivery.path.toString('latin1');
    const seen = finder.memory.seen.get(path);
    const changed = seen === undefined || station.disk.look(delivery.path)?.mark !== seen.mark;
    if (changed && !watch.orders.has(path)) {
      again = true;
      continue;
    }
    const job = claimJob(station, delivery);
    if (typeof job === 'string') settleOrder(watch, path);
    again ||= job === 'ticket-not-complete';
    if (job === 'gone' || job === 'ticket-not-complete') continue;
    if (typeof job !== 'string') {
      moveOrder(watch, path, job.record.id);
      desk.start(job, { interrupted: false, alone: false });
      continue;
    }
    watch.denied.set(path, performance.now() + DENIED_FOR_MS);
    if (tellLeft(watch, sayNames(delivery.from), job)) watch.counts.left++;
  }
  return again;
}

/** Scans `in/`, unless the last scan is fresh and not used up. */
async function scan(watch: Watch): Promise<ReadyLook | null> {
  const now = performance.now();
  if (watch.ready.length > 0 && now - watch.scannedAt < SCAN_HOLDS_MS) return null;
  const look = await findReady(watch.finder, now);
  watch.ready = look.ready.filter(({ path }) => now >= (watch.denied.get(path.toString('latin1')) ?? 0));
  watch.scannedAt = now;
  for (const { from, lack } of look.news) {
    tell(watch, 'warn', 'left', { name: sayNames(from), why: lack, message: sayLack(lack) });
  }
  const depth = look.ready.length + look.unready.length + look.moving;
  watch.hooks.onLook({ depth, oldestMs: look.oldestMs, running: watch.desk.running() });
  return look;
}

/** One turn. Returns whether nothing is left to do. */
export async function turn(watch: Watch): Promise<boolean> {
  const { desk, options, station } = watch;
  const side = options.queue?.side ?? null;
  if (watch.restsUntil > 0) {
    if (performance.now() < watch.restsUntil) return false;
    watch.restsUntil = 0;
    openRooms(station.disk, station.layout);
    await watch.room.restore();
    gatherHeld(watch);
  }
  if (side === 'watch') {
    const look = await scan(watch);
    offerReady(watch);
    return look !== null && look.ready.length + look.moving === 0;
  }
  watch.journal.check();
  if (performance.now() - watch.roomsAt >= ROOMS_EVERY_MS) await adopt(watch);
  if (performance.now() >= nextTry(watch)) gatherHeld(watch);
  startHeld(watch);
  const open = resumeAnswered(watch);
  if (side === 'work') {
    takeOrders(watch);
    return false;
  }
  const look = await scan(watch);
  const again = takeReady(watch);
  const idle =
    desk.running() === 0 &&
    watch.held.length === 0 &&
    watch.ready.length === 0 &&
    open === 0 &&
    watch.unread.size === 0;
  if (idle && watch.restsUntil === 0) endRests(watch);
  if (!idle || again || look === null || look.moving > 0) return false;
  if (options.once) watch.counts.left += look.unready.filter(({ lack }) => lack !== 'link-or-device').length;
  return true;
}

/** How long to wait for something to happen, ms. */
export function restTime(watch: Watch): number {
  const { options } = watch;
  if (watch.restsUntil > 0) return Math.max(20, watch.restsUntil - performance.now());
  const untilTry = Math.max(20, nextTry(watch) - performance.now());
  const moving = watch.finder.memory.seen.size > 0 && watch.ready.length === 0 && watch.desk.free() > 0;
  return moving || watch.answers.size > 0
    ? Math.min(options.pollMs, untilTry, Math.max(20, options.quietMs / 2))
    : Math.min(options.pollMs, untilTry);
}
