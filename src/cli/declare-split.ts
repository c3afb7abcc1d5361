// The command split: its options and their help.
import {
  addRunOptions,
  type Command,
  jsonOption,
  limitOption,
  Option,
  perInchOption,
  type Run,
  reading,
  takeOption,
  ticketOption,
} from './build-options.js';
import { type PassLengths, parsePassLengths, parseSize } from './parse-value.js';
import { sheetOptions } from './sheet-options.js';

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

function perforateOption(): Option {
  return new Option(
    '--perforate <pass=cutxtie>',
    'cut and tie by turns along the lines of a pass, in mm, such as perforate=6x1 (repeatable)',
  ).argParser(
    reading((text: string, before: readonly PassLengths[] | undefined) => [
      ...(before ?? []),
      parsePassLengths(text, 2),
    ]),
  );
}

function holdOption(): Option {
  return new Option(
    '--hold <pass=tie>',
    'few ties that hold the pieces of a pass in the board, in mm, such as cut=0.5 (repeatable)',
  ).argParser(
    reading((text: string, before: readonly PassLengths[] | undefined) => [
      ...(before ?? []),
      parsePassLengths(text, 1),
    ]),
  );
}

const SPLIT_EXAMPLES =
  '\nExamples:\n  pinbar split carton.svg\n  pinbar split carton.svg --ticket job.json --out friday\n' +
  '  pinbar split carton.svg --take cutting=stroke:#e5007d --take creasing=layer:"Fold lines" --take print=rest';

/** Declares `split`. */
export function addSplit(program: Command, run: Run): void {
  const command = program
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
    .addOption(perInchOption());
  for (const option of sheetOptions()) command.addOption(option);
  command
    .option('--skip-checks', 'make the files without asking whether they are fit to run; the manifest says so')
    .addOption(proofOption())
    .option('--sequence', 'put the lines of tool passes in order: inner outlines before outer ones, and a short way')
    .option('--restart-contours', 'the same, and lines may be written from another start point, or backwards')
    .addOption(perforateOption())
    .addOption(holdOption())
    .option('--ties-pass', 'write the ties as a pass of their own too, for scoring them at lower pressure')
    .option('--compact', 'make the files smaller, where nothing moves by it')
    .addOption(witnessOption())
    .addOption(limitOption())
    .addOption(jsonOption());
  addRunOptions(command)
    .addHelpText('after', SPLIT_EXAMPLES)
    .action(async (file: string, flags) => {
      const { runSplit } = await import('./split-command.js');
      run.exitCode = await runSplit(file, flags, run.signal);
    });
}
