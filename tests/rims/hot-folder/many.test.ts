// Many files, many watchers, and folders in trouble.
import { spawnSync } from 'node:child_process';
import { chmodSync, chownSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  COMMAND,
  drop,
  listRoom,
  listTree,
  listUnproved,
  openShop,
  readJournal,
  smallArt,
  startCommand,
  until,
  watchOn,
  watchOnce,
} from './shop.js';

const QUICK = ['--once', '--quiet-time', '0.05', '--poll', '0.1', '--jobs', '1', '--log-level', 'warn'];

function dropMany(shop: string, count: number, kinds: number): void {
  drop(shop, Object.fromEntries(Array.from({ length: count }, (_, i) => [`f${i}.svg`, smallArt(i % kinds)])));
}

describe('four watchers on one folder', () => {
  it('do 1,000 files, each exactly once', async () => {
    const shop = openShop();
    dropMany(shop, 1000, 1000);
    const watchers = Array.from({ length: 4 }, () => startCommand('watch', shop, ...QUICK));
    expect(await Promise.all(watchers.map(({ ended }) => ended))).toEqual([0, 0, 0, 0]);
    const names = readJournal(shop).map(({ name, ending }) => `${String(name)} ${String(ending)}`);
    expect(names.sort()).toEqual(Array.from({ length: 1000 }, (_, i) => `f${i}.svg done`).sort());
    expect(listRoom(shop, 'done')).toHaveLength(1000);
    expect(listRoom(shop, 'out')).toHaveLength(1000);
    expect([...listRoom(shop, 'in'), ...listRoom(shop, 'work'), ...listRoom(shop, 'failed')]).toEqual([]);
    expect(listUnproved(shop)).toEqual([]);
    expect(new Set(readJournal(shop).map(({ id }) => String(id).split('-')[0])).size).toBe(4);
  }, 180_000);

  it('make equal bytes once, whatever their names, even at the same time', async () => {
    const shop = openShop();
    dropMany(shop, 36, 3);
    const watchers = Array.from({ length: 3 }, () => startCommand('watch', shop, ...QUICK));
    expect(await Promise.all(watchers.map(({ ended }) => ended))).toEqual([0, 0, 0]);
    expect(listRoom(shop, 'out')).toHaveLength(3);
    expect(listRoom(shop, 'done')).toHaveLength(36);
    expect(listUnproved(shop)).toEqual([]);
  }, 120_000);
});

describe('a watcher without events', () => {
  it('does 2,000 files', async () => {
    const shop = openShop();
    dropMany(shop, 2000, 40);
    const { counts } = await watchOnce(shop, { pollOnly: true, jobs: 2 });
    expect(counts).toMatchObject({ done: 40, duplicate: 1960, failed: 0, left: 0 });
    expect(listRoom(shop, 'done')).toHaveLength(2000);
  }, 120_000);
});

describe('clocks', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it('that are off by years, of files and of the machine, change nothing', async () => {
    const shop = openShop();
    dropMany(shop, 2, 2);
    utimesSync(join(shop, 'in/f0.svg'), 1, 1);
    utimesSync(join(shop, 'in/f1.svg'), 4_000_000_000, 4_000_000_000);
    vi.useFakeTimers({ toFake: ['Date'], now: 0 });
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 2 });
    expect(readJournal(shop)[0]!.time).toBe('1970-01-01T00:00:00.000Z');
  });
});

/** A small disk of its own; false where the system does not let us have one. */
function mountSmall(folder: string): boolean {
  return spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=400k', 'tmpfs', folder]).status === 0;
}

const shopOnSmallDisk = openShop();
const hasSmallDisk = mountSmall(shopOnSmallDisk);

