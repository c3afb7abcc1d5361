// The commands measure and correct: their options and their help.
import { type Command, jsonOption, Option, type Run, reading } from './build-options.js';
import { parseSize } from './parse-value.js';

function toleranceOption(): Option {
  return new Option(
    '--tolerance <mm>',
    'how far a mark may be out and still be in register: a figure of the shop, never of pinbar',
  ).argParser(reading(parseSize));
}

/** Declares `measure`. */
export function addMeasure(program: Command, run: Run): void {
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

/** Declares `correct`. */
export function addCorrect(program: Command, run: Run): void {
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
