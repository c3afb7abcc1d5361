// The rooms of a hot folder, and whether they are what they should be.
import { type FolderDisk, joinPath } from './folder-disk.js';

/** Where everything of a hot folder stands. */
export interface Layout {
  readonly folder: Buffer;
  /** What the shop drops. */
  readonly in: Buffer;
  /** One folder per watcher, in it one per job that runs. */
  readonly work: Buffer;
  readonly done: Buffer;
  readonly failed: Buffer;
  /** Jobs that need an answer. */
  readonly waiting: Buffer;
  /** The finished files, one folder per job. */
  readonly out: Buffer;
  /** Which job was made under which name: one small file per hash of bytes and ticket. */
  readonly keys: Buffer;
  readonly journal: Buffer;
  readonly ticket: Buffer;
}

/** Rooms that a job folder moves to when it ends. */
export type EndRoom = 'done' | 'failed' | 'waiting';

const ROOMS = ['in', 'work', 'done', 'failed', 'waiting', 'out'] as const;

/** Trouble with the folder itself: nothing is taken until it is mended. */
export class FolderTrouble extends Error {
  readonly code: string;

  constructor(message: string, code: string, cause?: unknown) {
    super(message, { cause });
    this.name = 'FolderTrouble';
    this.code = code;
  }
}

/** The layout of a folder. */
export function layOut(folder: Buffer): Layout {
  const [inside, work, done, failed, waiting, out] = ROOMS.map((room) => joinPath(folder, room)) as [
    Buffer,
    Buffer,
    Buffer,
    Buffer,
    Buffer,
    Buffer,
  ];
  return {
    folder,
    in: inside,
    work,
    done,
    failed,
    waiting,
    out,
    keys: joinPath(work, '.keys'),
    journal: joinPath(folder, 'journal.ndjson'),
    ticket: joinPath(folder, 'ticket.json'),
  };
}

/**
 * Refuses a room that is no folder any more, since somebody put a link or a file in its place: a rename through a link would leave the
 * hot folder.
 *
 * @throws FolderTrouble; errors of the system.
 */
export function checkRoom(disk: FolderDisk, layout: Layout, room: EndRoom | 'out'): void {
  if (disk.look(layout[room])?.kind === 'folder') return;
  throw new FolderTrouble(`${room} in the hot folder is no folder any more; it must be one.`, 'ENOTDIR');
}

/**
 * Makes the rooms that are missing, and refuses what is no folder of this file system: a rename must never leave it.
 *
 * @throws FolderTrouble where a room is a link, a file, or on another disk; errors of the system.
 */
export function openRooms(disk: FolderDisk, layout: Layout): void {
  // The folder itself may be named by a link: that is the choice of whoever runs the watcher. Its rooms may not.
  const named = disk.look(layout.folder);
  const home = named?.kind === 'other' ? disk.look(joinPath(layout.folder, '.')) : named;
  if (home?.kind !== 'folder') {
    throw new FolderTrouble('The hot folder is not there, or is no folder.', 'ENOTDIR');
  }
  for (const path of [...ROOMS.map((room) => layout[room]), layout.keys]) {
    const name = path.subarray(layout.folder.length + 1).toString();
    let found = disk.look(path);
    if (found === null) {
      disk.makeFolder(path);
      found = disk.look(path);
    }
    if (found?.kind !== 'folder') {
      throw new FolderTrouble(`${name} in the hot folder is a link or a file; it must be a folder.`, 'ENOTDIR');
    }
    if (found.device !== home.device) {
      throw new FolderTrouble(`${name} in the hot folder is on another disk; all its rooms must be on one.`, 'EXDEV');
    }
  }
}
