// Jobs with ties and with an order, done by a program with a fault in it, before judges that share nothing with it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { vi } from 'vitest';
import type { JobResult } from '../../src/index.js';
import { joinPieces } from '../../src/index.js';
import { loadBroken, type TextFault } from './break-module.js';
import { judgeOrder } from './judge-order.js';
import { HOLD, judgeHeld, judgePattern, PATTERN } from './judge-ties.js';

const ONE_PASS = {
  passes: [{ name: 'cut', role: 'cutting' }],
  rules: [{ pass: 'cut', rest: true }],
};

const JOBS = {
  held: { art: 'ties.svg', ticket: { ties: [{ pass: 'cut', mode: 'hold', tiesPass: true, ...HOLD }] } },
  pattern: { art: 'ties.svg', ticket: { ties: [{ pass: 'perforate', mode: 'pattern', tiesPass: true, ...PATTERN }] } },
  order: { art: 'order.svg', ticket: { ...ONE_PASS, sequence: {} } },
  starts: { art: 'order.svg', ticket: { ...ONE_PASS, sequence: { restartContours: true } } },
} as const;

/** What is to be done. */
export type LineJobName = keyof typeof JOBS;

/** All of them. */
export const LINE_JOBS = Object.keys(JOBS) as readonly LineJobName[];

function textOf(job: JobResult, list: 'files' | 'tieFiles', name: string): string {
  const file = job[list].find((one) => one.name.includes(name));
  return file === undefined ? '' : Buffer.from(joinPieces(file.pieces)).toString('utf8');
}

/** Faults that the judge of a job sees, in words. */
export async function judgeLineJob(name: LineJobName, fault: TextFault): Promise<readonly string[]> {
  const { art, ticket } = JOBS[name];
  const bytes = readFileSync(join(import.meta.dirname, art));
  const { split, readTicket } = await loadBroken(fault);
  try {
    const asked = readTicket({ pinbar: 1, marks: { wanted: false }, ...ticket });
    const job = await split(bytes, asked, { fileName: art, skipChecks: true });
    if (name === 'held') return judgeHeld(textOf(job, 'files', '-cut'), textOf(job, 'tieFiles', '-cut'), job.ties[0]!);
    if (name === 'pattern')
      return judgePattern(textOf(job, 'files', '-perforate'), textOf(job, 'tieFiles', '-perforate'), job.ties[0]!);
    return judgeOrder(bytes.toString('utf8'), textOf(job, 'files', '-cut'), job.sequence[0]!, name === 'starts');
  } finally {
    vi.resetModules();
  }
}
