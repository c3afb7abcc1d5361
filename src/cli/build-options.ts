// The package that reads the command line enters here; and options that several commands know.
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { gather, gatherLimits, LIMITS, parseCount, parsePositive } from './parse-value.js';

export { Command, CommanderError, Option };

/** A run of the command: what stops it, and the code it ends with. */
export interface Run {
  readonly signal: AbortSignal;
  exitCode: number;
}

/** A reader of option values whose complaints reach the user as wrong use. */
export function reading<T>(read: (text: string, before: T) => T): (text: string, before: T) => T {
  return (text, before) => {
    try {
      return read(text, before);
    } catch (error) {
      throw new InvalidArgumentError(error instanceof Error ? error.message : String(error));
    }
  };
}

/** `--limit`: bounds of the reader. */
export function limitOption(): Option {
  return new Option(
    '--limit <name=number>',
    `raise or lower a limit on what is read, for instance bytes=500000000; names: ${LIMITS.join(', ')} (repeatable)`,
  )
    .argParser(reading(gatherLimits))
    .default({}, 'as README lists');
}

/** `--json`. */
export function jsonOption(): Option {
  return new Option('--json', 'the result as one JSON document on standard output');
}

/** `--user-units-per-inch`. */
export function perInchOption(): Option {
  return new Option(
    '--user-units-per-inch <n>',
    'how many units of the drawing make an inch (96 or 72), where its size is in px or has no unit',
  ).argParser(parsePositive);
}

/** `--ticket`. */
export function ticketOption(): Option {
  return new Option('--ticket <file>', 'the passes, rules and numbers of the job, a JSON file (see README)');
}

/** `--take`, which may stand several times. */
export function takeOption(): Option {
  const words =
    'a rule, such as cutting=stroke:#e5007d, creasing=layer:"Fold lines" or print=rest; takes the place of all rules of the ticket (repeatable)';
  return new Option('--take <pass=what>', words).argParser(gather).default([], 'by layer names');
}

/** Adds the options of a run sheet. */
export function addRunOptions(command: Command): Command {
  return command
    .option(
      '--profile <file>',
      'make a run sheet: machines, materials and figures of the shop, a JSON file (see README)',
    )
    .option('--machine <name>', 'which machine of the profile; may be left out where it has one')
    .option('--material <name>', 'which material of the profile; may be left out where it has one')
    .option('--sheets <n>', 'how many sheets are run (default: 250)', reading(parseCount));
}
