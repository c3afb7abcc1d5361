// The commands test-strip and register-target: their options and their help.
import { type Command, jsonOption, Option, type Run, reading } from './build-options.js';
import { parseNumber, parsePositive, parseSheet } from './parse-value.js';

function sheetOption(): Option {
  return new Option('--sheet <mmxmm>', 'size of the sheet, mm: 210x297')
    .argParser(reading(parseSheet))
    .default([210, 297], '210x297');
}

/** Declares `test-strip`. */
export function addStrip(program: Command, run: Run): void {
  program
    .command('test-strip')
    .description(
      'make a sheet that tries a tool at one value after the other: one file per value, and a legend to print',
    )
    .requiredOption('--tool <pass>', 'crease, cut, partial-cut, perforate, or the role of the pass')
    .requiredOption('--from <value>', 'first value: gf, mm or cm/s', reading(parseNumber))
    .requiredOption('--to <value>', 'last value', reading(parseNumber))
    .option('--steps <n>', 'how many values, both ends among them (default: 7)', reading(parsePositive), 7)
    .addOption(
      new Option('--setting <what>', 'what is tried: pressure in gf, offset in mm, speed in cm/s')
        .choices(['pressure', 'offset', 'speed'])
        .default('pressure'),
    )
    .addOption(sheetOption())
    .option('--out <folder>', 'where the files go (default: crease-strip for a crease)')
    .option('--force', 'replace an older one')
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar test-strip --tool crease --from 100 --to 400 --steps 7')
    .action(async (flags) => {
      const { runStrip } = await import('./strip-command.js');
      run.exitCode = await runStrip(flags, run.signal);
    });
}

/** Declares `register-target`. */
export function addTarget(program: Command, run: Run): void {
  program
    .command('register-target')
    .description('make a sheet that shows to a tenth of a mm how far each tool pass lies from the print')
    .option(
      '--passes <names>',
      'the passes of the machine in the order of the runs, parted by commas',
      'crease,print,cut',
    )
    .addOption(sheetOption())
    .option('--out <folder>', 'where the files go (default: register-target)')
    .option('--force', 'replace an older one')
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar register-target --passes crease,print,cut')
    .action(async (flags) => {
      const { runTarget } = await import('./strip-command.js');
      run.exitCode = await runTarget(flags, run.signal);
    });
}
