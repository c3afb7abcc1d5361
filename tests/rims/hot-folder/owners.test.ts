// Whose jobs are whose: stops, deaths, twins and other machines. Nothing is told by the age of a file.
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FolderDisk, MACHINE_DISK } from '../../../src/hot-folder/folder-disk.js';
import {
  drop,
  listRoom,
  listTree,
  listUnproved,
  openShop,
  readJournal,
  runCommand,
  SAMPLES,
  smallArt,
  startCommand,
  until,
  watchOn,
  watchOnce,
} from './shop.js';

const carton = readFileSync(join(SAMPLES, 'tuck-carton.svg'));

function isAtWork(shop: string): boolean {
  return listTree(join(shop, 'work')).some((path) => path.endsWith('.svg'));
}

/** A watcher in a process of its own, at work on a job. */
async function startAtWork(shop: string, ...args: readonly string[]): Promise<ReturnType<typeof startCommand>> {
  drop(shop, { 'carton.svg': carton });
  const watch = startCommand(
    'watch',
    shop,
    '--quiet-time',
    '0.05',
    '--poll',
    '0.1',
    '--poll-only',
    '--jobs',
    '1',
    ...args,
  );
  await until(() => isAtWork(shop), 'the job is claimed');
  return watch;
}

/** A room as a watcher on another machine leaves it, with a job in it. */
function leaveRoom(shop: string, owner: string): void {
  const home = join(shop, 'work', `${owner}.0123456789`);
  mkdirSync(join(home, '0123456789-1'), { recursive: true });
  const self = { owner, pid: 1, began: '1', boot: 'another', machine: 'another', processes: null, listens: true };
  writeFileSync(join(home, '.owner.json'), JSON.stringify(self));
  const from = [Buffer.from('left.svg').toString('base64')];
  const record = {
    pinbar: 1,
    document: 'job',
    id: '0123456789-1',
    from,
    beside: null,
    ticket: null,
    aloneRuns: 0,
    asked: null,
  };
  writeFileSync(join(home, '0123456789-1/.job.json'), JSON.stringify(record));
  writeFileSync(join(home, '0123456789-1/left.svg'), smallArt(9));
}

describe('a watcher that is told to stop', () => {
  it('finishes what runs and takes nothing more', async () => {
    const shop = openShop();
    const watch = await startAtWork(shop);
    drop(shop, { 'later.svg': smallArt(1) });
    watch.kill('SIGTERM');
    expect(await watch.ended).toBe(0);
    expect(listRoom(shop, 'done')).toEqual(['carton']);
    expect([...listRoom(shop, 'in'), ...listRoom(shop, 'work')]).toEqual(['later.svg']);
  });

  it('leaves what does not end in time whole, for whoever looks next', async () => {
    const shop = openShop();
    const watch = await startAtWork(shop, '--stop-time', '0.01', '--owner', 'press');
    watch.kill('SIGTERM');
    expect(await watch.ended).toBe(0);
    expect(listTree(join(shop, 'work')).filter((path) => path.endsWith('carton.svg'))).toHaveLength(1);
    expect(listTree(join(shop, 'work')).filter((path) => path.endsWith('.owner.json'))).toEqual([]);
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1 });
    expect(listRoom(shop, 'work')).toEqual([]);
  });
});

describe('a watcher that is killed', () => {
  it('keeps its jobs for the next, which takes them at once and finishes them', async () => {
    const shop = openShop();
    const watch = await startAtWork(shop);
    watch.kill('SIGKILL');
    await watch.ended;
    expect(isAtWork(shop)).toBe(true);
    const { counts, news } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 1, failed: 0 });
    expect(news.filter(({ event }) => event === 'took over')).toHaveLength(1);
    expect(readJournal(shop)).toHaveLength(1);
    expect(listRoom(shop, 'work')).toEqual([]);
    expect(listUnproved(shop)).toEqual([]);
  });

  it('three times over the same file that runs alone has it set aside, and no other', async () => {
    const shop = openShop();
    leaveRoom(shop, 'gone');
    const record = join(shop, 'work/gone.0123456789/0123456789-1/.job.json');
    writeFileSync(record, readFileSync(record, 'utf8').replace('"aloneRuns":0', '"aloneRuns":3'));
    drop(shop, { 'a.svg': smallArt(1) });
    const { counts } = await watchOnce(shop, { takeOver: ['gone'] });
    expect(counts).toMatchObject({ done: 1, failed: 1 });
    expect(listTree(join(shop, 'failed/left'))).toContain('left.svg');
  });
});

