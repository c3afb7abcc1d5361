// The samples of a service and a container: their own command lines, started as an ordinary user who can write nowhere else.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chownSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { describeWith, witnessPath } from '../../house/witnesses.js';
import {
  askingArt,
  badArt,
  drop,
  listRoom,
  listTree,
  listUnproved,
  openShop,
  SAMPLES,
  smallArt,
  until,
} from './shop.js';

const ROOT = resolve(import.meta.dirname, '../../..');
const UNIT = readFileSync(join(SAMPLES, 'pinbar-watch.service'), 'utf8');
const CONTAINER = readFileSync(join(SAMPLES, 'pinbar-watch.containerfile'), 'utf8');
/** An account that no machine has, without any rights of its own. */
const USER = 64_021;

/** A setting of the unit. */
function readUnit(key: string): string {
  const found = new RegExp(`^${key}=(.*)$`, 'm').exec(UNIT)?.[1];
  if (found === undefined) throw new Error(`the unit says no ${key}`);
  return found;
}

/** The command of the container, as it is started. */
function readEntry(): readonly string[] {
  return JSON.parse(/^ENTRYPOINT (\[.*\])$/m.exec(CONTAINER)![1]!) as string[];
}

/** A file system that is read-only but for the one folder, and everything else as the unit says, laid by hand. */
const SANDBOX = `set -e
mount -t tmpfs -o mode=755 sandbox /srv
mkdir /srv/pinbar /srv/bin /srv/cartons
mount --bind "$PROJECT" /srv/pinbar
ln -s ../pinbar/bin/pinbar.js /srv/bin/pinbar
mount --bind "$SHOP" /srv/cartons
mount -t tmpfs -o mode=1777 sandbox /tmp
mount -o remount,bind,ro /srv
mount -o remount,bind,ro /srv/pinbar
mount -o remount,bind,ro /
cd /
umask "$MASK"
export PATH="/srv/bin:$PATH"
exec setpriv --reuid ${USER} --regid ${USER} --clear-groups --no-new-privs --bounding-set=-all --inh-caps=-all "$@"`;

function enterSandbox(shop: string, command: readonly string[]): readonly string[] {
  const env = [`PROJECT=${ROOT}`, `SHOP=${shop}`, `MASK=${readUnit('UMask')}`];
  return ['env', ...env, 'unshare', '--mount', '--propagation', 'private', 'sh', '-c', SANDBOX, 'sandbox', ...command];
}

function runInSandbox(shop: string, ...command: readonly string[]): ReturnType<typeof spawnSync> {
  const [program, ...args] = enterSandbox(shop, command) as [string, ...string[]];
  return spawnSync(program, args, { encoding: 'utf8' });
}

const probe = openShop();
/** Whether mounts can be laid, and the project is where another account can read it. */
const canEnter =
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  runInSandbox(probe, 'pinbar', '--version').stdout.toString().startsWith('0.');

const started: ChildProcess[] = [];
afterAll(() => {
  for (const child of started) child.kill('SIGKILL');
});

function start(
  program: string,
  args: readonly string[],
  options: object = {},
): { readonly ended: Promise<number | null>; readonly stop: () => void; readonly err: () => string } {
  const child = spawn(program, args, { stdio: ['ignore', 'ignore', 'pipe'], ...options });
  started.push(child);
  let err = '';
  child.stderr?.on('data', (chunk) => {
    err += String(chunk);
  });
  return {
    ended: new Promise((done) => child.once('exit', done)),
    stop: () => child.kill('SIGTERM'),
    err: () => err,
  };
}

async function askHealth(port: number): Promise<string> {
  const answer = await fetch(`http://127.0.0.1:${port}/healthz`);
  return `${answer.status}`;
}

function openOwnShop(user: number): string {
  const shop = openShop();
  for (const path of [shop, join(shop, 'in')]) chownSync(path, user, user);
  return shop;
}

/** Drops as somebody else does: the watcher may read the files, and does not own them. */
function dropThree(shop: string): void {
  drop(shop, { 'a.svg': smallArt(1), 'bad.svg': badArt(), 'ask.svg': askingArt(), 'ticket.json': '{"pinbar": 1}' });
  writeFileSync(join(shop, 'ticket.json'), '{"pinbar": 1, "severities": {"check/outline-open": "error"}}');
  rmSync(join(shop, 'in/ticket.json'));
}

async function untilSettled(shop: string, err: () => string): Promise<void> {
  await until(
    () => ['done', 'failed', 'waiting'].every((room) => listRoom(shop, room).length === 1),
    `all are settled: ${err()}`,
  );
}

