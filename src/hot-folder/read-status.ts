// How a hot folder stands, read from its rooms alone: whoever works on it, and where.
import { codeOf, type FolderDisk } from './folder-disk.js';
import type { Layout } from './layout.js';
import { describeSelf, judgeLife, type Life, listRooms } from './owner.js';
import { scanIn } from './scan-in.js';

/** A watcher as its room shows it. */
export interface WatcherStatus {
  readonly owner: string;
  readonly life: Life | 'left';
  readonly jobs: number;
}

/** A hot folder as it stands. */
export interface FolderStatus {
  readonly in: number;
  readonly work: number;
  readonly waiting: number;
  readonly done: number;
  readonly failed: number;
  readonly watchers: readonly WatcherStatus[];
  /** The last lines of the journal, newest first, in short. */
  readonly last: readonly { readonly time: string; readonly name: string; readonly ending: string }[];
}

const LAST_BYTES = 16_384;
const LAST_LINES = 8;

function countFolders(disk: FolderDisk, path: Buffer): number {
  try {
    return disk.list(path).filter(({ name, kind }) => kind === 'folder' && name[0] !== 0x2e).length;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return 0;
    throw error;
  }
}

function readLast(disk: FolderDisk, layout: Layout): FolderStatus['last'] {
  const size = disk.look(layout.journal)?.bytes ?? 0;
  if (size === 0) return [];
  const lines = disk
    .read(layout.journal, Math.max(0, size - LAST_BYTES))
    .toString('utf8')
    .split('\n');
  const read = lines.flatMap((line) => {
    try {
      const { time, name, ending } = JSON.parse(line) as FolderStatus['last'][number];
      return [{ time, name, ending }];
    } catch {
      return [];
    }
  });
  return read.slice(-LAST_LINES).reverse();
}

/** Reads how a folder stands; changes nothing. */
export async function readStatus(disk: FolderDisk, layout: Layout): Promise<FolderStatus> {
  const self = describeSelf('', false);
  const rooms = disk.look(layout.work) === null ? [] : listRooms(disk, layout, null);
  const watchers: WatcherStatus[] = [];
  for (const { home, name, record } of rooms) {
    const life = record === null ? 'left' : await judgeLife(record, self, home);
    watchers.push({ owner: record?.owner ?? name, life, jobs: countFolders(disk, home) });
  }
  return {
    in: disk.look(layout.in) === null ? 0 : scanIn(disk, layout.in).deliveries.length,
    work: watchers.reduce((sum, { jobs }) => sum + jobs, 0),
    waiting: countFolders(disk, layout.waiting),
    done: countFolders(disk, layout.done),
    failed: countFolders(disk, layout.failed),
    watchers,
    last: readLast(disk, layout),
  };
}

/** What cannot be shown on one line is shown as a question mark. */
function tame(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e]/g, '?');
}

/** The status as a table. */
export function printStatus(status: FolderStatus): string {
  const rooms = (['in', 'work', 'waiting', 'done', 'failed'] as const).map(
    (room) => `${room.padEnd(8)}${String(status[room]).padStart(7)}`,
  );
  const watchers = status.watchers.map(
    ({ owner, life, jobs }) => `${tame(owner).padEnd(24)} ${life.padEnd(8)} ${jobs} at work`,
  );
  const last = status.last.map(({ time, name, ending }) => `${time}  ${ending.padEnd(10)} ${tame(name)}`);
  const parts = [rooms, watchers.length === 0 ? ['no watcher'] : watchers, last];
  return `${parts
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .trimEnd()}\n`;
}
