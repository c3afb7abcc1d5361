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
import { checkLiveText } from './check-live-text.js';
import { checkLoosePieces } from './check-loose-pieces.js';
import { checkMarksClear } from './check-marks-clear.js';
import { checkOffArtboard } from './check-off-artboard.js';
import { checkOpenOutline } from './check-open-outline.js';
import { checkPaintUnresolved } from './check-paint-unresolved.js';
import { checkPassSizes } from './check-pass-sizes.js';
import { checkPictureResolution } from './check-picture-resolution.js';
import { checkRegisterOrder } from './check-register-order.js';
import { checkSafeMargin } from './check-safe-margin.js';
import { checkSuspiciousSize } from './check-suspicious-size.js';
import { checkToolsOnPrint } from './check-tools-on-print.js';
import { checkTurnAxis } from './check-turn-axis.js';
import { checkWhite } from './check-white.js';

/** Every check, group by group. */
const CHECKS: readonly Check[] = [
  // Lines
  checkOpenOutline,
  checkDoubledLines,
  checkCreaseEnds,
  checkCreaseDistance,
  checkCreaseGrain,
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
