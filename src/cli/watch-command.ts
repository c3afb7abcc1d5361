// pinbar watch: a hot folder.
import { resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { MACHINE_DISK } from '../hot-folder/folder-disk.js';
import { type Layout, layOut } from '../hot-folder/layout.js';
import { openLog } from '../hot-folder/open-log.js';
import { printStatus, readStatus } from '../hot-folder/read-status.js';
import { emptyMemory } from '../hot-folder/ready-files.js';
import { type ListenAt, serveTally } from '../hot-folder/serve-tally.js';
import { startTally } from '../hot-folder/tally.js';
import { watchFolder } from '../hot-folder/watch-folder.js';
import type { WatchCounts, WatchOptions } from '../hot-folder/watch-options.js';
import { PinbarError } from '../model/trouble.js';
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
  readonly status?: boolean;
  readonly listen?: ListenAt;
  readonly queue?: string;
  readonly limit: Readonly<Record<string, number>>;
}

function readWatchFlags(folder: string, flags: WatchFlags, side: 'watch' | 'work'): WatchOptions {
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
    queue: flags.queue === undefined ? null : { url: flags.queue, side },
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

/** A folder that is none would look like one where all is done. */
function refuseOther(folder: string, layout: Layout): void {
  if (MACHINE_DISK.look(layout.in)?.kind === 'folder') return;
  throw new PinbarError('read/failed', {
    message: `${folder} is no hot folder: it has no folder in/.`,
    remedy: 'Name the folder that a watcher works on. Its first start makes what is missing.',
  });
}

/** Shows how the folder stands: once, or on a terminal again each second until told to stop. */
async function showStatus(folder: string, flags: WatchFlags, signal: AbortSignal): Promise<number> {
  const layout = layOut(Buffer.from(resolve(folder)));
  refuseOther(folder, layout);
  const memory = emptyMemory();
  for (;;) {
    const status = await readStatus(MACHINE_DISK, layout, memory);
    if (flags.json) writeJson({ pinbar: 1, document: 'status', ...status });
    else if (!process.stdout.isTTY) writeResult(printStatus(status));
    else writeResult(`\u001b[H\u001b[2J${printStatus(status)}`);
    if (flags.json || !process.stdout.isTTY) return EXIT.inRegister;
    await setTimeout(1000, undefined, { signal }).catch(() => undefined);
    if (signal.aborted) return EXIT.inRegister;
  }
}

/** Runs the command; returns the exit code. */
export async function runWatch(
  folder: string,
  flags: WatchFlags,
  signal: AbortSignal,
  side: 'watch' | 'work' = 'watch',
): Promise<number> {
  if (flags.status) return showStatus(folder, flags, signal);
  const log = openLog(flags.logLevel);
  const tally = startTally();
  const server = flags.listen === undefined ? null : await serveTally(tally, flags.listen);
  if (server !== null) log.news({ level: 'info', event: 'listening', facts: { port: server.port } });
  try {
    const counts = await watchFolder(readWatchFlags(folder, flags, side), {
      signal,
      onNews: (news) => {
        log.news(news);
        tally.onNews(news);
      },
      onJob: (event) => {
        log.job(event);
        tally.onJob(event);
      },
      onLook: tally.onLook,
    });
    if (flags.json) writeJson({ pinbar: 1, document: 'watched', ...counts });
    else if (flags.once) writeResult(printCounts(counts));
    return flags.once ? exitCodeFor(counts) : EXIT.inRegister;
  } finally {
    server?.close();
  }
}
