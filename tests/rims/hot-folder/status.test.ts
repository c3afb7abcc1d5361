// How a watcher and its folder say how they do.
import { rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseListen, parseSeconds } from '../../../src/cli/parse-value.js';
import { printStatus } from '../../../src/hot-folder/read-status.js';
import { startTally } from '../../../src/hot-folder/tally.js';
import { askingArt, drop, listRoom, openShop, runCommand, smallArt, startCommand, until, watchOnce } from './shop.js';

describe('pinbar watch --listen', () => {
  it('tells health and counts, and nothing else', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'b.svg': askingArt() });
    const watch = startCommand(
      'watch',
      shop,
      '--listen',
      '127.0.0.1:0',
      '--quiet-time',
      '0.05',
      '--poll',
      '0.1',
      '--jobs',
      '1',
    );
    try {
      await until(() => /"port":\d+/.test(watch.err()), 'it listens');
      const at = `http://127.0.0.1:${/"port":(\d+)/.exec(watch.err())![1]}`;
      await until(
        () => listRoom(shop, 'done').length === 1 && listRoom(shop, 'waiting').length === 1,
        'both are settled',
      );
      const health = await fetch(`${at}/healthz`);
      expect([health.status, await health.text()]).toEqual([200, 'ok\n']);
      await until(() => watch.err().includes('"msg":"waiting"') && watch.err().includes('"msg":"done"'), 'it is told');
      const metrics = await (await fetch(`${at}/metrics`)).text();
      expect(metrics).toContain('pinbar_jobs_total{ending="done"} 1\n');
      expect(metrics).toContain('pinbar_jobs_total{ending="waiting"} 1\n');
      expect(metrics).toMatch(/^pinbar_job_bytes_total [1-9]\d+$/m);
      expect(metrics).toMatch(/^pinbar_queue_depth \d+$/m);
      expect((await fetch(`${at}/`)).status).toBe(404);
      expect((await fetch(`${at}/metrics`, { method: 'POST' })).status).toBe(405);
    } finally {
      watch.kill('SIGTERM');
    }
    expect(await watch.ended).toBe(0);
  });

  it('takes a host and a port, or a port of this machine alone', () => {
    expect(parseListen('127.0.0.1:9464')).toEqual({ host: '127.0.0.1', port: 9464 });
    expect(parseListen('9464')).toEqual({ host: '127.0.0.1', port: 9464 });
    expect(parseListen('[::1]:80')).toEqual({ host: '::1', port: 80 });
    for (const wrong of ['', 'here', '1.2.3.4:', '1.2.3.4:99999'])
      expect(() => parseListen(wrong)).toThrow('HOST:PORT');
  });

  it('is not well while the folder rests', () => {
    const tally = startTally();
    expect(tally.trouble()).toBeNull();
    tally.onNews({ level: 'error', event: 'resting', facts: { message: 'the disk is full' } });
    expect(tally.trouble()).toBe('the disk is full');
    expect(tally.print()).toContain('pinbar_resting 1\n');
    tally.onNews({ level: 'info', event: 'going on', facts: {} });
    expect(tally.trouble()).toBeNull();
    expect(tally.print()).toContain('pinbar_resting 0\n');
  });
});

describe('pinbar watch --status', () => {
  it('shows how the folder stands, and changes nothing', async () => {
    const shop = openShop();
    drop(shop, { 'a.svg': smallArt(1), 'b.svg': askingArt() });
    await watchOnce(shop);
    drop(shop, { 'c.svg': smallArt(2) });
    const ran = runCommand('watch', shop, '--status');
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/^in +1\nwork +0\nwaiting +1\ndone +1\nfailed +0\n\nno watcher\n/);
    expect(ran.out).toMatch(/\n\n\S+ {2}done +a\.svg\n$/);
    const told = JSON.parse(runCommand('watch', shop, '--status', '--json').out) as unknown;
    expect(told).toMatchObject({ document: 'status', in: 1, waiting: 1, done: 1, watchers: [] });
    expect(listRoom(shop, 'in')).toEqual(['c.svg']);
  });

  it('names what waits and what for, and what is not taken and why', async () => {
    const shop = openShop();
    drop(shop, { 'b.svg': askingArt() });
    await watchOnce(shop);
    drop(shop, { 'ha\nlf.svg': '<svg><g>', 'whole.svg': smallArt(1), 'own.svg': smallArt(2), 'own.ticket.json': '{' });
    symlinkSync('/nowhere', join(shop, 'in/link.svg'));
    const { out } = runCommand('watch', shop, '--status');
    expect(out).toMatch(/^ {2}waiting\/b: .*Layer 7/m);
    expect(out).toContain('  in/ha?lf.svg: Its end is missing.');
    expect(out).toContain('  in/own.svg: A ticket that counts for it is no whole JSON.');
    expect(out).toContain('  in/link.svg: It is a link or a device');
    expect(out).not.toContain('whole.svg');
    const told = JSON.parse(runCommand('watch', shop, '--status', '--json').out) as {
      readonly asks: readonly { readonly name: string; readonly question: string }[];
      readonly left: readonly { readonly name: string; readonly why: string }[];
    };
    expect(told.asks).toMatchObject([{ name: 'b' }]);
    expect(told.left.map(({ name, why }) => `${name} ${why}`).sort()).toEqual([
      'ha\nlf.svg not-complete',
      'link.svg link-or-device',
      'own.svg ticket-not-complete',
    ]);
  });

  it('shows ten of many, and how many more there are', () => {
    const asks = Array.from({ length: 12 }, (_, number) => ({ name: `n${number}`, question: 'q'.repeat(300) }));
    const rooms = { in: 0, work: 0, waiting: 12, done: 0, failed: 0, watchers: [], left: [], last: [] };
    const lines = printStatus({ ...rooms, asks }).split('\n');
    expect(lines.filter((line) => line.startsWith('  waiting/'))).toHaveLength(10);
    expect(lines).toContain('  and 2 more');
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(162);
  });

  it('refuses what is no hot folder: all at nought would look as if all were done', () => {
    for (const folder of [openShop(), join(openShop(), 'nowhere')]) {
      rmSync(join(folder, 'in'), { recursive: true, force: true });
      const ran = runCommand('watch', folder, '--status');
      expect([ran.status, ran.out]).toEqual([3, '']);
      expect(ran.err).toContain('is no hot folder');
    }
  });
});

describe('times of a watcher', () => {
  it('longer than a timer waits are refused: each job would be out of time at once', () => {
    expect(parseSeconds('2147483')).toBe(2_147_483);
    expect(() => parseSeconds('2147484')).toThrow('24 days');
    const ran = runCommand('watch', openShop(), '--once', '--time-limit', '9999999');
    expect([ran.status, ran.err]).toEqual([2, expect.stringContaining('24 days')]);
  });
});

describe('pinbar work --help', () => {
  it('speaks of a worker, not of the watcher that hands it its jobs', () => {
    const words = runCommand('work', '--help').out.replace(/\s+/g, ' ');
    expect(words).toContain('--queue <url> take the jobs that the watcher of this folder hands on');
    expect(words).toContain('name of this worker');
    expect(words).not.toMatch(/name of this watcher|hand jobs to workers|jobs of a watcher/);
    expect(runCommand('watch', '--help').out.replace(/\s+/g, ' ')).toContain('--queue <url> hand jobs to workers');
  });
});
