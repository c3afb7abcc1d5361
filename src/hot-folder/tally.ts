// What a watcher counts while it works, for whoever watches the watcher.
import type { JobEvent } from './run-job.js';
import type { WatchNews } from './watch-options.js';

/** The queue as it was last seen. */
export interface QueueLook {
  readonly depth: number;
  readonly oldestMs: number;
  readonly running: number;
}

/** Counts of a watcher. */
export interface Tally {
  readonly onJob: (event: JobEvent) => void;
  readonly onNews: (news: WatchNews) => void;
  readonly onLook: (look: QueueLook) => void;
  /** Null while all is well, else why the folder rests. */
  readonly trouble: () => string | null;
  /** In the text format that Prometheus reads. */
  readonly print: () => string;
}

const ENDINGS = ['done', 'duplicate', 'failed', 'waiting', 'again', 'lost'] as const;

function printMetric(name: string, help: string, type: 'counter' | 'gauge', lines: readonly string[]): string {
  return `# HELP ${name} ${help}\n# TYPE ${name} ${type}\n${lines.map((line) => `${name}${line}\n`).join('')}`;
}

/** Starts counting. */
export function startTally(): Tally {
  const jobs = new Map<string, number>();
  let [seconds, bytes] = [0, 0];
  let queue: QueueLook = { depth: 0, oldestMs: 0, running: 0 };
  let trouble: string | null = null;
  return {
    onJob: (event) => {
      jobs.set(event.kind, (jobs.get(event.kind) ?? 0) + 1);
      seconds += event.seconds;
      bytes += event.bytes;
    },
    onNews: ({ event, facts }) => {
      if (event === 'resting') trouble = String(facts.message);
      if (event === 'going on') trouble = null;
    },
    onLook: (look) => {
      queue = look;
    },
    trouble: () => trouble,
    print: () =>
      [
        printMetric(
          'pinbar_jobs_total',
          'Jobs by how they ended.',
          'counter',
          ENDINGS.map((kind) => `{ending="${kind}"} ${jobs.get(kind) ?? 0}`),
        ),
        printMetric('pinbar_job_seconds_total', 'Seconds that workers took.', 'counter', [` ${seconds}`]),
        printMetric('pinbar_job_bytes_total', 'Bytes of the art of all jobs.', 'counter', [` ${bytes}`]),
        printMetric('pinbar_queue_depth', 'Files that lie in the folder.', 'gauge', [` ${queue.depth}`]),
        printMetric('pinbar_queue_oldest_seconds', 'How long the oldest of them lies there.', 'gauge', [
          ` ${queue.oldestMs / 1000}`,
        ]),
        printMetric('pinbar_jobs_running', 'Jobs at work.', 'gauge', [` ${queue.running}`]),
        printMetric('pinbar_resting', 'Whether the folder rests because of trouble.', 'gauge', [
          ` ${trouble === null ? 0 : 1}`,
        ]),
      ].join(''),
  };
}
