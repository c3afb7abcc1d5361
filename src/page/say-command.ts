// The command that makes the same files.
import type { Along } from './protocol.js';

/** A word as a shell takes it. */
function quote(word: string): string {
  return /^[\w./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}

/** A name of a file, which a dash in front would make an option. */
function nameFile(name: string): string {
  return quote(name.startsWith('-') ? `./${name}` : name);
}

/** The command line that repeats what the page did, with the files of the zip beside the drawing. */
export function sayCommand(drawing: string, stem: string, along: Along): string {
  const { proofPage, profile, machine, material, sheets } = along;
  const run =
    profile === null
      ? []
      : [
          ...['--profile', nameFile(profile.name), '--machine', quote(machine)],
          ...(material === '' ? [] : ['--material', quote(material)]),
          ...['--sheets', String(sheets)],
        ];
  const proof = proofPage ? ['--proof', 'html'] : [];
  return ['pinbar', 'split', nameFile(drawing), '--ticket', nameFile(`${stem}.ticket.json`), ...proof, ...run].join(
    ' ',
  );
}