describe('the samples of a service', () => {
  it('name a user who is not root, and one folder to write to: that which is watched', () => {
    expect(readUnit('User')).toMatch(/^(?!root$)[a-z]+$/);
    expect(CONTAINER).toMatch(/^USER [1-9]\d+:[1-9]\d+$/m);
    expect(readUnit('ReadWritePaths')).toBe(/ watch (\S+) /.exec(readUnit('ExecStart'))![1]);
    expect(readUnit('ProtectSystem')).toBe('strict');
    expect(readUnit('NoNewPrivileges')).toBe('yes');
    expect(readUnit('CapabilityBoundingSet')).toBe('');
    expect(Number(readUnit('TimeoutStopSec'))).toBeGreaterThan(30);
  });

  // Both hide what tells a watcher that lives from one that died.
  it('leave a watcher what it needs to know of others', () => {
    expect(UNIT).not.toMatch(/^(?:ProcSubset|PrivateUsers|ProtectProc)=/m);
    expect(readUnit('RestrictAddressFamilies').split(' ')).toContain('AF_UNIX');
  });
});

describeWith('systemd', 'the unit', () => {
  it('is understood by systemd, without a warning', () => {
    const { status, stderr, stdout } = spawnSync(
      witnessPath('systemd'),
      ['verify', '--man=no', join(SAMPLES, 'pinbar-watch.service')],
      { encoding: 'utf8' },
    );
    expect({ status, said: `${stdout}${stderr}` }).toEqual({ status: 0, said: '' });
  });
});

describe.skipIf(!canEnter)(
  `the command line of the unit${canEnter ? '' : ' (SKIPPED: needs root on Linux, mounts, and a project that others can read)'}`,
  () => {
    it('does jobs as an ordinary user on a disk where it can write to its folder alone, says how it does, and stops in order', async () => {
      const shop = openOwnShop(USER);
      const [program, ...args] = enterSandbox(shop, readUnit('ExecStart').split(' ')) as [string, ...string[]];
      const watch = start(program, args);
      await until(() => watch.err().includes('"watching"'), 'it watches');
      dropThree(shop);
      await untilSettled(shop, watch.err);
      const port = Number(/--listen 127\.0\.0\.1:(\d+)/.exec(readUnit('ExecStart'))![1]);
      expect(await askHealth(port)).toBe('200');
      watch.stop();
      expect(await watch.ended).toBe(0);
      expect(listUnproved(shop)).toEqual([]);
      expect(listRoom(shop, 'work')).toEqual([]);
      const made = join(shop, 'out', listRoom(shop, 'out')[0]!, 'manifest.json');
      const { uid, mode } = statSync(made);
      expect({ uid, mode: (mode & 0o777).toString(8) }).toEqual({ uid: USER, mode: '640' });
    });

    it('can write nowhere else', () => {
      const shop = openOwnShop(USER);
      const tries = ['/srv', '/srv/pinbar', '/etc', '/var/tmp', '/usr/local', '/'].map((path) => `touch ${path}/probe`);
      const { stdout } = runInSandbox(
        shop,
        'sh',
        '-c',
        `for t in ${tries.map((t) => `'${t}'`).join(' ')} 'touch /srv/cartons/probe'; do $t 2>/dev/null && echo "$t"; done; true`,
      );
      expect(String(stdout)).toBe('touch /srv/cartons/probe\n');
      expect(listTree(shop)).toContain('probe');
    });
  },
);

/** Whether another account can read the project. */
const canBeUser =
  process.getuid?.() === 0 &&
  spawnSync(process.execPath, [join(ROOT, 'bin/pinbar.js'), '--version'], { uid: USER, gid: USER }).status === 0;

describe.skipIf(!canBeUser)(
  `the command of the container${canBeUser ? '' : ' (SKIPPED: the command cannot be run as an ordinary user here)'}`,
  () => {
    it('does jobs as its user, and a container that is started anew after it was killed goes on with them', async () => {
      const user = Number(/^USER (\d+):/m.exec(CONTAINER)![1]);
      const shop = openOwnShop(user);
      const entry = readEntry().map((word) =>
        word === '/shop' ? shop : word.replace(/^0\.0\.0\.0:\d+$/, '127.0.0.1:0'),
      );
      expect(entry[0]).toBe('pinbar');
      const run = (): ReturnType<typeof start> =>
        start(process.execPath, [join(ROOT, 'bin/pinbar.js'), ...entry.slice(1)], { uid: user, gid: user, cwd: '/' });
      const first = run();
      await until(() => first.err().includes('"watching"'), 'it watches');
      dropThree(shop);
      await until(() => listTree(join(shop, 'work')).some((path) => path.endsWith('.svg')), 'it is at work');
      started.at(-1)!.kill('SIGKILL');
      await first.ended;
      const second = run();
      await untilSettled(shop, second.err);
      second.stop();
      expect(await second.ended).toBe(0);
      expect(listUnproved(shop)).toEqual([]);
    });
  },
);
