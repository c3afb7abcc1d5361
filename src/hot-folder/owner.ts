// Whose room in `work/` is whose, and whether its watcher lives. Told by the kernel, never by the age of a file.
import { createHash, randomBytes } from 'node:crypto';
import { closeSync, constants, openSync, readFileSync, readlinkSync } from 'node:fs';
import { connect, createServer, type Server } from 'node:net';
import { hostname } from 'node:os';
import { nameJob } from '../road/name-job.js';
import { codeOf, type FolderDisk, joinPath } from './folder-disk.js';
import type { Layout } from './layout.js';

/** What a room in `work/` says of its watcher. */
export interface OwnerRecord {
  readonly owner: string;
  readonly pid: number;
  /** When the process began, in ticks of the kernel; tells it from a later one with the same number. */
  readonly began: string | null;
  /** Of this start of the machine; the same in all containers on it. */
  readonly boot: string | null;
  readonly machine: string | null;
  /** Which processes it can see. */
  readonly processes: string | null;
  /** Whether it listens in its room. */
  readonly listens: boolean;
}

/** Whether a watcher lives: `unknown` where that can only be told on another machine. */
export type Life = 'alive' | 'dead' | 'unknown';

const RECORD = '.owner.json';
const SOCKET = '.alive';

function readLine(path: string): string | null {
  try {
    return readFileSync(path, 'utf8').trim() || null;
  } catch {
    return null;
  }
}

function readLink(path: string): string | null {
  try {
    return readlinkSync(path);
  } catch {
    return null;
  }
}

/** Start of a process in ticks since the machine began; null where there is none, or the system does not say. */
function beganAt(pid: number): string | null {
  const stat = readLine(`/proc/${pid}/stat`);
  // The name of the process, in brackets, can hold anything.
  return stat?.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
}

/** This process as an owner. */
export function describeSelf(owner: string, listens: boolean): OwnerRecord {
  return {
    owner,
    pid: process.pid,
    began: beganAt(process.pid),
    boot: readLine('/proc/sys/kernel/random/boot_id'),
    machine: readLine('/etc/machine-id'),
    processes: readLink('/proc/self/ns/pid'),
    listens,
  };
}

/** Name of an owner where none is said: that of the machine. */
export function defaultOwner(): string {
  return nameJob(hostname());
}

/** A folder opened, so that a path into it is short enough for a socket and needs no name that is text. */
function withFolder<T>(folder: Buffer, use: (path: string, close: () => void) => T): T {
  const file = openSync(folder, constants.O_RDONLY);
  return use(`/proc/self/fd/${file}/${SOCKET}`, () => closeSync(file));
}

function answers(home: Buffer): Promise<boolean> {
  return new Promise((resolve) => {
    try {
      withFolder(home, (path, close) => {
        const socket = connect(path);
        let ended = false;
        const end = (alive: boolean): void => {
          // Once: the number of a closed descriptor may already be another's.
          if (ended) return;
          ended = true;
          clearTimeout(late);
          socket.destroy();
          close();
          resolve(alive);
        };
        // Who neither takes nor refuses a call has a process all the same.
        const late = setTimeout(() => end(true), 2000);
        socket.once('connect', () => end(true));
        // A full queue of callers is a living process; anything else is nobody.
        socket.once('error', (error) => end(codeOf(error) === 'EAGAIN'));
      });
    } catch {
      resolve(false);
    }
  });
}

/** Whether the watcher of a room lives, as far as this process can tell. */
export async function judgeLife(record: OwnerRecord, self: OwnerRecord, home: Buffer): Promise<Life> {
  if (record.boot === null || record.boot !== self.boot) {
    return record.machine !== null && record.machine === self.machine && record.boot !== null ? 'dead' : 'unknown';
  }
  if (record.listens && (await answers(home))) return 'alive';
  if (record.processes !== null && record.processes === self.processes) {
    const began = beganAt(record.pid);
    return began !== null && began === record.began ? 'alive' : 'dead';
  }
  return record.listens ? 'dead' : 'unknown';
}

/** A watcher's room while it lives. */
export interface Room {
  readonly home: Buffer;
  readonly record: OwnerRecord;
  /** Part of the names of its jobs. */
  readonly tag: string;
  /** Makes it anew under the same name where somebody took it away. */
  readonly restore: () => Promise<void>;
  /** Ends its life: jobs that are left in the room may be taken by anybody. */
  readonly release: () => void;
}

