// Tests that need something from outside: where it is missing they are skipped loudly, and on CI they fail.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, it } from 'vitest';

function nodePath(version: string): string {
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const packed = join('node_modules', `node-${platform}-${process.arch}`, 'bin', 'node');
  return join(import.meta.dirname, '..', '..', 'out', 'nodes', version, packed);
}

const FETCH_NODES = 'run node tests/determinism/fetch-nodes.js';

/** Where each witness stands once it is there, and how it gets there. */
const WITNESSES = {
  chromium: { path: '/usr/bin/chromium', how: 'Debian package chromium' },
  redis: { path: '/usr/bin/redis-server', how: 'Debian package redis-server' },
  strace: { path: '/usr/bin/strace', how: 'Debian package strace' },
  systemd: { path: '/usr/bin/systemd-analyze', how: 'Debian package systemd' },
  openclipart: { path: '/usr/share/openclipart/svg', how: 'Debian package openclipart-svg' },
  librsvg: { path: '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1', how: 'Debian package librsvg2-tests' },
  'node-22': { path: nodePath('22'), how: FETCH_NODES },
  'node-24': { path: nodePath('24'), how: FETCH_NODES },
} as const;

/** Something from outside that tests may need. */
export type Witness = keyof typeof WITNESSES;

/** Path of a witness. */
export function witnessPath(witness: Witness): string {
  return WITNESSES[witness].path;
}

/** `describe` for tests that need a witness. */
export function describeWith(witness: Witness, name: string, tests: () => void): void {
  const { path, how } = WITNESSES[witness];
  if (existsSync(path)) {
    describe(name, tests);
    return;
  }
  const reason = `${witness} is missing; ${how}`;
  if (process.env.CI === undefined) {
    describe.skip(`${name} (${reason})`, tests);
    return;
  }
  describe(name, () => {
    it('has its witness', () => {
      throw new Error(reason);
    });
  });
}
