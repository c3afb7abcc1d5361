// All checks, in the order in which their findings are listed where they weigh the same.
import type { Finding } from '../model/finding.js';
import { checkArtboardSize } from './check-artboard-size.js';
import { checkBlankOnSheet } from './check-blank-on-sheet.js';
import { checkBleed } from './check-bleed.js';
import { checkCreaseDistance } from './check-crease-distance.js';
import { checkCreaseEnds } from './check-crease-ends.js';
import { checkCreaseGrain } from './check-crease-grain.js';
import { checkDieKnockout } from './check-die-knockout.js';
import { checkDoubledLines } from './check-doubled-lines.js';
import type { Check, CheckFacts } from './check-facts.js';
import { checkGripper } from './check-gripper.js';
import { checkHairline } from './check-hairline.js';
import { checkLineUnderArt } from './check-line-under-art.js';
import { checkLiveText } from './check-live-text.js';
import { checkLoosePieces } from './check-loose-pieces.js';
import { checkMarksClear } from './check-marks-clear.js';
import { checkNeedlessPoints } from './check-needless-points.js';
import { checkNotALine } from './check-not-a-line.js';
import { checkOffArtboard } from './check-off-artboard.js';
import { checkOpenOutline } from './check-open-outline.js';
import { checkPaintUnresolved } from './check-paint-unresolved.js';
import { checkPassSizes } from './check-pass-sizes.js';
import { checkPictureResolution } from './check-picture-resolution.js';
import { checkRegisterOrder } from './check-register-order.js';
import { checkRunOrder } from './check-run-order.js';
import { checkSafeMargin } from './check-safe-margin.js';
import { checkSelfCrossing } from './check-self-crossing.js';
import { checkSuspiciousSize } from './check-suspicious-size.js';
import { checkTangle } from './check-tangle.js';
import { checkTies } from './check-ties.js';
import { checkToolsOnPrint } from './check-tools-on-print.js';
import { checkTurnAxis } from './check-turn-axis.js';
import { checkTurns } from './check-turns.js';
import { checkWhite } from './check-white.js';

/** Every check, group by group. */
const CHECKS: readonly Check[] = [
  // Lines
  checkTangle,
  checkNotALine,
  checkLineUnderArt,
  checkOpenOutline,
  checkDoubledLines,
  checkCreaseEnds,
  checkCreaseDistance,
  checkCreaseGrain,
  checkSelfCrossing,
  checkTurns,
  checkNeedlessPoints,
  checkTies,
  checkRunOrder,
  // Blank
  checkLoosePieces,
  // Print
  checkPictureResolution,
  checkBleed,
  checkSafeMargin,
  checkHairline,
  checkPaintUnresolved,
  checkLiveText,
  checkDieKnockout,
  checkWhite,
  checkOffArtboard,
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
