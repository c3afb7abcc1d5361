// The desk: which jobs of a watcher run now, which must run with nothing beside them, and what became of trouble.
import { noFacts } from './end-job.js';
import { isFolderTrouble } from './explain-trouble.js';
import { FileTrouble } from './file-trouble.js';
import { replaceRecord } from './job-record.js';
import { failJob, failUnread, type Runner, type RunningJob, runJob, tellJob, WORKER_ENDS } from './run-job.js';
import { type HeldJob, JobLost } from './station.js';

/** What the desk works with. */
export interface DeskOptions {
  readonly runner: Runner;
  /** How many jobs at once. */
  readonly size: number;
  /** Trouble with the folder: the job stays in the watcher's room, to be started again. */
  readonly onTrouble: (error: unknown, job: HeldJob) => void;
  /** A file of the job cannot be read. Returns whether it stays in the watcher's room, to be tried again later. */
  readonly onUnread: (error: FileTrouble, job: HeldJob) => boolean;
}

/** How a job starts. */
export interface JobStart {
  /** Whether an earlier run was cut off. */
  readonly interrupted: boolean;
  /** Whether it waits until nothing else runs. */
  readonly alone: boolean;
}

/** The desk of a watcher. */
export interface Desk {
  /** How many more jobs may start. */
  readonly free: () => number;
  readonly start: (job: HeldJob, how: JobStart) => void;
  /** Whether a job is here, by the name of its folder. */
  readonly holds: (id: string) => boolean;
  /** Starts nothing more that waits. */
  readonly close: () => void;
  readonly running: () => number;
  /** Resolves when nothing runs and nothing waits to run alone. */
  readonly settled: () => Promise<void>;
}

/** How often a job may be started all alone before it is set aside: a power cut is no fault of the file. */
const MOST_ALONE_RUNS = 3;

interface DeskState {
  readonly options: DeskOptions;
  readonly active: Map<string, Promise<void>>;
  readonly alone: RunningJob[];
  /** Whether the one that runs wants nothing beside it. */
  exclusive: boolean;
  closed: boolean;
}

/** Trouble ends in one of four ways: the job is another's, a file of it is broken, the folder has to be mended, or the fault is ours and told. */
function meetTrouble({ options }: DeskState, job: HeldJob, error: unknown): void {
  const { runner, onTrouble, onUnread } = options;
  try {
    if (error instanceof JobLost || runner.station.disk.look(job.folder) === null) {
      tellJob(runner, job, 'lost', noFacts([]));
    } else if (error instanceof FileTrouble) {
      // To set it aside the folder has to take a report: where the whole disk is gone that fails too, and the folder rests.
      if (!onUnread(error, job)) failUnread(runner, job, error);
    } else if (isFolderTrouble(error)) {
      onTrouble(error, job);
    } else {
      const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
      failJob(runner, job, `This is a fault of pinbar, not of the file.\n${words}`, noFacts(['fault']));
    }
  } catch (again) {
    onTrouble(again, job);
  }
}

async function run(state: DeskState, job: RunningJob): Promise<void> {
  try {
    const end = await runJob(state.options.runner, job);
    if (end === 'again') state.alone.push({ ...job, interrupted: true, alone: true });
  } catch (error) {
    meetTrouble(state, job, error);
  } finally {
    state.active.delete(job.record.id);
    if (job.alone) state.exclusive = false;
    startAlone(state);
  }
}

function begin(state: DeskState, job: RunningJob): void {
  if (job.alone) state.exclusive = true;
  // Not in this turn: whoever starts jobs is done with the disk first.
  const done = Promise.resolve().then(() => run(state, job));
  state.active.set(job.record.id, done);
}

/** Counts the run before it begins, so that a machine that dies of it knows at the next start. */
function startAlone(state: DeskState): void {
  const { runner, onTrouble } = state.options;
  while (!state.closed && state.active.size === 0 && state.alone.length > 0) {
    const job = state.alone.shift()!;
    const record = { ...job.record, aloneRuns: job.record.aloneRuns + 1 };
    try {
      if (record.aloneRuns > MOST_ALONE_RUNS) {
        failJob(runner, job, WORKER_ENDS.died, noFacts(['worker/died']));
        continue;
      }
      replaceRecord(runner.station.disk, job.folder, record);
    } catch (error) {
      onTrouble(error, job);
      continue;
    }
    begin(state, { ...job, record });
  }
}

/** Opens a desk. */
export function openDesk(options: DeskOptions): Desk {
  const state: DeskState = { options, active: new Map(), alone: [], exclusive: false, closed: false };
  const isBlocked = (): boolean => state.closed || state.exclusive || state.alone.length > 0;
  return {
    free: () => (isBlocked() ? 0 : options.size - state.active.size),
    start: (job, how) => {
      if (!how.alone) return begin(state, { ...job, ...how });
      state.alone.push({ ...job, ...how });
      return startAlone(state);
    },
    holds: (id) => state.active.has(id) || state.alone.some((job) => job.record.id === id),
    close: () => {
      state.closed = true;
    },
    running: () => state.active.size + (state.closed ? 0 : state.alone.length),
    settled: async () => {
      while (state.active.size > 0) await Promise.race(state.active.values());
    },
  };
}