describe('a living watcher', () => {
  it('keeps its jobs, however old they look', async () => {
    const shop = openShop();
    const watch = await startAtWork(shop);
    for (const path of listTree(join(shop, 'work'))) utimesSync(join(shop, 'work', path), 1, 1);
    const { counts } = await watchOnce(shop);
    expect(counts).toMatchObject({ done: 0, failed: 0 });
    watch.kill('SIGTERM');
    await watch.ended;
    expect(readJournal(shop)).toHaveLength(1);
  });

  it('keeps its name', async () => {
    const shop = openShop();
    const watch = watchOn(shop, { owner: 'press' });
    await until(() => watch.news.some(({ event }) => event === 'watching'), 'it watches');
    const ran = runCommand('watch', shop, '--once', '--owner', 'press');
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('A watcher named "press" is at work');
    await watch.stop();
    expect(runCommand('watch', shop, '--once', '--owner', 'press', '--quiet-time', '0.01').status).toBe(0);
    expect(listRoom(shop, 'work')).toEqual([]);
  });
});

describe('a room that is just being made', () => {
  it('and is taken for what a crash left is left by the one, and made anew by the other', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1) });
    mkdirSync(join(shop, 'work/.new-other'), { recursive: true });
    let swept = 0;
    const disk: FolderDisk = {
      ...MACHINE_DISK,
      // The other watcher writes its record into what is being taken away.
      remove: (path) => {
        if (path.toString().endsWith('.new-other')) writeFileSync(join(shop, 'work/.new-other/.owner.json'), '{}');
        if (path.toString().endsWith('.new-other')) rmdirSync(join(shop, 'work/.new-other'));
        MACHINE_DISK.remove(path);
      },
      // And takes away what this one is just making, once.
      writeNew: (path, pieces) => {
        if (path.toString().endsWith('.owner.json') && swept++ === 0)
          rmSync(join(path.toString(), '..'), { recursive: true });
        MACHINE_DISK.writeNew(path, pieces);
      },
    };
    const { counts, news } = await watchOnce(shop, {}, disk);
    expect(counts).toMatchObject({ done: 1, resting: false });
    expect(swept).toBe(2);
    expect(news.filter(({ event }) => event === 'resting')).toEqual([]);
    expect(readdirSync(join(shop, 'work')).sort()).toEqual(['.keys', '.new-other']);
  });
});

describe('a watcher on another machine', () => {
  it('is left alone, since nobody can tell from here whether it lives', async () => {
    const shop = openShop();
    leaveRoom(shop, 'far');
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 0 });
    expect((await watchOnce(shop, { owner: 'near' })).counts).toMatchObject({ done: 0 });
    expect(listTree(join(shop, 'work'))).toHaveLength(3);
  });

  it('gets its jobs back by its own name, or loses them to --take-over', async () => {
    const shop = openShop();
    leaveRoom(shop, 'far');
    expect((await watchOnce(shop, { owner: 'far' })).counts).toMatchObject({ done: 1 });
    leaveRoom(shop, 'farther');
    const ran = runCommand('watch', shop, '--once', '--take-over', 'farther', '--quiet-time', '0.01');
    expect(ran.out).toBe('1 done, 0 again, 0 failed, 0 waiting, 0 left\n');
    expect(listRoom(shop, 'work')).toEqual([]);
  });

  it('that lives although it was taken for dead does no harm: its job is lost to it, and made once', async () => {
    const shop = openShop();
    const watch = await startAtWork(shop);
    const room = join(shop, 'work', listRoom(shop, 'work')[0]!);
    const job = listRoom(room, '.')[0]!;
    mkdirSync(join(shop, 'work/thief.0'));
    renameSync(join(room, job), join(shop, 'work/thief.0', job));
    expect((await watchOnce(shop)).counts).toMatchObject({ done: 1 });
    await until(() => watch.err().includes('"running"') || listRoom(room, '.').length === 0, 'it lets go');
    watch.kill('SIGTERM');
    expect(await watch.ended).toBe(0);
    expect(readJournal(shop)).toHaveLength(1);
    expect(listRoom(shop, 'out')).toHaveLength(1);
    expect([...listRoom(shop, 'failed'), ...listRoom(shop, 'work')]).toEqual([]);
  });
});
