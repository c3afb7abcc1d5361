// A job done by a program with a fault in it, before the judges of the sound one.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { vi } from 'vitest';
import { type Finding, type JobResult, joinPieces, verify } from '../../src/index.js';
import { loadBroken, type TextFault } from './break-module.js';

const RULES = [
  { pass: 'crease', layer: 'Die', stroke: '#3949ab' },
  { pass: 'cut', layer: 'Die', stroke: '#2a7f62' },
  { pass: 'print', rest: true },
];
const PLAIN = {
  pinbar: 1,
  partPaint: true,
  passes: [
    { name: 'crease', role: 'creasing' },
    { name: 'print', role: 'print' },
    { name: 'cut', role: 'cutting' },
  ],
  rules: RULES,
};

const COUNTING = {
  pinbar: 1,
  passes: PLAIN.passes,
  rules: [
    { pass: 'print', layer: 'Artwork*' },
    { pass: 'crease', layer: 'Crease' },
    { pass: 'cut', layer: 'Cut' },
  ],
};

const JOBS = {
  /** A file without rules that count. */
  plain: { art: 'plain.svg', ticket: PLAIN, marginMm: 0 },
  /** Its hidden layer is wanted. */
  hidden: { art: 'plain.svg', ticket: { ...PLAIN, hidden: 'include' }, marginMm: 0 },
  /** Its artboard grows. */
  margin: { art: 'plain.svg', ticket: { ...PLAIN, marginMm: 2.53 }, marginMm: 2.53 },
  /** Style rules that count. */
  counting: { art: 'counting.svg', ticket: COUNTING, marginMm: 0 },
} as const;

/** What is to be done. */
export type JobName = keyof typeof JOBS;

/** All of them. */
export const JOB_NAMES = Object.keys(JOBS) as readonly JobName[];

/** Which codes of errors each judge gave. */
export interface Verdicts {
  /** The first judge as a whole. */
  readonly readBack: readonly string[];
  /** The first judge by bytes alone, as it looks at large files. */
  readonly bytes: readonly string[];
  readonly witness: readonly string[];
  /** `verify` with the source, which knows nothing of the job. */
  readonly verify: readonly string[];
}

/** More than the first judge resolves again where it need not. */
const LARGE = `<!--${' '.repeat(4 * 1024 * 1024)}-->`;

function listErrors(findings: readonly Finding[]): readonly string[] {
  return [...new Set(findings.filter((item) => item.severity === 'error').map((item) => item.code))].sort();
}

function judged(job: JobResult, judge: 'read-back' | 'witness'): readonly string[] {
  return listErrors(job.proof.judges.find((one) => one.judge === judge)!.findings);
}

/** Who looks. */
export type Judge = keyof Verdicts;

/** The verdicts of all judges over a job done with a fault, or without one. */
export async function judgeBroken(
  name: JobName,
  fault: TextFault,
): Promise<{ readonly verdicts: Verdicts; readonly hashes: readonly string[] }> {
  const { art, ticket, marginMm } = JOBS[name];
  const text = readFileSync(join(import.meta.dirname, art), 'utf8');
  const { split, readTicket } = await loadBroken(fault);
  try {
    const bytes = Buffer.from(text);
    const job = await split(bytes, readTicket({ ...ticket, witness: 'always' }));
    const large = await split(
      Buffer.from(text.replace('</svg>', `${LARGE}</svg>`)),
      readTicket({ ...ticket, witness: 'never' }),
    );
    const files = job.files.map(({ name: file, pieces }) => ({ name: file, bytes: joinPieces(pieces) }));
    const comparison = await verify(files, { name: art, bytes }, { shiftMm: [marginMm, marginMm] });
    const verdicts = {
      readBack: judged(job, 'read-back'),
      bytes: judged(large, 'read-back'),
      witness: judged(job, 'witness'),
      verify: [...new Set(comparison.findings.map((item) => item.code))].sort(),
    };
    return { verdicts, hashes: job.files.map((file) => file.sha256) };
  } finally {
    vi.resetModules();
  }
}
