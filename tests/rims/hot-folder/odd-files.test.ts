// Files that nobody drops on purpose: none of them stops a watcher, and none is passed over in silence.
import { readFileSync, renameSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import {
  askingArt,
  drop,
  listRoom,
  listTree,
  listUnproved,
  openShop,
  readJournal,
  smallArt,
  until,
  watchOn,
  watchOnce,
} from './shop.js';

/** A disk on which some reads end early, as when somebody is still writing. */
function cutRead(isCut: (path: string) => boolean, end: number): FolderDisk {
  const read: FolderDisk['read'] = (path, ...rest) => {
    const bytes = MACHINE_DISK.read(path, ...rest);
    return isCut(path.toString()) ? bytes.subarray(0, end) : bytes;
  };
  return { ...MACHINE_DISK, read };
}

describe('a file that is larger', () => {
  it('than any memory is set aside unread, and its neighbours are done', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'huge.svg': '<svg>', 'b.svg': smallArt(2), 'b.ticket.json': '{' });
    // Holes: neither takes room on the disk.
    truncateSync(join(shop, 'in/huge.svg'), 6_000_000_000);
    truncateSync(join(shop, 'in/b.ticket.json'), 6_000_000_000);
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1, failed: 1, waiting: 1, left: 0 });
    expect(statSync(join(shop, 'failed/huge/huge.svg')).size).toBe(6_000_000_000);
    expect(readJournal(shop).find(({ name }) => name === 'huge.svg')).toMatchObject({
      ending: 'failed',
      bytes: 6_000_000_000,
      codes: ['limit/bytes'],
    });
  });

  it('than --limit allows is set aside with what to do', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    const bytes = smallArt(1).length;
    expect((await watchOnce(shop, { limits: { bytes: bytes - 1 } })).counts).toMatchObject({ failed: 1 });
    expect(readFileSync(join(shop, 'failed/a/report/report.txt'), 'utf8')).toContain(`--limit bytes=${bytes}`);
    drop(shop, { 'a.svg': smallArt(1) });
    expect((await watchOnce(shop, { limits: { bytes: 20 * bytes } })).counts).toMatchObject({ done: 1 });
  });

  it('than a bound of the reader other than its bytes is taken, and told in a report', async () => {
    const shop = openShop();
    // A tag in a comment has the strict reader asked whether the end is there, and that stops at its own bound.
    drop(shop, { 'deep.svg': `<svg><!-- <svg -->${'<g>'.repeat(300)}${'</g>'.repeat(300)}</svg>` });
    expect((await watchOnce(shop)).counts).toMatchObject({ failed: 1, left: 0 });
    expect(listRoom(shop, 'failed')).toEqual(['deep']);
    expect(readJournal(shop)).toMatchObject([{ codes: ['limit/depth'] }]);
  });
});

describe('a file that is left where it lies', () => {
  it('for it lies too many folders down is named', async () => {
    const shop = openShop();
    drop(shop, { '1/2/3/4/5/6/7/8/a.svg': smallArt(1), '1/2/3/4/5/6/7/8/9/b.svg': smallArt(2) });
    const { counts, news } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1, left: 1 });
    expect(news.filter(({ event }) => event === 'left').map(({ facts }) => facts)).toMatchObject([
      { name: '1/2/3/4/5/6/7/8/9', why: 'too-deep' },
    ]);
  });

  it('is named once, and the next of its name again', async () => {
    const shop = openShop();
    const watch = watchOn(shop, { patienceMs: 0, pollMs: 20 });
    const named = (): number => watch.news.filter(({ event }) => event === 'left').length;
    drop(shop, { 'a.svg': '<svg><g>', 'b.svg': smallArt(1) });
    await until(() => named() === 1 && watch.jobs.length === 1, 'it is named');
    rmSync(join(shop, 'in/a.svg'));
    drop(shop, { 'c.svg': smallArt(2) });
    await until(() => watch.jobs.length === 2, 'another was done since');
    drop(shop, { 'a.svg': '<svg><g>' });
    await until(() => named() === 2, 'it is named again');
    await watch.stop();
  });
});

