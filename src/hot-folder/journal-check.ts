// Over a share, two machines can write to the end of the journal at the same place: lines are looked for again, and written anew.
import { setTimeout } from 'node:timers/promises';
import type { FolderDisk } from './folder-disk.js';
import { type JournalText, listMissing } from './journal.js';
import type { Layout } from './layout.js';
import { listRooms, type OwnerRecord } from './owner.js';

/** After how long a line is looked for: whoever reached for the same place has written by then, ms. */
const SETTLES_MS = 2000;
/** How often lines are looked for before a watcher ends. */
const MOST_LOOKS = 3;

/** What a watcher wrote to the journal and has not seen there since. */
export interface JournalCheck {
  readonly note: (text: JournalText) => void;
  /** Looks for lines that had time to settle, and writes those anew that are gone. Throws errors of the system. */
  readonly check: () => void;
  /** The same for all lines, before the watcher ends. */
  readonly settle: () => Promise<void>;
}

/** On one machine the end of a file is the end for all: there nothing has to be looked for. */
function isShared(disk: FolderDisk, layout: Layout, self: OwnerRecord): boolean {
  const rooms = listRooms(disk, layout, null);
  return rooms.some(({ record }) => record !== null && (record.boot === null || record.boot !== self.boot));
}

/** Opens the check of a watcher. */
export function openJournalCheck(disk: FolderDisk, layout: Layout, self: OwnerRecord): JournalCheck {
  let lines: { readonly text: JournalText; readonly at: number }[] = [];
  const check = (): void => {
    const now = performance.now();
    const due = lines.filter(({ at }) => now - at >= SETTLES_MS).map(({ text }) => text);
    if (due.length === 0) return;
    const missing = isShared(disk, layout, self) ? listMissing(disk, layout, due) : [];
    for (const text of missing) disk.append(layout.journal, text);
    const rest = lines.filter(({ text }) => !due.includes(text));
    lines = [...rest, ...missing.map((text) => ({ text, at: performance.now() }))];
  };
  const settle = async (): Promise<void> => {
    if (lines.length === 0 || !isShared(disk, layout, self)) return;
    for (let looks = 0; looks < MOST_LOOKS && lines.length > 0; looks++) {
      const last = Math.max(...lines.map(({ at }) => at));
      await setTimeout(Math.max(0, last + SETTLES_MS - performance.now()));
      check();
    }
  };
  return { note: (text) => void lines.push({ text, at: performance.now() }), check, settle };
}
