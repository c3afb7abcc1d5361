// How a watcher and its folder say how they do.
import { describe, expect, it } from 'vitest';
import { parseListen } from '../../../src/cli/parse-value.js';
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
    expect(ran.out).toMatch(/^in +1\nwork +0\nwaiting +1\ndone +1\nfailed +0\n\nno watcher\n\n\S+ {2}done +a\.svg\n$/);
    const told = JSON.parse(runCommand('watch', shop, '--status', '--json').out) as unknown;
    expect(told).toMatchObject({ document: 'status', in: 1, waiting: 1, done: 1, watchers: [] });
    expect(listRoom(shop, 'in')).toEqual(['c.svg']);
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