describe('a ticket that several files share', () => {
  it.each(['ticket.json', 'in/film/ticket.json'])('as %s, and is no whole JSON, is waited for', async (ticket) => {
    const shop = openShop();
    drop(shop, { 'film/a.svg': smallArt(1), 'film/deep/b.svg': smallArt(2) });
    writeFileSync(join(shop, ticket), '{"pinbar": 1, "marginMm": ');
    const first = await watchOnce(shop, { patienceMs: 0 });
    expect(first.counts).toMatchObject({ done: 0, waiting: 0, left: 2, resting: false });
    expect(first.news.filter(({ event }) => event === 'left').map(({ facts }) => facts.why)).toEqual([
      'ticket-not-complete',
      'ticket-not-complete',
    ]);
    writeFileSync(join(shop, ticket), '{"pinbar": 1, "marginMm": 4}');
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 2, waiting: 0, left: 0 });
    for (const out of listRoom(shop, 'out')) {
      const manifest = JSON.parse(readFileSync(join(shop, 'out', out, 'manifest.json'), 'utf8')) as unknown;
      expect(manifest).toMatchObject({ ticket: { marginMm: 4 } });
    }
  });

  it('and is written just when a file is taken leaves that to the next look', async () => {
    const shop = openShop();
    drop(shop, { 'film/a.svg': smallArt(1), 'film/ticket.json': '{"pinbar": 1, "marginMm": 4}' });
    let reads = 0;
    const { counts } = await watchOnce(
      shop,
      {},
      // The second look at it is that of whoever takes the file.
      cutRead((path) => path.endsWith('in/film/ticket.json') && ++reads === 2, 9),
    );
    expect(reads).toBeGreaterThan(2);
    expect(counts).toMatchObject({ done: 1, waiting: 0 });
  });
});

describe('art that is written to', () => {
  it('just when it is taken is looked at again, also where the watcher would end', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    // A scan reads it to its end once it rests; the look after that is the one before taking it.
    let step: 'rests' | 'is read' | 'is written' = 'rests';
    const read: FolderDisk['read'] = (path, ...rest) => {
      if (path.toString().endsWith('in/a.svg') && step === 'rests') step = 'is read';
      return MACHINE_DISK.read(path, ...rest);
    };
    const look: FolderDisk['look'] = (path) => {
      const found = MACHINE_DISK.look(path);
      if (!path.toString().endsWith('in/a.svg') || step !== 'is read' || found === null) return found;
      step = 'is written';
      return { ...found, mark: 'another' };
    };
    expect((await watchOnce(shop, {}, { ...MACHINE_DISK, read, look })).counts).toMatchObject({ done: 1, left: 0 });
  });

  it('while it is at work is read again, so that files, name and journal are of the same bytes', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    let reads = 0;
    const { counts } = await watchOnce(
      shop,
      {},
      cutRead((path) => /work\/.*\/a\.svg$/.test(path) && ++reads === 1, -1),
    );
    expect(counts).toMatchObject({ done: 1, failed: 0 });
    const manifest = JSON.parse(
      readFileSync(join(shop, 'out', listRoom(shop, 'out')[0]!, 'manifest.json'), 'utf8'),
    ) as { readonly input: { readonly sha256: string } };
    expect(readJournal(shop)).toMatchObject([{ sha256: manifest.input.sha256, out: listRoom(shop, 'out')[0] }]);
    expect(listUnproved(shop)).toEqual([]);
    // The same again is the same job, under the name that its bytes give it.
    drop(shop, { 'b.svg': smallArt(1) });
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0, duplicate: 1 });
  });
});

describe('the folder of a job that is put back into in/', () => {
  it('is taken as its art alone, without the picture of its report', async () => {
    const shop = openShop();
    drop(shop, { 'ask.svg': askingArt(), 'report/other.svg': smallArt(3) });
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1, waiting: 1 });
    renameSync(join(shop, 'waiting/ask'), join(shop, 'in/ask'));
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0, failed: 0, waiting: 1, left: 0 });
    expect(listTree(join(shop, 'in'))).toContain('ask/report/findings.svg');
    expect(listRoom(shop, 'waiting')).toEqual(['ask_ask']);
  });
});
