// The log: lines of JSON on standard error, with levels; names and codes, never art.
import { destination, pino, stdTimeFunctions } from 'pino';
import type { JobEvent } from './run-job.js';
import type { WatchNews } from './watch-options.js';

/** Levels that may be asked for. */
export const LOG_LEVELS: readonly string[] = ['debug', 'info', 'warn', 'error', 'silent'];

/** A log of a watcher. */
export interface WatchLog {
  readonly news: (news: WatchNews) => void;
  readonly job: (event: JobEvent) => void;
}

const LEVEL_OF: Readonly<Record<JobEvent['kind'], 'debug' | 'info' | 'warn' | 'error'>> = {
  done: 'info',
  duplicate: 'info',
  failed: 'warn',
  waiting: 'warn',
  again: 'warn',
  lost: 'debug',
};

/** Opens a log on standard error. */
export function openLog(level: string): WatchLog {
  // Written at once: a log that is lost with the process is of no use.
  const options = {
    level,
    base: { pid: process.pid },
    timestamp: stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
  };
  const log = pino(options, destination({ dest: 2, sync: true }));
  return {
    news: ({ level: at, event, facts }) => log[at](facts, event),
    job: ({ kind, ...facts }) => log[LEVEL_OF[kind]](facts, kind),
  };
}
