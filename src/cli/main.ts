// The command line: commands, options, help, and how trouble is told.
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { PinbarError } from '../model/trouble.js';
import { PINBAR_VERSION } from '../model/version.js';
import { printFindings } from '../report/print-findings.js';
import { writeJson, writeMessage } from './console.js';
import { EXIT, exitCodeOf } from './exit-code.js';
import { gather, gatherLimits, LIMITS, parseLength, parsePositive, parseShift, parseSize } from './parse-value.js';

const CODES = `
Exit codes: 0 in register or fit to run, 1 errors were found, 2 wrong use (command line or ticket), 3 the input could not be read,
4 the files could not be written, 5 an answer is needed (a rule or an option settles it),
70 a fault of pinbar, 130 interrupted.`;

interface Run {
  readonly signal: AbortSignal;
  exitCode: number;
}

/** A reader of option values whose complaints reach the user as wrong use. */
function reading<T>(read: (text: string, before: T) => T): (text: string, before: T) => T {
  return (text, before) => {
    try {
      return read(text, before);
    } catch (error) {
      throw new InvalidArgumentError(error instanceof Error ? error.message : String(error));
    }
  };
}

function limitOption(): Option {
  return new Option(
    '--limit <name=number>',
    `raise or lower a limit on what is read, for instance bytes=500000000; names: ${LIMITS.join(', ')} (repeatable)`,
  )
    .argParser(reading(gatherLimits))
    .default({}, 'as README lists');
}

function jsonOption(): Option {
  return new Option('--json', 'the result as one JSON document on standard output');
}

function perInchOption(): Option {
  return new Option(
    '--user-units-per-inch <n>',
    'how many units of the drawing make an inch (96 or 72), where its size is in px or has no unit',
  ).argParser(parsePositive);
}

function addInspect(program: Command, run: Run): void {
  program
    .command('inspect')
    .description('say what is in a layered SVG and which passes it suggests')
    .argument('<file>', 'an .svg or .svgz, or - for standard input')
    .addOption(perInchOption())
    .addOption(limitOption())
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar inspect carton.svg')
    .action(async (file: string, flags) => {
      const { runInspect } = await import('./inspect-command.js');
      run.exitCode = await runInspect(file, flags, run.signal);
    });
}

function ticketOption(): Option {
  return new Option('--ticket <file>', 'the passes, rules and numbers of the job, a JSON file (see README)');
}

function takeOption(): Option {
  const words =
    'a rule, such as cutting=stroke:#e5007d, creasing=layer:"Fold lines" or print=rest; takes the place of all rules of the ticket (repeatable)';
  return new Option('--take <pass=what>', words).argParser(gather).default([], 'by layer names');
}

function addCheck(program: Command, run: Run): void {
  program
    .command('check')
    .description('say whether a drawing is fit to run: a list to work through, worst first')
    .argument('<file>', 'an .svg or .svgz, or - for standard input')
    .addOption(ticketOption())
    .addOption(takeOption())
    .option('--out <picture>', 'an .svg that shows each finding by its number over the drawing')
    .addOption(perInchOption())
    .addOption(limitOption())
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar check carton.svg --ticket job.json --out checks.svg')
    .action(async (file: string, flags) => {
      const { runCheck } = await import('./check-command.js');
      run.exitCode = await runCheck(file, flags, run.signal);
    });
}

function proofOption(): Option {
  return new Option(
    '--proof <form>',
    'picture: proof.svg alone; html: a page too, to send to the customer or keep with the job',
  )
    .choices(['picture', 'html'])
    .default('picture');
}

function witnessOption(): Option {
  return new Option(
    '--witness <when>',
    'whether the second judge looks too (default: auto, which is up to 32 MiB and 400,000 elements and attributes)',
  ).choices(['auto', 'always', 'never']);
}

const SPLIT_EXAMPLES =
  '\nExamples:\n  pinbar split carton.svg\n  pinbar split carton.svg --ticket job.json --out friday\n' +
  '  pinbar split carton.svg --take cutting=stroke:#e5007d --take creasing=layer:"Fold lines" --take print=rest';

function addSplit(program: Command, run: Run): void {
  program
    .command('split')
    .description('make one file per pass, and prove that they overlay')
    .argument('<file>', 'an .svg or .svgz, or - for standard input')
    .addOption(ticketOption())
    .addOption(takeOption())
    .option('--out <folder>', 'where the files go (default: carton.passes beside carton.svg)')
    .option('--force', 'replace an older job')
    .option('--dry-run', 'write nothing, say what would be written')
    .addOption(
      new Option('--hidden <what>', 'what to do with hidden layers (default: ask)').choices([
        'ask',
        'skip',
        'include',
        'stop',
      ]),
    )
    .option('--part-paint', 'where one shape has both: its fill to print, its stroke to the die pass')
    .option(
      '--embed',
      'put linked pictures from the folder of the drawing into the files; short for --linked-pictures embed',
    )
    .addOption(
      new Option('--linked-pictures <what>', 'what to do with linked pictures (default: ask)').choices([
        'ask',
        'embed',
        'leave-out',
      ]),
    )
    .option('--no-marks', 'no register marks; the passes may then draw different extents')
    .option(
      '--margin <mm>',
      'let the artboard grow by this on every side, alike on all passes: room for the marks (default: 0)',
      reading(parseSize),
    )
    .addOption(perInchOption())
    .option('--skip-checks', 'make the files without asking whether they are fit to run; the manifest says so')
    .addOption(proofOption())
    .option('--compact', 'make the files smaller, where nothing moves by it')
    .addOption(witnessOption())
    .addOption(limitOption())
    .addOption(jsonOption())
    .addHelpText('after', SPLIT_EXAMPLES)
    .action(async (file: string, flags) => {
      const { runSplit } = await import('./split-command.js');
      run.exitCode = await runSplit(file, flags, run.signal);
    });
}

