// A disk in memory that crashes between two calls and forgets what was not synced.
import type { Entry, FolderDisk, Look } from '../../src/hot-folder/folder-disk.js';

interface Node {
  readonly id: number;
  readonly kind: 'file' | 'folder';
  bytes: Buffer;
  /** What the disk keeps of a file; null: nothing yet. */
  kept: Buffer | null;
  readonly names: Map<string, Node>;
}

/** A change of names: out of one folder, into another. */
interface Change {
  readonly node: Node;
  readonly from: { readonly folder: Node; readonly name: string } | null;
  readonly to: { readonly folder: Node; readonly name: string } | null;
  /** What stood there before: a move that is lost brings it back. */
  readonly over: Node | null;
  kept: boolean;
}

/** Faults that a disk, or a program that leaves a step out, may have. */
export interface DiskFaults {
  /** Files are written and never synced. */
  readonly filesUnsynced?: boolean;
  /** Folders are never synced. */
  readonly foldersUnsynced?: boolean;
  /** A move copies first and takes away then. */
  readonly movesInTwo?: boolean;
}

/** The process ended here. */
export class Crash extends Error {}

/** A disk that can lose its power. */
export interface ForgetfulDisk {
  /** Opens it for a process, which dies at its so-and-so-manieth change. */
  readonly open: (diesAt: number) => FolderDisk;
  /** Power is lost: what was not synced is kept or not, as said for each change in turn. */
  readonly losePower: (keeps: (index: number) => boolean) => void;
  /** All files by path. */
  readonly list: () => ReadonlyMap<string, Buffer>;
}

function fail(code: string): never {
  throw Object.assign(new Error(code), { code });
}

function newNode(kind: Node['kind'], id: number): Node {
  return { id, kind, bytes: Buffer.alloc(0), kept: null, names: new Map() };
}

function split(path: Buffer): readonly string[] {
  return path
    .toString('latin1')
    .split('/')
    .filter((name) => name !== '');
}

/** A tree of files by name. */
function walk(node: Node, path: string, found: Map<string, Buffer>): Map<string, Buffer> {
  for (const [bytes, child] of node.names) {
    const name = Buffer.from(bytes, 'latin1').toString();
    if (child.kind === 'file') found.set(`${path}${name}`, child.bytes);
    else walk(child, `${path}${name}/`, found);
  }
  return found;
}

