// The command open: its options and its help.
import type { Command, Run } from './build-options.js';

/** Declares `open`. */
export function addOpen(program: Command, run: Run): void {
  program
    .command('open')
    .description('do all of it in a page of the browser; the drawing never leaves this machine')
    .argument('[file]', 'an .svg or .svgz to begin with, or - for standard input')
    .option('--no-browser', 'print the address of the page and open nothing')
    .addHelpText('after', '\nExample:\n  pinbar open carton.svg')
    .action(async (file: string | undefined, flags) => {
      const { runOpen } = await import('./open-command.js');
      run.exitCode = await runOpen(file, flags, run.signal);
    });
}
