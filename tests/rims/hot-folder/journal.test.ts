// The journal where another machine writes to it at the same place, as a network share lets it.
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import { badArt, drop, listRoom, listTree, openShop, readJournal, smallArt, watchOnce } from './shop.js';

/** A room of a watcher on another machine. */
function openFarRoom(shop: string): void {
  mkdirSync(join(shop, 'work/far.0'), { recursive: true });
  const self = {
    owner: 'far',
    pid: 1,
    began: '1',
    boot: 'another',
    machine: 'another',
    processes: null,
    listens: false,
  };
  writeFileSync(join(shop, 'work/far.0/.owner.json'), JSON.stringify(self));
}

/** A share where the other machine took the same end of the journal, so often, and writes there a moment later. */
function shareWith(shop: string, lines: string[]): FolderDisk {
  const journal = join(shop, 'journal.ndjson');
  return {
    ...MACHINE_DISK,
    append: (path, line) => {
      const end = existsSync(journal) ? statSync(journal).size : 0;
      MACHINE_DISK.append(path, line);
      const other = lines.shift();
      if (other === undefined) return;
      const file = openSync(journal, 'r+');
      writeSync(file, other, end);
      closeSync(file);
    },
  };
}

function readLines(shop: string): readonly string[] {
  return readFileSync(join(shop, 'journal.ndjson'), 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        return [(JSON.parse(line) as { readonly name: string }).name];
      } catch {
        return [];
      }
    });
}

const short = '{"name":"far"}\n';
const long = `{"name":"far","why":"${'x'.repeat(2000)}"}\n`;

describe('a journal that another machine writes over', () => {
  it.each([
    ['a short line', [short]],
    ['a long line', [long]],
    ['one line after the other', [short, long]],
  ])('has every line once in the end: %s', async (_what, lines) => {
    const shop = openShop();
    openFarRoom(shop);
    drop(shop, { 'a.svg': smallArt(1), 'b.svg': smallArt(2) });
    expect((await watchOnce(shop, {}, shareWith(shop, [...lines]))).counts).toMatchObject({ done: 2 });
    const names = readLines(shop).filter((name) => name !== 'far');
    expect([...names].sort()).toEqual(['a.svg', 'b.svg']);
    expect(readLines(shop)).toContain('far');
  });

  it('is not looked at again where all watchers are on one machine', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    let reads = 0;
    const read: FolderDisk['read'] = (path, ...rest) => {
      if (path.toString().endsWith('journal.ndjson')) reads++;
      return MACHINE_DISK.read(path, ...rest);
    };
    await watchOnce(shop, {}, { ...MACHINE_DISK, read });
    expect(reads).toBe(0);
    expect(readJournal(shop)).toHaveLength(1);
  });
});

describe('a job that was cut off behind its line in the journal', () => {
  it('goes where that line says, also where it would end otherwise now', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': badArt(), 'ticket.json': '{"pinbar": 1, "severities": {"check/outline-open": "error"}}' });
    expect((await watchOnce(shop)).counts).toMatchObject({ failed: 1 });
    const { id } = readJournal(shop)[0] as { readonly id: string };
    const files = listTree(join(shop, 'failed/a'));
    mkdirSync(join(shop, 'work/gone.0'), { recursive: true });
    renameSync(join(shop, 'failed/a'), join(shop, 'work/gone.0', id));
    // As with a bound of time: the next run would get by.
    writeFileSync(join(shop, 'work/gone.0', id, 'a.svg'), smallArt(1));
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0, failed: 1 });
    expect(listTree(join(shop, 'failed/a'))).toEqual(files);
    expect([listRoom(shop, 'done'), listRoom(shop, 'out'), listRoom(shop, 'work')]).toEqual([[], [], []]);
    expect(readJournal(shop)).toHaveLength(1);
  });
});
