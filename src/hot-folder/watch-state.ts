// A watcher at work: what it knows, and how it meets trouble.
import type { ChangeBell } from './change-bell.js';
import { explainTrouble } from './explain-trouble.js';
import { FILE_TRIES, FILE_TRIES_APART_MS } from './file-trouble.js';
import type { Desk } from './job-desk.js';
import type { JobFeed } from './job-feed.js';
import type { JournalCheck } from './journal-check.js';
import type { Room } from './owner.js';
import type { Finder } from './ready-files.js';
import type { JobEvent, Runner } from './run-job.js';
import { type LeftWhy, sayLack } from './say-lack.js';
import type { Delivery } from './scan-in.js';
import type { HeldJob, Station } from './station.js';
import type { WatchNews, WatchOptions } from './watch-options.js';

/** What a watcher reports to, and what stops it. */
export interface WatchHooks {
  readonly signal: AbortSignal;
  readonly onNews: (news: WatchNews) => void;
  readonly onJob: (event: JobEvent) => void;
  readonly onLook: (look: { readonly depth: number; readonly oldestMs: number; readonly running: number }) => void;
}

/** How long the folder rests after trouble, at first and at most, ms. */
export const FIRST_REST_MS = 500;
export const LONGEST_REST_MS = 30_000;

/** A watcher at work. */
export interface Watch {
  readonly options: WatchOptions;
  readonly hooks: WatchHooks;
  readonly room: Room;
  readonly station: Station;
  readonly runner: Runner;
  readonly journal: JournalCheck;
  readonly desk: Desk;
  readonly finder: Finder;
  /** Marks of answers that are being written, by job folder. */
  readonly answers: Map<string, { readonly mark: string; readonly since: number }>;
  readonly counts: { done: number; duplicate: number; failed: number; waiting: number; left: number };
  /** Deliveries that their folders do not let go of, by path, and when they are tried again. */
  readonly denied: Map<string, number>;
  /** What was named as left where it lies, by why and name. */
  readonly told: Set<string>;
  /** The queue, where there is one. */
  feed: JobFeed | null;
  /** What tells the queue that a job is settled, by path while it is not claimed, and by id then. */
  readonly orders: Map<string, () => void>;
  /** Jobs in our room that are to be started. */
  readonly held: { readonly job: HeldJob; readonly alone: boolean }[];
  /** Jobs in our room of which a file could not be read: how often, and when they are tried again. */
  readonly unread: Map<string, { readonly tries: number; readonly at: number }>;
  /** Deliveries that were ready at the last scan, and when that was. */
  ready: Delivery[];
  scannedAt: number;
  /** When work may go on after trouble; 0: there is none. */
  restsUntil: number;
  /** How often in a row trouble came back. */
  rests: number;
  roomsAt: number;
  /** How many other watchers seemed to be at work when rooms were last looked at. */
  others: number;
  readonly change: ChangeBell;
}

/** Tells something. */
export function tell(watch: Watch, level: WatchNews['level'], event: string, facts: WatchNews['facts'] = {}): void {
  watch.hooks.onNews({ level, event, facts });
}

/** Notes that a file of a job could not be read. Returns whether it is to be tried again. */
export function noteUnread(watch: Watch, id: string): boolean {
  const tries = (watch.unread.get(id)?.tries ?? 0) + 1;
  watch.unread.delete(id);
  if (tries >= FILE_TRIES) return false;
  watch.unread.set(id, { tries, at: performance.now() + FILE_TRIES_APART_MS });
  return true;
}

/** Names what is left where it lies, once. Returns whether it was news. */
export function tellLeft(watch: Watch, name: string, why: LeftWhy): boolean {
  const { told } = watch;
  const key = `${why} ${name}`;
  if (told.has(key)) return false;
  told.add(key);
  tell(watch, 'warn', 'left', { name, why, message: sayLack(why) });
  return true;
}

/** Trouble with the folder: nothing is taken for a while, longer each time. */
export function takeRest(watch: Watch, error: unknown): void {
  // Jobs that meet the same trouble at once are one trouble.
  if (watch.restsUntil > 0) return;
  if (watch.rests === 0) tell(watch, 'error', 'resting', { message: explainTrouble(error) });
  const length = Math.min(LONGEST_REST_MS, FIRST_REST_MS * (1 << Math.min(watch.rests, 6)));
  watch.restsUntil = performance.now() + length;
  watch.rests++;
  watch.ready = [];
}

/** Trouble is over. */
export function endRests(watch: Watch): void {
  if (watch.rests > 0 && watch.restsUntil === 0) {
    watch.rests = 0;
    tell(watch, 'info', 'going on');
  }
}
