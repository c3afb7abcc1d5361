// The commands that look and write no passes: inspect, check, verify.
import {
  type Command,
  jsonOption,
  limitOption,
  perInchOption,
  type Run,
  reading,
  takeOption,
  ticketOption,
} from './build-options.js';
import { parseLength, parseShift } from './parse-value.js';

/** Declares `inspect`. */
export function addInspect(program: Command, run: Run): void {
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

/** Declares `check`. */
export function addCheck(program: Command, run: Run): void {
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

/** Declares `verify`. */
export function addVerify(program: Command, run: Run): void {
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
