// One file that cannot be read, and a disk that cannot: the first is set aside, the second is waited for.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import { askingArt, drop, listRoom, listTree, openShop, readJournal, smallArt, watchOnce } from './shop.js';

function fail(code: string): never {
  throw Object.assign(new Error(code), { code });
}

/** The disk of this machine, but that it does not read some files: by the end of their path, so often. */
function breakFiles(end: string, code: string, times: number = Number.POSITIVE_INFINITY): FolderDisk {
  let left = times;
  return {
    ...MACHINE_DISK,
    read: (path, ...rest) => {
      if (path.toString().endsWith(end) && left-- > 0) fail(code);
      return MACHINE_DISK.read(path, ...rest);
    },
  };
}

describe('one file that cannot be read', () => {
  it.each(['EIO', 'EUCLEAN', 'EACCES'])(
    'for %s is set aside with a report, untouched, and no other waits',
    async (code) => {
      const shop = openShop();
      drop(shop, { 'a.svg': smallArt(1), 'b.svg': smallArt(2), 'c/d.svg': smallArt(3) });
      const { counts, news } = await watchOnce(shop, {}, breakFiles('/a.svg', code));
      expect(counts).toMatchObject({ done: 2, failed: 1, left: 0, resting: false });
      expect(readFileSync(join(shop, 'failed/a/a.svg'), 'utf8')).toBe(smallArt(1));
      const report = readFileSync(join(shop, 'failed/a/report/report.txt'), 'utf8');
      expect(report).toMatch(/^The file a\.svg could not be read: .+\. It was tried 3 times/);
      expect(readJournal(shop).find(({ name }) => name === 'a.svg')).toMatchObject({
        ending: 'failed',
        codes: ['read/failed'],
      });
      expect(news.filter(({ event }) => event === 'resting')).toEqual([]);
      expect(listTree(join(shop, 'in'))).toEqual([]);
    },
  );

  it.each([1, 2, 4])('%i times and then can is done', async (times) => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    expect((await watchOnce(shop, {}, breakFiles('/a.svg', 'EIO', times))).counts).toMatchObject({
      done: 1,
      failed: 0,
    });
  });

  it('as the ticket beside the art sets the art aside: it is never split without it', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'a.ticket.json': '{"pinbar": 1, "marginMm": 3}', 'b.svg': smallArt(2) });
    const { counts } = await watchOnce(shop, {}, breakFiles('a.ticket.json', 'EACCES'));
    expect(counts).toMatchObject({ done: 1, failed: 1, resting: false });
    expect(listTree(join(shop, 'failed/a'))).toEqual([
      '.job.json',
      'a.svg',
      'a.ticket.json',
      'report/report.json',
      'report/report.txt',
    ]);
    expect(readFileSync(join(shop, 'failed/a/report/report.txt'), 'utf8')).toContain(
      'The ticket a.ticket.json could not be read: reading it is not allowed.',
    );
    expect(listRoom(shop, 'out').filter((name) => name.startsWith('a-'))).toEqual([]);
  });

  it.each([
    ['a.ticket.json', ['a.svg', 'a.svgz']],
    ['film/ticket.json', ['film/a.svg', 'film/deep/b.svg']],
  ])('as the ticket %s of several files leaves these where they are, by name', async (ticket, names) => {
    const shop = openShop();
    const files = Object.fromEntries(
      names.map((name, i) => [name, name.endsWith('z') ? gzipSync(smallArt(i)) : smallArt(i)]),
    );
    drop(shop, { ...files, [ticket]: '{"pinbar": 1}', 'other.svg': smallArt(9) });
    const { counts, news } = await watchOnce(shop, {}, breakFiles(`in/${ticket}`, 'EIO'));
    expect(counts).toMatchObject({ done: 1, failed: 0, left: 2, resting: false });
    expect(listTree(join(shop, 'in'))).toEqual([...names, ticket].sort());
    const left = news.filter(({ event }) => event === 'left').map(({ facts }) => facts);
    expect(left).toMatchObject(names.map((name) => ({ name, why: 'ticket-not-readable' })));
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 2 });
  });

  it('as an answer leaves its job waiting, and no other', async () => {
    const shop = openShop();
    drop(shop, { 'ask.svg': askingArt() });
    await watchOnce(shop);
    writeFileSync(join(shop, 'waiting/ask/ticket.json'), '{"pinbar": 1}');
    drop(shop, { 'b.svg': smallArt(2) });
    const { counts, news } = await watchOnce(shop, {}, breakFiles('waiting/ask/ticket.json', 'EACCES'));
    expect(counts).toMatchObject({ done: 1, resting: false });
    expect(news.filter(({ event }) => event === 'left').map(({ facts }) => facts)).toMatchObject([
      { name: 'waiting/ask', why: 'not-readable' },
    ]);
  });

  it('as the record of a job that was left sets that job aside', async () => {
    const shop = openShop();
    const folder = join(shop, 'work/gone.0/0-1');
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, '.job.json'), '{}');
    writeFileSync(join(folder, 'a.svg'), smallArt(1));
    drop(shop, { 'b.svg': smallArt(2) });
    const { counts, jobs } = await watchOnce(shop, {}, breakFiles('0-1/.job.json', 'EIO'));
    expect(counts).toMatchObject({ done: 1, failed: 1, resting: false });
    expect(jobs.map(({ name, kind }) => `${name} ${kind}`).sort()).toEqual(['a.svg failed', 'b.svg done']);
    expect(readFileSync(join(shop, 'failed/a/a.svg'), 'utf8')).toBe(smallArt(1));
  });

  it('nor even looked at is named, and left', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'b.svg': smallArt(2) });
    const look: FolderDisk['look'] = (path) =>
      path.toString().endsWith('a.svg') ? fail('EIO') : MACHINE_DISK.look(path);
    const { counts, news } = await watchOnce(shop, { patienceMs: 0 }, { ...MACHINE_DISK, look });
    expect(counts).toMatchObject({ done: 1, failed: 0, left: 1, resting: false });
    expect(news.find(({ event }) => event === 'left')!.facts).toMatchObject({ name: 'a.svg', why: 'not-readable' });
  });

  it('as a folder of in/, however deep, is named, and the others are read', async () => {
    const shop = openShop();
    drop(shop, { 'x/a.svg': smallArt(1), 'x/y/b.svg': smallArt(2), 'x/z/c.svg': smallArt(3) });
    const list: FolderDisk['list'] = (path) =>
      path.toString().endsWith('x/y') ? fail('EACCES') : MACHINE_DISK.list(path);
    const { counts, news } = await watchOnce(shop, {}, { ...MACHINE_DISK, list });
    expect(counts).toMatchObject({ done: 2, left: 1, resting: false });
    expect(news.find(({ event }) => event === 'left')!.facts).toMatchObject({ name: 'x/y', why: 'not-readable' });
  });
});

