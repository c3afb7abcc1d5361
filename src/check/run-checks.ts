// All checks, in the order in which their findings are listed where they weigh the same.
import type { Finding } from '../model/finding.js';
import { checkArtboardSize } from './check-artboard-size.js';
import { checkBlankOnSheet } from './check-blank-on-sheet.js';
import type { Check, CheckFacts } from './check-facts.js';
import { checkLoosePieces } from './check-loose-pieces.js';
import { checkOpenOutline } from './check-open-outline.js';
import { checkSuspiciousSize } from './check-suspicious-size.js';

/** Every check, group by group. */
const CHECKS: readonly Check[] = [
  // Lines
  checkOpenOutline,
  // Blank
  checkLoosePieces,
  // Sheet and size
  checkArtboardSize,
  checkSuspiciousSize,
  checkBlankOnSheet,
];

/** What all checks find; none of them throws for what is wrong with the artwork. */
export function runChecks(facts: CheckFacts): readonly Finding[] {
  return CHECKS.flatMap((check) => check(facts));
}
