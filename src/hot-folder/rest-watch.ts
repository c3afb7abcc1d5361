// Since when a file rests, by a clock that only goes forward: what the clocks of shares and cameras say does not count.
import type { Look } from './folder-disk.js';

/** What is known of a file that lies in the folder. */
export interface Seen {
  /** Size, inode and time of change at the last look. */
  readonly mark: string;
  /** Since when it has had that mark, ms of a clock that only goes forward. */
  readonly since: number;
  /** When it was first seen. */
  readonly first: number;
}

/** A file looked at once more. */
export function lookAgain(before: Seen | undefined, look: Look, now: number): Seen {
  if (before === undefined) return { mark: look.mark, since: now, first: now };
  return before.mark === look.mark ? before : { mark: look.mark, since: now, first: before.first };
}

/** Whether a file has rested for the quiet time. */
export function isAtRest(seen: Seen, now: number, quietMs: number): boolean {
  return now - seen.since >= quietMs;
}
