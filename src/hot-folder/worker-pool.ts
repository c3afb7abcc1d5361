// Worker processes: one job each at a time, so that what a job does to its process it does to itself alone.
import { type ChildProcess, fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { JobAsked, WorkerEnd, WorkerReply } from './job-message.js';

/** What came of handing a job to a worker. */
export type WorkerResult = WorkerReply | { readonly end: WorkerEnd };

/** Bounds of a job, and where the workers come from. */
export interface PoolOptions {
  /** How many at once. */
  readonly size: number;
  /** The program and its arguments that serve jobs. */
  readonly program: readonly [string, ...string[]];
  readonly timeLimitMs: number;
  readonly memoryLimitMb: number;
}

/** Workers that are started when asked for, and used again. */
export interface WorkerPool {
  readonly size: number;
  readonly run: (asked: JobAsked) => Promise<WorkerResult>;
  /** Ends all workers; what runs ends as `stopped`. */
  readonly stop: () => void;
}

interface Worker {
  readonly child: ChildProcess;
  jobs: number;
  settle: ((result: WorkerResult) => void) | null;
}

/** After so many jobs a worker is replaced: whatever grows in it does not grow for ever. */
const JOBS_PER_WORKER = 500;
/** How often the memory of busy workers is looked at, ms. */
const LOOK_EVERY_MS = 200;

/** Memory that a process holds, MB; 0 where the system does not say. */
function residentMb(pid: number | undefined): number {
  try {
    const kilobytes = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return Number(kilobytes ?? 0) / 1024;
  } catch {
    return 0;
  }
}

function startWorker(options: PoolOptions, onEnd: (worker: Worker) => void): Worker {
  const [program, ...args] = options.program;
  const child = fork(program, args, {
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    execArgv: [`--max-old-space-size=${options.memoryLimitMb}`],
  });
  const worker: Worker = { child, jobs: 0, settle: null };
  const end = (why: WorkerEnd): void => {
    onEnd(worker);
    worker.settle?.({ end: why });
    worker.settle = null;
  };
  child.on('message', (message) => {
    if ('ready' in (message as object)) return;
    const { settle } = worker;
    worker.settle = null;
    settle?.(message as WorkerResult);
  });
  child.once('error', () => end('died'));
  // The engine ends itself with SIGABRT where its heap is full.
  child.once('exit', (_code, signal) => end(signal === 'SIGABRT' ? 'memory' : 'died'));
  return worker;
}

/** Runs a job in a worker under its bounds. */
function runIn(worker: Worker, asked: JobAsked, options: PoolOptions): Promise<WorkerResult> {
  return new Promise((resolve) => {
    const stopWith = (why: WorkerEnd): void => {
      settle({ end: why });
      worker.child.kill('SIGKILL');
    };
    const time = setTimeout(() => stopWith('time'), options.timeLimitMs);
    const memory = setInterval(() => {
      if (residentMb(worker.child.pid) > options.memoryLimitMb) stopWith('memory');
    }, LOOK_EVERY_MS);
    const settle = (result: WorkerResult): void => {
      clearTimeout(time);
      clearInterval(memory);
      worker.settle = null;
      resolve(result);
    };
    worker.jobs++;
    worker.settle = settle;
    // A worker that is already gone says so by its exit, not here.
    worker.child.send(asked, (error) => {
      if (error !== null && worker.settle === settle) settle({ end: 'died' });
    });
  });
}

/** Makes a pool; it starts no worker before the first job. */
export function createPool(options: PoolOptions): WorkerPool {
  const workers = new Set<Worker>();
  const idle: Worker[] = [];
  let stopped = false;
  const forget = (worker: Worker): void => {
    workers.delete(worker);
    const at = idle.indexOf(worker);
    if (at !== -1) idle.splice(at, 1);
  };
  const hire = (): Worker => {
    const worker = startWorker(options, forget);
    workers.add(worker);
    return worker;
  };
  return {
    size: options.size,
    run: async (asked) => {
      if (stopped) return { end: 'stopped' };
      const worker = idle.pop() ?? hire();
      const result = await runIn(worker, asked, options);
      if (stopped && 'end' in result) return { end: 'stopped' };
      if ('end' in result) return result;
      if (worker.jobs < JOBS_PER_WORKER && worker.child.connected) idle.push(worker);
      else worker.child.disconnect();
      return result;
    },
    stop: () => {
      stopped = true;
      for (const { child } of workers) child.kill('SIGKILL');
    },
  };
}
