// The command line: its commands, and how trouble is told.
import { PinbarError } from '../model/trouble.js';
import { PINBAR_VERSION } from '../model/version.js';
import { printFindings } from '../report/print-findings.js';
import { Command, CommanderError, type Run } from './build-options.js';
import { writeJson, writeMessage } from './console.js';
import { addCheck, addInspect, addVerify } from './declare-looks.js';
import { addOpen } from './declare-open.js';
import { addCorrect, addMeasure } from './declare-register.js';
import { addRunSheet } from './declare-run-sheet.js';
import { addSplit } from './declare-split.js';
import { addStrip, addTarget } from './declare-strip.js';
import { addRunJobs, addWatch, addWork } from './declare-watch.js';
import { EXIT, exitCodeOf } from './exit-code.js';

const CODES = `
Exit codes: 0 in register or fit to run, 1 errors were found, 2 wrong use (command line or ticket), 3 the input could not be read,
4 the files could not be written, 5 an answer is needed (a rule or an option settles it),
70 a fault of pinbar, 130 interrupted.`;

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
  addWatch(program, run);
  addWork(program, run);
  addRunJobs(program);
  addSplit(program, run);
  addVerify(program, run);
  addMeasure(program, run);
  addCorrect(program, run);
  addStrip(program, run);
  addTarget(program, run);
  addOpen(program, run);
  addRunSheet(program, run);
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