describe('a disk that cannot be read', () => {
  it('is waited for, and nothing is set aside', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'b.svg': smallArt(2) });
    // It still moves names about, as one does whose folders are in memory, but neither gives nor takes bytes.
    let reads = 0;
    const broken: FolderDisk = {
      ...MACHINE_DISK,
      read: (path, ...rest) =>
        path.toString().endsWith('.svg') && reads++ > 1 ? fail('EIO') : MACHINE_DISK.read(path, ...rest),
      writeNew: (path, pieces) => (reads > 2 ? fail('EIO') : MACHINE_DISK.writeNew(path, pieces)),
    };
    const { counts } = await watchOnce(shop, {}, broken);
    expect(counts).toMatchObject({ done: 0, failed: 0, resting: true });
    expect(listRoom(shop, 'failed')).toEqual([]);
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 2, failed: 0, resting: false });
  }, 60_000);

  it.each([
    ['the ticket of the hot folder', '/ticket.json', 'The ticket ticket.json could not be read'],
    ['the journal', '/journal.ndjson', 'the disk reports an error'],
  ])('as %s concerns all jobs, so the folder rests', async (_what, end, words) => {
    const shop = openShop();
    writeFileSync(join(shop, 'ticket.json'), '{"pinbar": 1}');
    drop(shop, { 'a.svg': smallArt(1) });
    const append: FolderDisk['append'] = (path, line) =>
      path.toString().endsWith(end) ? fail('EIO') : MACHINE_DISK.append(path, line);
    const { counts, news } = await watchOnce(shop, {}, { ...breakFiles(end, 'EIO'), append });
    expect(counts).toMatchObject({ done: 0, failed: 0, resting: true });
    expect(String(news.find(({ event }) => event === 'resting')!.facts.message)).toContain(words);
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1, failed: 0 });
  });
});
