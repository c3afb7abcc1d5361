// All checks, in the order in which their findings are listed where they weigh the same.
import type { Finding } from '../model/finding.js';
import { checkArtboardSize } from './check-artboard-size.js';
import { checkBlankOnSheet } from './check-blank-on-sheet.js';
import type { Check, CheckFacts } from './check-facts.js';
import { checkGripper } from './check-gripper.js';
import { checkLoosePieces } from './check-loose-pieces.js';
import { checkMarksClear } from './check-marks-clear.js';
import { checkOpenOutline } from './check-open-outline.js';
import { checkPassSizes } from './check-pass-sizes.js';
import { checkRegisterOrder } from './check-register-order.js';
import { checkSuspiciousSize } from './check-suspicious-size.js';
import { checkToolsOnPrint } from './check-tools-on-print.js';
import { checkTurnAxis } from './check-turn-axis.js';

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
  checkGripper,
  // The passes
  checkPassSizes,
  checkRegisterOrder,
  checkToolsOnPrint,
  checkTurnAxis,
  checkMarksClear,
];

/** What all checks find; none of them throws for what is wrong with the artwork. */
export function runChecks(facts: CheckFacts): readonly Finding[] {
  return CHECKS.flatMap((check) => check(facts));
}
