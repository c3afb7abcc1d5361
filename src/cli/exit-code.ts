// Exit codes and how trouble maps to them.
import { FINDING_KINDS, type Finding, type FindingCode } from '../model/finding.js';

/** What the process says when it ends. */
export const EXIT = {
  inRegister: 0,
  findings: 1,
  wrongUse: 2,
  unreadable: 3,
  unwritable: 4,
  answerNeeded: 5,
  ourFault: 70,
  interrupted: 130,
} as const;

/** Exit code for a job that could not go on. */
export function exitCodeOf(code: FindingCode): number {
  if (code === 'cancelled') return EXIT.interrupted;
  const [room] = code.split('/');
  if (room === 'use' || room === 'ticket' || room === 'profile') return EXIT.wrongUse;
  if (room === 'write') return EXIT.unwritable;
  return EXIT.unreadable;
}

/** Exit code for findings: an error that no answer settles weighs more than a question. */
export function exitCodeFor(findings: readonly Finding[]): number {
  const errors = findings.filter((item) => item.severity === 'error');
  if (errors.length === 0) return EXIT.inRegister;
  const open = errors.every((item) => FINDING_KINDS[item.code].asks === true);
  return open ? EXIT.answerNeeded : EXIT.findings;
}
