// Jobs handed on through Redis, with Redis and workers killed while they are at it.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { describeWith, witnessPath } from '../../house/witnesses.js';
import { drop, listRoom, listUnproved, openShop, readJournal, smallArt, startCommand, until } from './shop.js';

const scratch = mkdtempSync(join(tmpdir(), 'pinbar-redis-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** A port that nobody listens at. */
function findPort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' ? address!.port : 0));
    });
  });
}

function startRedis(port: number): ChildProcess {
  const settings = ['--port', String(port), '--bind', '127.0.0.1', '--dir', scratch, '--save', ''];
  return spawn(witnessPath('redis'), [...settings, '--appendonly', 'yes', '--maxmemory-policy', 'noeviction'], {
    stdio: 'ignore',
  });
}

describeWith('redis', 'pinbar work --queue', () => {
  it('does 300 jobs, each once, though Redis and a worker are killed', async () => {
    const shop = openShop();
    drop(shop, Object.fromEntries(Array.from({ length: 300 }, (_, i) => [`f${i}.svg`, smallArt(i)])));
    const port = await findPort();
    const url = `redis://127.0.0.1:${port}`;
    let redis = startRedis(port);
    const work = (): ReturnType<typeof startCommand> => startCommand('work', shop, '--queue', url, '--jobs', '1');
    const watch = startCommand('watch', shop, '--queue', url, '--quiet-time', '0.1', '--poll', '0.5', '--poll-only');
    const workers = [work(), work()];
    try {
      const done = (): number => listRoom(shop, 'done').length;
      await until(() => done() >= 30, 'some are done', 60_000);
      workers[0]!.kill('SIGKILL');
      redis.kill('SIGKILL');
      await workers[0]!.ended;
      workers.push(work());
      redis = startRedis(port);
      await until(() => done() === 300, 'all are done', 120_000);
    } finally {
      watch.kill('SIGTERM');
      for (const worker of workers) worker.kill('SIGTERM');
      expect(await Promise.all([watch.ended, ...workers.slice(1).map(({ ended }) => ended)])).toEqual([0, 0, 0]);
      redis.kill('SIGKILL');
    }
    const names = readJournal(shop).map(({ name, ending }) => `${String(name)} ${String(ending)}`);
    expect(names.sort()).toEqual(Array.from({ length: 300 }, (_, i) => `f${i}.svg done`).sort());
    expect(listRoom(shop, 'out')).toHaveLength(300);
    expect([...listRoom(shop, 'in'), ...listRoom(shop, 'work'), ...listRoom(shop, 'failed')]).toEqual([]);
    expect(listUnproved(shop)).toEqual([]);
  }, 240_000);
});
