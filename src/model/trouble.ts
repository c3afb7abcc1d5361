// The job cannot go on, or pinbar itself is at fault.
import { type Finding, type FindingCode, type FindingText, finding } from './finding.js';

/**
 * Thrown when the job cannot go on; carries all findings so far, the fatal one last.
 *
 * `code` is the code of the fatal finding.
 */
export class PinbarError extends Error {
  override readonly name: string = 'PinbarError';
  readonly code: FindingCode;
  readonly findings: readonly Finding[];

  constructor(code: FindingCode, text: FindingText, before: readonly Finding[] = [], cause?: unknown) {
    super(text.message, cause === undefined ? undefined : { cause });
    this.code = code;
    this.findings = [...before, finding(code, text)];
  }
}

/**
 * Holds what must be true unless pinbar itself is wrong.
 *
 * @throws Error named InvariantError, exit code 70.
 */
export function invariant(condition: unknown, text: string): asserts condition {
  if (condition) return;
  const error = new Error(`pinbar is at fault: ${text}`);
  error.name = 'InvariantError';
  throw error;
}