function addVerify(program: Command, run: Run): void {
  program
    .command('verify')
    .description('compare any files with each other and with their source')
    .argument('<files...>', 'two or more files, or one and --source')
    .option('--source <file>', 'the layered file they should overlay')
    .option('--tolerance <mm>', 'greatest distance that still counts as equal (default: 0.001)', reading(parseLength))
    .option('--shift <mm,mm>', 'how far the files are known to sit right and down of the source', reading(parseShift))
    .addOption(perInchOption())
    .addOption(limitOption())
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar verify crease.svg print.svg cut.svg --source carton.svg --shift -0.3')
    .action(async (files: string[], flags) => {
      const { runVerify } = await import('./verify-command.js');
      run.exitCode = await runVerify(files, flags, run.signal);
    });
}

function toleranceOption(): Option {
  return new Option(
    '--tolerance <mm>',
    'how far a mark may be out and still be in register: a figure of the shop, never of pinbar',
  ).argParser(reading(parseLength));
}

function addMeasure(program: Command, run: Run): void {
  program
    .command('measure')
    .description('say from measured marks how far the passes are out, and what would correct it; changes nothing')
    .argument(
      '<marks>',
      'a table: name, x, y in mm from the top left of the sheet, one mark a line; - for standard input',
    )
    .option('--job <folder>', 'the job whose marks they are; without it the table also says where each mark is drawn')
    .addOption(toleranceOption())
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar measure marks.csv --job carton.passes --tolerance 0.2')
    .action(async (marks: string, flags) => {
      const { runMeasure } = await import('./measure-command.js');
      run.exitCode = await runMeasure(marks, flags);
    });
}

function addCorrect(program: Command, run: Run): void {
  program
    .command('correct')
    .description('write passes that land where the marks were measured; the others stay as they are')
    .argument('<marks>', 'a table of measured marks, as for measure')
    .requiredOption('--job <folder>', 'the job that was split')
    .requiredOption('--passes <names>', 'the passes to correct, parted by commas')
    .addOption(
      new Option('--fit <kind>', 'what the correction may do (default: what measure marks with >)').choices([
        'shift',
        'turn',
        'scale',
        'affine',
      ]),
    )
    .addOption(toleranceOption())
    .option('--out <folder>', 'where the corrected passes go (default: the job with .corrected behind it)')
    .option('--force', 'replace older ones')
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar correct marks.csv --job carton.passes --passes cut --tolerance 0.2')
    .action(async (marks: string, flags) => {
      const { runCorrect } = await import('./correct-command.js');
      run.exitCode = await runCorrect(marks, flags, run.signal);
    });
}

function buildProgram(run: Run): Command {
  const program = new Command('pinbar')
    .description(
      'Takes one layered SVG apart into one file per pass of the machine, and proves that the files overlay.',
    )
    .version(PINBAR_VERSION, '-V, --version')
    .configureOutput({ writeErr: (text) => process.stderr.write(text) })
    .showHelpAfterError('(see --help)')
    .addHelpText('after', `\nExample:\n  pinbar split carton.svg\n${CODES}`);
  addInspect(program, run);
  addCheck(program, run);
  addSplit(program, run);
  addVerify(program, run);
  addMeasure(program, run);
  addCorrect(program, run);
  for (const command of [program, ...program.commands]) command.exitOverride();
  return program;
}

/** Says what went wrong, on standard error, and with --json as the one document on standard output. */
function tell(error: unknown, asJson: boolean): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.inRegister : EXIT.wrongUse;
  if (error instanceof PinbarError) {
    const exitCode = exitCodeOf(error.code);
    writeMessage(`pinbar: ${printFindings(error.findings, false).trimEnd()}`);
    if (asJson) writeJson({ pinbar: 1, document: 'error', code: error.code, exitCode, findings: error.findings });
    return exitCode;
  }
  writeMessage('pinbar: this is a fault of pinbar; nothing was written. Please report it with the lines below.');
  writeMessage(error instanceof Error ? (error.stack ?? error.message) : String(error));
  if (asJson) writeJson({ pinbar: 1, document: 'error', code: 'fault', exitCode: EXIT.ourFault, findings: [] });
  return EXIT.ourFault;
}

/**
 * Runs the command line.
 *
 * @param argv - Arguments without the program's name.
 * @returns The exit code.
 */
export async function main(argv: readonly string[]): Promise<number> {
  const controller = new AbortController();
  const stop = (): void => controller.abort();
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
  // A reader that has seen enough (head, less) closes the pipe: no fault, and nothing more to say.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  const run: Run = { signal: controller.signal, exitCode: EXIT.inRegister };
  try {
    await buildProgram(run).parseAsync([...argv], { from: 'user' });
    return run.exitCode;
  } catch (error) {
    return tell(error, argv.includes('--json'));
  } finally {
    process.removeListener('SIGINT', stop);
    process.removeListener('SIGTERM', stop);
  }
}