/** Makes a disk. */
export function createForgetfulDisk(faults: DiskFaults = {}): ForgetfulDisk {
  let count = 0;
  const root = newNode('folder', 0);
  let changes: Change[] = [];

  const find = (path: Buffer): Node | null => {
    let node: Node | undefined = root;
    for (const name of split(path)) node = node?.kind === 'folder' ? node.names.get(name) : undefined;
    return node ?? null;
  };
  const parentOf = (path: Buffer): { readonly folder: Node; readonly name: string } => {
    const names = split(path);
    const folder = find(Buffer.from(names.slice(0, -1).join('/'), 'latin1'));
    if (folder?.kind !== 'folder') fail('ENOENT');
    return { folder, name: names.at(-1)! };
  };
  const apply = ({ node, from, to }: Change): void => {
    if (from !== null && from.folder.names.get(from.name) === node) from.folder.names.delete(from.name);
    if (to !== null) to.folder.names.set(to.name, node);
  };
  const change = (node: Node, from: Change['from'], to: Change['to'], over: Node | null = null): void => {
    const made = { node, from, to, over, kept: false };
    changes.push(made);
    apply(made);
  };
  const make = (path: Buffer, kind: Node['kind']): Node => {
    const to = parentOf(path);
    if (to.folder.names.has(to.name)) fail('EEXIST');
    count++;
    const node = newNode(kind, count);
    change(node, null, to);
    return node;
  };
  const remove = (path: Buffer): void => {
    const node = find(path);
    if (node === null) return;
    for (const name of node.names.keys()) remove(Buffer.concat([path, Buffer.from(`/${name}`, 'latin1')]));
    change(node, parentOf(path), null);
  };
  /** A folder that is kept is kept with the changes that put it, and those around it, where they are. */
  const keep = (folder: Node): void => {
    for (const made of changes) {
      if (made.kept || (made.from?.folder !== folder && made.to?.folder !== folder && made.node !== folder)) continue;
      made.kept = true;
      if (made.to !== null) keep(made.to.folder);
    }
  };
  const move = (from: Buffer, to: Buffer, step: () => void): void => {
    const node = find(from);
    if (node === null) fail('ENOENT');
    const target = parentOf(to);
    const there = target.folder.names.get(target.name);
    if (there !== undefined && there.kind !== node.kind) fail(there.kind === 'folder' ? 'EISDIR' : 'ENOTDIR');
    if (there?.kind === 'folder' && there.names.size > 0) fail('ENOTEMPTY');
    if (faults.movesInTwo === true) {
      change(node, null, target);
      step();
      change(node, parentOf(from), null);
      return;
    }
    change(node, parentOf(from), target, there ?? null);
  };
  const look = (path: Buffer): Look | null => {
    const node = find(path);
    if (node === null) return null;
    const { id, kind, bytes } = node;
    return { kind, bytes: bytes.length, mark: `${id}:${bytes.length}`, file: `0:${id}`, device: '0' };
  };

  return {
    open: (diesAt) => {
      let done = 0;
      const step = (): void => {
        done++;
        if (done >= diesAt) throw new Crash();
      };
      const steps =
        <T extends readonly unknown[], R>(act: (...args: T) => R) =>
        (...args: T): R => {
          step();
          return act(...args);
        };
      return {
        list: (path): readonly Entry[] => {
          const node = find(path);
          if (node?.kind !== 'folder') return fail('ENOENT');
          return [...node.names].map(([name, { kind }]) => ({ name: Buffer.from(name, 'latin1'), kind }));
        },
        look,
        read: (path, from = 0, atMost = Number.POSITIVE_INFINITY) => {
          const node = find(path);
          if (node?.kind !== 'file') return fail('ENOENT');
          return node.bytes.subarray(from, from + Math.min(atMost, node.bytes.length));
        },
        makeFolder: steps((path) => (find(path) === null ? make(path, 'folder') !== null : false)),
        writeNew: steps((path, pieces) => {
          const node = make(path, 'file');
          step();
          node.bytes = Buffer.concat(pieces);
          step();
          if (faults.filesUnsynced !== true) node.kept = node.bytes;
        }),
        append: steps((path, line) => {
          const node = find(path) ?? make(path, 'file');
          const start = node.bytes.length > 0 && node.bytes.at(-1) !== 0x0a ? '\n' : '';
          const text = `${start}${line}\n`;
          node.bytes = Buffer.concat([node.bytes, Buffer.from(text.slice(0, text.length / 2))]);
          step();
          node.bytes = Buffer.concat([node.bytes, Buffer.from(text.slice(Math.floor(text.length / 2)))]);
          step();
          node.kept = node.bytes;
          keep(node);
        }),
        sync: steps((path) => {
          const node = find(path) ?? fail('ENOENT');
          if (node.kind === 'file') node.kept = node.bytes;
          if (faults.foldersUnsynced !== true) keep(node);
        }),
        move: steps((from, to) => move(from, to, step)),
        addName: steps((from, to) => {
          const node = find(from) ?? fail('ENOENT');
          const target = parentOf(to);
          if (target.folder.names.has(target.name)) return false;
          change(node, null, target);
          return true;
        }),
        remove: steps(remove),
      };
    },
    losePower: (keeps) => {
      const lost = changes.filter((made, index) => !made.kept && !keeps(index));
      for (const made of [...lost].reverse()) {
        if (made.to !== null && made.to.folder.names.get(made.to.name) === made.node)
          made.to.folder.names.delete(made.to.name);
        if (made.to !== null && made.over !== null && !made.to.folder.names.has(made.to.name))
          made.to.folder.names.set(made.to.name, made.over);
        if (made.from !== null && !made.from.folder.names.has(made.from.name))
          made.from.folder.names.set(made.from.name, made.node);
      }
      changes = [];
      const forget = (node: Node): void => {
        if (node.kind === 'file') node.bytes = node.kept ?? Buffer.alloc(0);
        for (const child of node.names.values()) forget(child);
      };
      forget(root);
    },
    list: () => walk(root, '', new Map()),
  };
}
