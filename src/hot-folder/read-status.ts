// How a hot folder stands, read from its rooms alone: whoever works on it, and where.
import { codeOf, type FolderDisk, joinPath } from './folder-disk.js';
import type { Layout } from './layout.js';
import { describeSelf, judgeLife, type Life, listRooms } from './owner.js';
import { emptyMemory, findReady, type ReadyMemory } from './ready-files.js';
import { sayLack } from './say-lack.js';
import { sayNames } from './scan-in.js';

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
  /** Jobs in `waiting/`, by name, and the first line of what each asks. */
  readonly asks: readonly { readonly name: string; readonly question: string }[];
  /** What lies in `in/` and is not taken as it is, and why. */
  readonly left: readonly { readonly name: string; readonly why: string; readonly message: string }[];
  /** The last lines of the journal, newest first, in short. */
  readonly last: readonly { readonly time: string; readonly name: string; readonly ending: string }[];
}

const LAST_BYTES = 16_384;
const LAST_LINES = 8;

/** Larger files are not read for a status: they count as whole. */
const MOST_BYTES = 4 * 1024 * 1024;
/** Longest question that is read, bytes. */
const QUESTION_BYTES = 1024;

function listFolders(disk: FolderDisk, path: Buffer): readonly Buffer[] {
  try {
    const entries = disk.list(path).filter(({ name, kind }) => kind === 'folder' && name[0] !== 0x2e);
    return entries.map(({ name }) => name).sort(Buffer.compare);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return [];
    throw error;
  }
}

function countFolders(disk: FolderDisk, path: Buffer): number {
  return listFolders(disk, path).length;
}

/** The first line of what a parked job asks; empty where it cannot be read, or the job went on meanwhile. */
function readQuestion(disk: FolderDisk, folder: Buffer): string {
  try {
    return disk.read(joinPath(folder, 'question.txt'), 0, QUESTION_BYTES).toString('utf8').split('\n')[0]!;
  } catch {
    return '';
  }
}

type InRoom = Pick<FolderStatus, 'in' | 'left'>;

/** What lies in `in/`. Whether it rests is for a watcher to see; whether it is whole can be seen at once. */
async function lookIn(disk: FolderDisk, layout: Layout, memory: ReadyMemory): Promise<InRoom> {
  if (disk.look(layout.in) === null) return { in: 0, left: [] };
  const asked = { quietMs: 0, patienceMs: 0, waitTicket: false, mostBytes: MOST_BYTES };
  const { deliveries, unready } = await findReady({ disk, layout, memory, ...asked }, performance.now());
  const left = unready.map(({ from, lack }) => ({ name: sayNames(from), why: lack, message: sayLack(lack) }));
  return { in: deliveries, left };
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

/**
 * Reads how a folder stands; changes nothing.
 *
 * @param memory - What an earlier look saw, so that files are not read again.
 */
export async function readStatus(
  disk: FolderDisk,
  layout: Layout,
  memory: ReadyMemory = emptyMemory(),
): Promise<FolderStatus> {
  const self = describeSelf('', false);
  const rooms = disk.look(layout.work) === null ? [] : listRooms(disk, layout, null);
  const watchers: WatcherStatus[] = [];
  for (const { home, name, record } of rooms) {
    const life = record === null ? 'left' : await judgeLife(record, self, home);
    watchers.push({ owner: record?.owner ?? name, life, jobs: countFolders(disk, home) });
  }
  const asking = listFolders(disk, layout.waiting);
  return {
    ...(await lookIn(disk, layout, memory)),
    work: watchers.reduce((sum, { jobs }) => sum + jobs, 0),
    waiting: asking.length,
    done: countFolders(disk, layout.done),
    failed: countFolders(disk, layout.failed),
    watchers,
    asks: asking.map((name) => ({
      name: name.toString(),
      question: readQuestion(disk, joinPath(layout.waiting, name)),
    })),
    last: readLast(disk, layout),
  };
}

/** What cannot be shown on one line is shown as a question mark. */
function tame(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e]/g, '?');
}

/** Most lines of what waits, and of what is left, in the table. */
const MOST_LINES = 10;
/** Longest line of the table. */
const LINE_LENGTH = 160;

function listSome(title: string, items: readonly (readonly [string, string])[]): readonly (readonly string[])[] {
  if (items.length === 0) return [];
  const lines = items
    .slice(0, MOST_LINES)
    .map(([name, words]) => `  ${tame(`${name}: ${words}`).slice(0, LINE_LENGTH)}`);
  const more = items.length - lines.length;
  return [[title, ...lines, ...(more > 0 ? [`  and ${more} more`] : [])]];
}

/** The status as a table. */
export function printStatus(status: FolderStatus): string {
  const rooms = (['in', 'work', 'waiting', 'done', 'failed'] as const).map(
    (room) => `${room.padEnd(8)}${String(status[room]).padStart(7)}`,
  );
  const watchers = status.watchers.map(
    ({ owner, life, jobs }) => `${tame(owner).padEnd(24)} ${life.padEnd(8)} ${jobs} at work`,
  );
  const last = status.last.map(({ time, name, ending }) =>
    `${time}  ${ending.padEnd(10)} ${tame(name)}`.slice(0, LINE_LENGTH),
  );
  const asks = listSome(
    'Waiting for an answer, which question.txt there asks for:',
    status.asks.map(({ name, question }) => [`waiting/${name}`, question]),
  );
  const left = listSome(
    'Not taken as it lies there:',
    status.left.map(({ name, message }) => [`in/${name}`, message]),
  );
  const parts = [rooms, watchers.length === 0 ? ['no watcher'] : watchers, ...asks, ...left, last];
  return `${parts
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .trimEnd()}\n`;
}
