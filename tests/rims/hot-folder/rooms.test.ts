// A hot folder whose rooms come late, or are taken away under a watcher at work.
import { mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import { layOut, openRooms } from '../../../src/hot-folder/layout.js';
import { startTally } from '../../../src/hot-folder/tally.js';
import {
  drop,
  listRoom,
  listTree,
  openShop,
  readJournal,
  runCommand,
  smallArt,
  until,
  watchOn,
  watchOnce,
} from './shop.js';

describe('a hot folder', () => {
  it('that comes late is taken up, and the watcher is well from then on', async () => {
    const shop = openShop();
    const late = join(shop, 'late');
    const watch = watchOn(late);
    await until(() => watch.news.length === 1, 'it rests');
    drop(late, { 'a.svg': smallArt(1) });
    await until(() => listRoom(late, 'done').length === 1, 'the job is done');
    await watch.stop();
    const tally = startTally();
    tally.onNews(watch.news[0]!);
    expect(tally.trouble()).toContain('The hot folder is not there');
    for (const news of watch.news) tally.onNews(news);
    expect(tally.trouble()).toBeNull();
  });

  it('whose work/ was taken away gets it anew, with the room of its watcher', async () => {
    const shop = openShop();
    const watch = watchOn(shop);
    drop(shop, { 'a.svg': smallArt(1) });
    await until(() => listRoom(shop, 'done').length === 1, 'the first is done');
    const [room] = listRoom(shop, 'work');
    rmSync(join(shop, 'work'), { recursive: true });
    drop(shop, { 'b.svg': smallArt(2) });
    await until(() => listRoom(shop, 'done').length === 2, 'the second is done');
    expect(listRoom(shop, 'work')).toEqual([room]);
    const told = JSON.parse(runCommand('watch', shop, '--status', '--json').out) as unknown;
    expect(told).toMatchObject({ watchers: [{ life: 'alive', jobs: 0 }] });
    expect((await watch.stop()).resting).toBe(false);
    expect(listRoom(shop, 'work')).toEqual([]);
  });

  it.each([
    ['a link', 'out', (path: string, outside: string): void => symlinkSync(outside, path)],
    ['a file', 'out', (path: string): void => writeFileSync(path, '')],
    ['a file', 'done', (path: string): void => writeFileSync(path, '')],
  ])(
    'that gets %s in place of %s rests until it is a folder again, and writes nowhere else',
    async (_what, room, put) => {
      const [shop, outside] = [openShop(), openShop()];
      const watch = watchOn(shop);
      drop(shop, { 'a.svg': smallArt(1) });
      await until(() => watch.jobs.length === 1, 'the first is done');
      renameSync(join(shop, room), join(shop, 'kept'));
      put(join(shop, room), join(outside, 'in'));
      drop(shop, { 'b.svg': smallArt(2) });
      await until(() => watch.news.some(({ event }) => event === 'resting'), 'it rests');
      expect(JSON.stringify(watch.news)).toContain(`${room} in the hot folder`);
      rmSync(join(shop, room));
      renameSync(join(shop, 'kept'), join(shop, room));
      await until(() => watch.jobs.length === 2, 'the second is done');
      expect(await watch.stop()).toMatchObject({ done: 2, failed: 0, resting: false });
      expect(listTree(outside)).toEqual([]);
      expect(readJournal(shop).map(({ name }) => name)).toEqual(['a.svg', 'b.svg']);
    },
  );

  it('of which a room comes to lie on another disk rests, and says between which', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    let left = 1;
    const move: FolderDisk['move'] = (from, to) => {
      if (to.includes('/out/') && left-- > 0) {
        throw Object.assign(new Error('EXDEV'), { code: 'EXDEV', path: from.toString(), dest: to.toString() });
      }
      MACHINE_DISK.move(from, to);
    };
    const { counts, news } = await watchOnce(shop, {}, { ...MACHINE_DISK, move });
    expect(counts).toMatchObject({ done: 1, failed: 0, resting: false });
    const told = String(news.find(({ event }) => event === 'resting')!.facts.message);
    expect(told).toMatch(/a room lies on another disk than the others \(\S+\/\.out to \S+\/out\/a-[0-9a-f]{12}\)/);
  });

  it('may be named by a link, while its rooms may not be links', async () => {
    const shop = openShop();
    mkdirSync(join(shop, 'disk/in'), { recursive: true });
    const link = join(shop, 'link');
    symlinkSync(join(shop, 'disk'), link);
    drop(link, { 'a.svg': smallArt(1) });
    expect((await watchOnce(link)).counts).toMatchObject({ done: 1, resting: false });
    expect(listRoom(join(shop, 'disk'), 'done')).toEqual(['a']);
    renameSync(join(shop, 'disk/out'), join(shop, 'elsewhere'));
    symlinkSync(join(shop, 'elsewhere'), join(shop, 'disk/out'));
    expect(() => openRooms(MACHINE_DISK, layOut(Buffer.from(link)))).toThrow('out in the hot folder is a link');
  });
});
