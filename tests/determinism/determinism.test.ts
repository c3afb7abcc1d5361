// One hash over everything that a fixed set of jobs gives: over versions of Node, time zones, locales, and the order of the jobs.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { describeWith, type Witness, witnessPath } from '../house/witnesses.js';

interface Hashed {
  readonly hash: string;
  readonly jobs: number;
  readonly lines: number;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly node: string;
  readonly timeZone: string;
  readonly locale: string;
}

const SCRIPT = join(import.meta.dirname, 'hash-jobs.js');
const MINUTES = 4 * 60_000;

function hashJobs(environment: Readonly<Record<string, string>>, node: string = process.execPath): Hashed {
  const env = { ...process.env, TZ: 'UTC', LANG: 'C.UTF-8', LC_ALL: 'C.UTF-8', ...environment };
  const { stdout, stderr } = spawnSync(node, [SCRIPT], { env, encoding: 'utf8' });
  if (stderr !== '') throw new Error(stderr);
  return JSON.parse(stdout) as Hashed;
}

let plain: Hashed;
beforeAll(() => {
  plain = hashJobs({});
}, MINUTES);

describe('the hash of all files, findings and reports', () => {
  it('is over many jobs that end in register', () => {
    expect(plain.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(plain.jobs).toBeGreaterThan(75);
    expect(plain.outcomes['in-register']).toBeGreaterThanOrEqual(plain.jobs - 1);
    expect(plain.lines).toBeGreaterThan(6 * plain.jobs);
  });

  it('notices one digit', { timeout: MINUTES }, () => {
    expect(hashJobs({ PINBAR_SPOIL: '1' }).hash).not.toBe(plain.hash);
  });

  it.each([
    ['Asia/Kathmandu', 'Asia/Katmandu', 'tr_TR.UTF-8', 'tr-TR'],
    ['America/St_Johns', 'America/St_Johns', 'de_DE.UTF-8', 'de-DE'],
  ])('is the same in %s', { timeout: MINUTES }, (zone, timeZone, LC_ALL, locale) => {
    const there = hashJobs({ TZ: zone, LC_ALL });
    expect([there.timeZone.replace('Kathmandu', 'Katmandu'), there.locale]).toEqual([timeZone, locale]);
    expect(there.hash).toBe(plain.hash);
  });

  it('is the same in another order, and four jobs at once', { timeout: MINUTES }, () => {
    expect(hashJobs({ PINBAR_ORDER: '7', PINBAR_AT_ONCE: '4' }).hash).toBe(plain.hash);
    expect(hashJobs({ PINBAR_ORDER: '8' }).hash).toBe(plain.hash);
  });
});

describe.each(['22', '24'])('Node %s', (version) => {
  const witness = `node-${version}` as Witness;
  describeWith(witness, `the hash under Node ${version}`, () => {
    it('is the same', { timeout: MINUTES }, () => {
      const there = hashJobs({ PINBAR_ORDER: '9', TZ: 'Pacific/Auckland' }, witnessPath(witness));
      expect(there.node.split('.')[0]).toBe(version);
      expect(there.timeZone).toBe('Pacific/Auckland');
      expect(there.hash).toBe(plain.hash);
    });
  });
});
