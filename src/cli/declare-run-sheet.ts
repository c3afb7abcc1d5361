// The command run-sheet: its options and its help.
import { addRunOptions, type Command, jsonOption, type Run } from './build-options.js';

/** Declares `run-sheet`. */
export function addRunSheet(program: Command, run: Run): void {
  const command = program
    .command('run-sheet')
    .description('write the page for the machine: passes in order, tools, settings, times, cautions')
    .argument('<job>', 'the folder that split wrote');
  addRunOptions(command)
    .option('--out <folder>', 'where the run sheet goes (default: into the job); replaces an older one')
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  pinbar run-sheet carton.passes --profile shop.json --sheets 250')
    .action(async (job: string, flags) => {
      const { runRunSheet } = await import('./run-sheet-command.js');
      run.exitCode = await runRunSheet(job, flags, run.signal);
    });
}
