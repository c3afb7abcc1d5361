// The commands of the hot folder.
import { availableParallelism } from 'node:os';
import { type Command, limitOption, Option, type Run, reading } from './build-options.js';
import { gather, parseListen, parsePositive, parseSeconds } from './parse-value.js';

const EXAMPLES =
  '\nExamples:\n  pinbar watch /srv/cartons\n  pinbar watch /srv/cartons --once --quiet-time 1\n\n' +
  'Drop drawings into FOLDER/in; the files come to FOLDER/out. With --once the exit code is 1 where a job failed,\n' +
  '5 where one waits for an answer, 4 where the folder could not be written.';

/** Options of whatever runs jobs of a hot folder; `who` says what it is called. */
function addJobOptions(command: Command, who: 'watcher' | 'worker'): Command {
  return command
    .addOption(
      new Option('--jobs <n>', 'jobs at once')
        .argParser(reading(parsePositive))
        .default(availableParallelism(), 'as many as cores'),
    )
    .addOption(
      new Option('--time-limit <seconds>', 'how long a job may take').argParser(reading(parseSeconds)).default(300),
    )
    .addOption(
      new Option('--memory-limit <mb>', 'how much memory a job may use')
        .argParser(reading(parsePositive))
        .default(1024),
    )
    .addOption(
      new Option(
        '--stop-time <seconds>',
        'how long running jobs may go on when told to stop; then they are left for the next start',
      )
        .argParser(reading(parseSeconds))
        .default(30),
    )
    .addOption(new Option('--owner <name>', `name of this ${who} (default: that of the machine)`))
    .addOption(
      new Option(
        '--take-over <name>',
        `take the jobs of a ${who} on another machine that is gone for good (repeatable)`,
      )
        .argParser(reading(gather))
        .default([], 'none'),
    )
    .addOption(
      new Option('--log-level <level>', 'what is logged')
        .choices(['debug', 'info', 'warn', 'error', 'silent'])
        .default('info'),
    )
    .addOption(limitOption());
}

/** An option of both sides of a queue; `what` says what this side does with it. */
function queueOption(what: string): Option {
  return new Option('--queue <url>', `${what}, by Redis: redis://host:6379 (needs bullmq and ioredis)`);
}

/** Adds `pinbar work`. */
export function addWork(program: Command, run: Run): void {
  const work = program
    .command('work')
    .description('do the jobs that a watcher with --queue hands on')
    .argument('<folder>', 'the same hot folder, by its path on this machine')
    .addOption(queueOption('take the jobs that the watcher of this folder hands on').makeOptionMandatory());
  addJobOptions(work, 'worker')
    .addHelpText('after', '\nExample:\n  pinbar work /srv/cartons --queue redis://queue.example:6379')
    .action(async (folder: string, flags) => {
      const { runWatch } = await import('./watch-command.js');
      const given = { poll: 5, quietTime: 2, patience: 600, ...flags, pollOnly: true };
      run.exitCode = await runWatch(folder, given, run.signal, 'work');
    });
}

/** Adds `pinbar watch`. */
export function addWatch(program: Command, run: Run): void {
  const watch = program
    .command('watch')
    .description('a hot folder: whatever is dropped into FOLDER/in is split, and nothing is lost')
    .argument('<folder>', 'the hot folder; its rooms are made where they are missing')
    .option('--once', 'end when everything that lies there is settled')
    .option('--poll-only', 'look at the folder now and then, without events: for shares')
    .addOption(new Option('--poll <seconds>', 'how often to look').argParser(reading(parseSeconds)).default(5))
    .addOption(
      new Option('--quiet-time <seconds>', 'how long a file must rest').argParser(reading(parseSeconds)).default(2),
    )
    .addOption(
      new Option('--patience <seconds>', 'after how long a file that is not complete is named')
        .argParser(reading(parseSeconds))
        .default(600),
    )
    .option('--wait-ticket', 'art waits for a ticket beside it: carton.ticket.json for carton.svg');
  addJobOptions(watch, 'watcher')
    .addOption(queueOption('hand jobs to workers on other machines'))
    .option('--status', 'watch nothing: show how the folder stands, on a terminal again each second')
    .addOption(
      new Option('--listen <host:port>', 'say how the watcher does at /healthz and /metrics').argParser(
        reading(parseListen),
      ),
    )
    .option('--json', 'the counts as one JSON document on standard output at the end')
    .addHelpText('after', EXAMPLES)
    .action(async (folder: string, flags) => {
      const { runWatch } = await import('./watch-command.js');
      run.exitCode = await runWatch(folder, flags, run.signal);
    });
}

/** Adds what the workers of a watcher run; nobody else calls it. */
export function addRunJobs(program: Command): void {
  program.command('run-jobs', { hidden: true }).action(async () => {
    const { serveJobs } = await import('../hot-folder/serve-jobs.js');
    await serveJobs();
  });
}