describe.skipIf(!hasSmallDisk)(
  `a full disk${hasSmallDisk ? '' : ' (SKIPPED: a small disk cannot be mounted here)'}`,
  () => {
    it('makes the folder rest with a message, and work goes on by itself when there is room', async () => {
      const shop = shopOnSmallDisk;
      try {
        dropMany(shop, 3, 3);
        const fill = join(shop, 'filler');
        const watch = watchOn(shop, { pollMs: 100 });
        await until(() => listRoom(shop, 'work').length === 1, 'it watches');
        try {
          writeFileSync(fill, Buffer.alloc(1_000_000));
        } catch {
          // As full as it gets.
        }
        await until(() => watch.news.some(({ event }) => event === 'resting'), 'it rests');
        expect(JSON.stringify(watch.news)).toContain('the disk is full');
        expect(
          listTree(shop).filter((path) => /^(?:in|work|done)\/.*\.svg$/.test(path) && !path.includes('.out')),
        ).toHaveLength(3);
        rmSync(fill);
        await until(() => listRoom(shop, 'done').length === 3, 'all are done');
        expect(
          watch.news.filter(({ event }) => event === 'resting' || event === 'going on').map(({ event }) => event),
        ).toEqual(['resting', 'going on']);
        expect(await watch.stop()).toMatchObject({ done: 3, failed: 0, resting: false });
        expect(listUnproved(shop)).toEqual([]);
        expect(readJournal(shop)).toHaveLength(3);
      } finally {
        spawnSync('umount', [shop]);
      }
    });
  },
);

const NOBODY = 65_534;

/** Whether the command can be run by somebody who may not do everything. */
const canBeNobody =
  process.getuid?.() === 0 &&
  spawnSync(process.execPath, [COMMAND, '--version'], { uid: NOBODY, gid: NOBODY }).status === 0;

describe.skipIf(!canBeNobody)(
  `missing rights${canBeNobody ? '' : ' (SKIPPED: the command cannot be run as an ordinary user here)'}`,
  () => {
    function runAsNobody(shop: string): { readonly status: number | null; readonly err: string } {
      const args = [COMMAND, 'watch', shop, ...QUICK];
      const { status, stderr } = spawnSync(process.execPath, args, { uid: NOBODY, gid: NOBODY, encoding: 'utf8' });
      return { status, err: stderr };
    }

    function openTo(shop: string): void {
      for (const path of [shop, ...readdirSync(shop).map((name) => join(shop, name))]) {
        if (statSync(path).isDirectory()) chownSync(path, NOBODY, NOBODY);
      }
    }

    it('on one file set it aside, on one folder of in/ leave it, and the others are done', () => {
      const shop = openShop();
      drop(shop, { 'a.svg': smallArt(1), 'secret.svg': smallArt(2), 'locked/b.svg': smallArt(3) });
      openTo(shop);
      chmodSync(join(shop, 'in/secret.svg'), 0o000);
      const { status, err } = runAsNobody(shop);
      expect(status).toBe(1);
      expect(err).toContain('"why":"not-allowed"');
      expect(listRoom(shop, 'done')).toEqual(['a']);
      expect(readFileSync(join(shop, 'failed/secret/report/report.txt'), 'utf8')).toContain(
        'The file secret.svg could not be read: reading it is not allowed.',
      );
      expect(listTree(join(shop, 'in'))).toEqual(['locked/b.svg']);
    });

    it('on a room make the folder rest, and nothing is taken', () => {
      const shop = openShop();
      drop(shop, { 'a.svg': smallArt(1) });
      openTo(shop);
      expect(runAsNobody(shop).status).toBe(0);
      chownSync(join(shop, 'out'), 0, 0);
      drop(shop, { 'b.svg': smallArt(2) });
      const { status, err } = runAsNobody(shop);
      expect(status).toBe(4);
      expect(err).toContain('writing there is not allowed');
      expect(listTree(join(shop, 'work')).filter((path) => path.endsWith('b.svg'))).toHaveLength(1);
      chownSync(join(shop, 'out'), NOBODY, NOBODY);
      expect(runAsNobody(shop).status).toBe(0);
      expect(listRoom(shop, 'done')).toEqual(['a', 'b']);
    });
  },
);
