// What a watcher is told.
import type { LimitChanges } from '../index.js';

/** Options of a watcher; times are ms. */
export interface WatchOptions {
  /** The hot folder, bytes. */
  readonly folder: Buffer;
  /** Name of the owner; null: the machine's. Only a name that was said brings back what it left on another machine. */
  readonly owner: string | null;
  /** Owners whose jobs are taken over although nobody can tell from here whether they live. */
  readonly takeOver: readonly string[];
  readonly jobs: number;
  /** How long a file must rest before it is taken. */
  readonly quietMs: number;
  /** After how long a file that is not complete is named. */
  readonly patienceMs: number;
  readonly pollMs: number;
  /** True: no events, scans alone. */
  readonly pollOnly: boolean;
  /** True: art waits for the ticket beside it. */
  readonly waitTicket: boolean;
  readonly timeLimitMs: number;
  readonly memoryLimitMb: number;
  /** How long running jobs may go on when the watcher is told to stop. */
  readonly stopMs: number;
  /** True: ends when everything that lies there is settled. */
  readonly once: boolean;
  readonly limits: LimitChanges;
  /** Queue that jobs are handed on through, and from which side; null: the watcher does them itself. */
  readonly queue: { readonly url: string; readonly side: 'watch' | 'work' } | null;
  /** The program and its arguments that serve jobs. */
  readonly program: readonly [string, ...string[]];
}

/** What a watcher counted. */
export interface WatchCounts {
  readonly done: number;
  readonly duplicate: number;
  readonly failed: number;
  readonly waiting: number;
  /** Files in `in/` that were left where they are: never complete, not allowed, or without the ticket that was to be waited for. */
  readonly left: number;
  /** Whether the folder rests because of trouble. */
  readonly resting: boolean;
}

/** What a watcher tells while it works. */
export interface WatchNews {
  readonly level: 'debug' | 'info' | 'warn' | 'error';
  readonly event: string;
  readonly facts: Readonly<Record<string, unknown>>;
}
