// Runs hostile files in processes of their own, and holds how each ends, what it costs, and what comes out.
import { spawn } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawCarton, type HostileCase, repeat } from './hostile-case.js';

/** What is allowed for one file. */
export const MOST_SECONDS = 2;
/** Memory of the whole process at its peak, Node itself included. */
export const MOST_MEGABYTES = 512;

/** A process that has used so many seconds of its processor, or has run so long on a busy machine, is killed. */
const MOST_CPU_SECONDS = 20;
const PATIENCE_SECONDS = 300;

/** What a plain drawing of two thousand shapes takes where the bounds were set, undisturbed: a process of its own, as for all that is measured again. */
const PLAIN_SECONDS = 0.5;

/** What the attacked process tells of a file. */
export interface AttackReport {
  readonly name: string;
  readonly kind: string;
  readonly codes: readonly string[];
  readonly says?: string;
  readonly wallSeconds: number;
  readonly cpuSeconds: number;
  readonly peakMegabytes: number;
  /** How many times as long as undisturbed everything took meanwhile; at least 1, and 1 where left out. */
  readonly slowness?: number;
  readonly files: number;
  readonly active: readonly string[];
  /** Sheets that, split again, are not the same sheet. */
  readonly unsteady: readonly string[];
}

/** Runs a script on a list of files in a process with bounded memory; gives its report lines, as many as it came to. */
export async function runScript(script: string, folder: string, list: readonly unknown[]): Promise<readonly unknown[]> {
  const listPath = join(folder, 'list.json');
  const reportPath = join(folder, 'report.jsonl');
  writeFileSync(listPath, JSON.stringify(list));
  rmSync(reportPath, { force: true });
  const flags = ['--max-old-space-size=400', '--expose-gc'];
  const command = [process.execPath, ...flags, join(import.meta.dirname, script), listPath, reportPath];
  const bounded = `ulimit -t ${MOST_CPU_SECONDS + 2 * list.length}; exec "$0" "$@"`;
  const child = spawn('/bin/sh', ['-c', bounded, ...command], { stdio: ['ignore', 'ignore', 'inherit'] });
  const timer = setTimeout(() => child.kill('SIGKILL'), PATIENCE_SECONDS * 1000);
  await new Promise((resume) => child.on('close', resume));
  clearTimeout(timer);
  if (!existsSync(reportPath)) return [];
  return readFileSync(reportPath, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown);
}

/** The other work of the machine makes the one larger, the helper threads of the engine the other. */
function secondsOf(report: AttackReport | undefined): number {
  return report === undefined ? 0 : Math.min(report.wallSeconds, report.cpuSeconds) / (report.slowness ?? 1);
}

/** How slow the machine is just now. */
async function measureSlowness(folder: string): Promise<number> {
  const path = join(folder, 'plain.svg');
  writeFileSync(path, drawCarton({ art: repeat(2_000, '<rect x="40" y="35" width="1" height="1"/>') }));
  const [report] = (await runScript('attack.js', folder, [{ name: 'plain', path }])) as AttackReport[];
  return Math.max(1, secondsOf(report) / PLAIN_SECONDS);
}

async function attackAll(cases: readonly HostileCase[]): Promise<ReadonlyMap<string, AttackReport>> {
  const folder = mkdtempSync(join(tmpdir(), 'pinbar-hostile-'));
  const reports = new Map<string, AttackReport>();
  try {
    const list = cases.map(({ name, make, ticket }, i) => {
      const path = join(folder, `${i}.svg`);
      writeFileSync(path, make());
      return { name, path, ticket };
    });
    const attack = async (batch: typeof list): Promise<readonly AttackReport[]> =>
      (await runScript('attack.js', folder, batch)) as AttackReport[];
    const together = list.filter((_, i) => cases[i]!.alone !== true);
    const batches = [together, ...list.filter((_, i) => cases[i]!.alone === true).map((item) => [item])];
    for (const batch of batches) {
      for (let left = batch; left.length > 0; ) {
        const told = await attack(left);
        for (const report of told) reports.set(report.name, report);
        // A process that died did so over the first file it did not tell of.
        left = left.slice(told.length + 1);
      }
    }
    // What a busy machine spoils is measured again, alone.
    for (let attempt = 0; attempt < 2; attempt += 1) {
      const slow = list.filter(({ name }) => secondsOf(reports.get(name)) >= MOST_SECONDS);
      for (const item of slow) {
        const before = await measureSlowness(folder);
        for (const told of await attack([item])) {
          // A slow machine is slow before and after; the bound is one of the work.
          const report = { ...told, slowness: Math.min(before, await measureSlowness(folder)) };
          if (secondsOf(report) < secondsOf(reports.get(item.name))) reports.set(item.name, report);
        }
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return reports;
}

function check({ ends }: HostileCase, report: AttackReport | undefined): void {
  expect(report, 'the process died or was killed').toBeDefined();
  const { kind, codes, says, peakMegabytes, files, active, unsteady } = report!;
  expect(kind, says).not.toBe('untyped');
  expect(secondsOf(report), 'seconds').toBeLessThan(MOST_SECONDS);
  expect(peakMegabytes, 'megabytes').toBeLessThan(MOST_MEGABYTES);
  expect([kind, ...codes], says).toEqual(expect.arrayContaining(ends.split(' ')));
  if (kind !== 'error') expect(ends, says).toMatch(/^(?:in-register|answer-needed|refused)/);
  expect(files > 0).toBe(kind === 'in-register');
  expect(active).toEqual([]);
  expect(unsteady).toEqual([]);
}

/** Tests for the cases of one weakness class. */
export function attackEach(weakness: string, cases: readonly HostileCase[]): void {
  describe(weakness, () => {
    let reports: ReadonlyMap<string, AttackReport> = new Map();
    beforeAll(async () => {
      reports = await attackAll(cases);
      if (process.env.HOSTILE_TABLE !== undefined) {
        for (const report of reports.values()) appendFileSync(process.env.HOSTILE_TABLE, `${JSON.stringify(report)}\n`);
      }
    }, 600_000);
    afterAll(() => {
      reports = new Map();
    });
    it.each(cases)('$name', (hostile) => check(hostile, reports.get(hostile.name)));
  });
}
