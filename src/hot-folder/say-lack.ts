// Why a file is left where it lies, for the log: in words, and what changes it.
import type { ClaimRefusal } from './claim-job.js';
import type { Lack } from './ready-files.js';

const WORDS: Readonly<Record<Lack | Exclude<ClaimRefusal, 'gone'>, string>> = {
  'not-complete': 'Its end is missing. It is taken when the rest is there.',
  'ticket-not-complete': 'A ticket that counts for it is no whole JSON. It is taken when that is mended or taken away.',
  'no-ticket': 'It waits for a ticket beside it, of its own name and ending in .ticket.json.',
  'not-allowed': 'Its folder does not let it go: the user of the watcher needs the right to write there.',
  'not-readable': 'The disk or its rights do not let it be read.',
  'ticket-not-readable': 'A ticket that counts for it cannot be read. It is taken when that is mended or taken away.',
  'too-deep': 'It lies too many folders down: in/ is looked into eight folders deep. Move it further up.',
  'link-or-device': 'It is a link or a device; these are never opened.',
};

/** Why something is left. */
export type LeftWhy = keyof typeof WORDS;

/** A reason in words. */
export function sayLack(why: LeftWhy): string {
  return WORDS[why];
}
