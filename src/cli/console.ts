// What the command says: the result on standard output, all else on standard error.
import type { Stage } from '../model/job.js';

/** Writes the result. */
export function writeResult(text: string): void {
  process.stdout.write(text);
}

/** Writes a message. */
export function writeMessage(text: string): void {
  process.stderr.write(`${text}\n`);
}

/** Writes one JSON document as the result. */
export function writeJson(value: unknown): void {
  writeResult(`${JSON.stringify(value, null, 2)}\n`);
}

const WORDS: Readonly<Record<Stage, string>> = {
  read: 'reading',
  resolve: 'working out boxes and paint',
  classify: 'sorting shapes into passes',
  split: 'taking apart',
  check: 'checking whether it is fit to run',
  derive: 'putting lines in order',
  compact: 'making smaller files',
  write: 'naming and hashing the files',
  'lay-out': 'laying copies out on sheets',
  'read-back': 'first judge: reading the files back',
  witness: 'second judge: comparing',
  report: 'drawing the proof',
};

/** Shows the stage on a terminal, on one line that is wiped when done; silent elsewhere. */
export function createProgress(): { readonly show: (stage: Stage) => void; readonly wipe: () => void } {
  const { stderr } = process;
  if (!stderr.isTTY) return { show: () => undefined, wipe: () => undefined };
  return {
    show: (stage) => {
      stderr.write(`\r\u001b[K${WORDS[stage]} ...`);
    },
    wipe: () => {
      stderr.write('\r\u001b[K');
    },
  };
}
