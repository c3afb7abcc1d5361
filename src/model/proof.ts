// What the judges saw.
import type { Finding } from './finding.js';

/** The verdict of one judge. */
export interface Judgement {
  readonly judge: 'read-back' | 'witness';
  /** What it looked at, where that is not the passes as they were split: `sheets` of copies. */
  readonly of?: 'sheets';
  readonly looked: boolean;
  /** Why it did not look, or ''. */
  readonly why: string;
  readonly shapesJudged: number;
  /** Greatest distance between a box in the source and in a sheet, mm. */
  readonly greatestDeviationMm: number;
  /** The shape it belongs to, or ''. */
  readonly greatestDeviationAt: string;
  readonly findings: readonly Finding[];
}

/** An extent in mm from the top left of the artboard. */
export interface ExtentMm {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is known of one pass after the files were read back. */
export interface PassProof {
  readonly pass: string;
  readonly shapes: number;
  /** What the artwork draws, without marks; null where it draws nothing. */
  readonly artExtentMm: ExtentMm | null;
  /** What the file draws, marks included. */
  readonly drawnExtentMm: ExtentMm | null;
}

/** Whether the files overlay, and who says so. */
export interface Proof {
  /** True when at least one judge looked and none found an error. */
  readonly inRegister: boolean;
  readonly judges: readonly Judgement[];
  readonly passes: readonly PassProof[];
  /** Whether all files draw the same extent. */
  readonly equalExtents: boolean;
}
