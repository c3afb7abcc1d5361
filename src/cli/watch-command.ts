// pinbar watch: a hot folder.
import { resolve } from 'node:path';
import { openLog } from '../hot-folder/open-log.js';
import { watchFolder } from '../hot-folder/watch-folder.js';
import type { WatchCounts, WatchOptions } from '../hot-folder/watch-options.js';
import { writeJson, writeResult } from './console.js';
import { EXIT } from './exit-code.js';

/** Options as the command line gives them; times in seconds. */
export interface WatchFlags {
  readonly once?: boolean;
  readonly pollOnly?: boolean;
  readonly poll: number;
  readonly quietTime: number;
  readonly patience: number;
  readonly waitTicket?: boolean;
  readonly jobs: number;
  readonly timeLimit: number;
  readonly memoryLimit: number;
  readonly stopTime: number;
  readonly owner?: string;
  readonly takeOver: readonly string[];
  readonly logLevel: string;
  readonly json?: boolean;
  readonly limit: Readonly<Record<string, number>>;
}

/** The options of a watcher, from those of the command line. */
export function readWatchFlags(folder: string, flags: WatchFlags): WatchOptions {
  return {
    folder: Buffer.from(resolve(folder)),
    owner: flags.owner ?? null,
    takeOver: flags.takeOver,
    jobs: Math.max(1, Math.floor(flags.jobs)),
    quietMs: flags.quietTime * 1000,
    patienceMs: flags.patience * 1000,
    pollMs: flags.poll * 1000,
    pollOnly: flags.pollOnly === true,
    waitTicket: flags.waitTicket === true,
    timeLimitMs: flags.timeLimit * 1000,
    memoryLimitMb: Math.floor(flags.memoryLimit),
    stopMs: flags.stopTime * 1000,
    once: flags.once === true,
    limits: flags.limit,
    // The command itself, as it was called: the workers are the same program.
    program: [process.argv[1]!, 'run-jobs'],
  };
}

function exitCodeFor(counts: WatchCounts): number {
  if (counts.resting) return EXIT.unwritable;
  if (counts.failed > 0) return EXIT.findings;
  return counts.waiting > 0 ? EXIT.answerNeeded : EXIT.inRegister;
}

function printCounts({ done, duplicate, failed, waiting, left }: WatchCounts): string {
  return `${done} done, ${duplicate} again, ${failed} failed, ${waiting} waiting, ${left} left\n`;
}

/** Runs the command; returns the exit code. */
export async function runWatch(folder: string, flags: WatchFlags, signal: AbortSignal): Promise<number> {
  const log = openLog(flags.logLevel);
  const counts = await watchFolder(readWatchFlags(folder, flags), {
    signal,
    onNews: log.news,
    onJob: log.job,
    onLook: () => undefined,
  });
  if (flags.json) writeJson({ pinbar: 1, document: 'watched', ...counts });
  else if (flags.once) writeResult(printCounts(counts));
  return flags.once ? exitCodeFor(counts) : EXIT.inRegister;
}