/** Listens in a room as long as the process lives; null where the file system has no sockets. */
function listen(home: Buffer): Promise<{ readonly server: Server; readonly close: () => void } | null> {
  return new Promise((resolve) => {
    try {
      withFolder(home, (path, close) => {
        const server = createServer((socket) => socket.destroy());
        server.unref();
        server.once('error', () => {
          close();
          resolve(null);
        });
        server.listen(path, () => resolve({ server, close }));
      });
    } catch {
      resolve(null);
    }
  });
}

/** How often a room is begun anew where another watcher takes it for what a crash left. */
const MOST_DRAFTS = 5;

/**
 * Opens a room in `work/`: made and described under a hidden name, then shown in one step, so that a room without an owner is always
 * one that was left.
 */
export async function openRoom(disk: FolderDisk, layout: Layout, owner: string): Promise<Room> {
  for (let drafts = 1; ; drafts++) {
    try {
      return await makeRoom(disk, layout, owner);
    } catch (error) {
      if (codeOf(error) !== 'ENOENT' || drafts === MOST_DRAFTS || disk.look(layout.work) === null) throw error;
    }
  }
}

type Voice = Awaited<ReturnType<typeof listen>>;

interface ShownRoom {
  readonly voice: Voice;
  readonly record: OwnerRecord;
}

async function showRoom(disk: FolderDisk, draft: Buffer, home: Buffer, owner: string): Promise<ShownRoom> {
  disk.makeFolder(draft);
  const voice = await listen(draft);
  const record = describeSelf(owner, voice !== null);
  try {
    disk.writeNew(joinPath(draft, RECORD), [Buffer.from(`${JSON.stringify(record)}\n`)]);
    disk.move(draft, home);
  } catch (error) {
    silence(voice);
    throw error;
  }
  return { voice, record };
}

function silence(voice: Voice): void {
  voice?.server.close();
  voice?.close();
}

async function makeRoom(disk: FolderDisk, layout: Layout, owner: string): Promise<Room> {
  const tag = createHash('sha256').update(randomBytes(16)).digest('hex').slice(0, 10);
  const draft = joinPath(layout.work, `.new-${tag}`);
  const home = joinPath(layout.work, `${nameJob(owner)}.${tag}`);
  const first = await showRoom(disk, draft, home, owner);
  let { voice } = first;
  const restore = async (): Promise<void> => {
    if (disk.look(home) !== null) return;
    silence(voice);
    voice = null;
    ({ voice } = await showRoom(disk, draft, home, owner));
  };
  const release = (): void => {
    silence(voice);
    disk.remove(joinPath(home, RECORD));
    disk.remove(joinPath(home, SOCKET));
    const left = disk.list(home);
    if (left.length === 0) disk.remove(home);
  };
  return { home, record: first.record, tag, restore, release };
}

/** A room in `work/` that is not our own. */
export interface OtherRoom {
  readonly home: Buffer;
  readonly name: string;
  /** Null where its watcher left, or never said who it is. */
  readonly record: OwnerRecord | null;
}

function readOwner(disk: FolderDisk, home: Buffer): OwnerRecord | null {
  const path = joinPath(home, RECORD);
  if (disk.look(path)?.kind !== 'file') return null;
  try {
    const record = JSON.parse(disk.read(path).toString('utf8')) as OwnerRecord;
    return typeof record.owner === 'string' && typeof record.pid === 'number' ? record : null;
  } catch {
    return null;
  }
}

/** The other rooms in `work/`. */
export function listRooms(disk: FolderDisk, layout: Layout, own: Buffer | null): readonly OtherRoom[] {
  return disk
    .list(layout.work)
    .filter((entry) => entry.kind === 'folder' && entry.name[0] !== 0x2e)
    .map((entry) => ({ home: joinPath(layout.work, entry.name), name: entry.name.toString() }))
    .filter(({ home }) => own === null || !home.equals(own))
    .map(({ home, name }) => ({ home, name, record: readOwner(disk, home) }));
}

/** Takes away rooms that a crash left half made. Should one be just being made, its watcher goes on with it or makes another. */
export async function sweepDrafts(disk: FolderDisk, layout: Layout): Promise<void> {
  for (const { name, kind } of disk.list(layout.work)) {
    if (kind !== 'folder' || !name.toString('latin1').startsWith('.new-')) continue;
    const draft = joinPath(layout.work, name);
    if (await answers(draft)) continue;
    try {
      disk.remove(draft);
    } catch (error) {
      // Its watcher goes on making it just now.
      if (codeOf(error) !== 'ENOTEMPTY') throw error;
    }
  }
}

/** Takes away a room that is empty but for what says whose it was. */
export function clearRoom(disk: FolderDisk, home: Buffer): void {
  const entries = disk.list(home);
  if (entries.some((entry) => entry.kind === 'folder')) return;
  disk.remove(home);
}
