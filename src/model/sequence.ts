// The order within a pass: what is asked for, and what came of it.
import type { Role } from './pass.js';

/** Corner of the artboard that the head starts from. */
export type Corner = 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right';

/** How the lines of a pass are to be put in order. */
export interface SequenceRequest {
  /** Names of passes; empty for all that run a tool along lines. */
  readonly passes: readonly string[];
  /** Where the head waits before the first line; it stays where the last one ends. */
  readonly origin: Corner;
  /** Whether lines may be written from another start point, or backwards. */
  readonly restartContours: boolean;
}

/** Elements that keep their place, and why. */
export interface Stayed {
  readonly why: string;
  readonly count: number;
}

/** One line as the head runs it: where it comes down, where it is lifted, px on the artboard. */
export interface ToolRun {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A thing that keeps its own order: a line, or all that a group holds. */
export interface WorkItem {
  /** In the order in which they are run. */
  readonly runs: readonly ToolRun[];
  /** Lines of a smaller number go first: creases before cuts. */
  readonly tier: number;
  /** Whether nothing may pass it. */
  readonly fixed: boolean;
}

/** What the order of a pass came to. Lengths in mm. */
export interface SequenceReport {
  readonly pass: string;
  readonly role: Role;
  readonly file: string;
  /** Length of all lines that the tool runs. */
  readonly lineMm: number;
  /** Way of the lifted tool: from the origin to the first line, and from each to the next. */
  readonly travelBeforeMm: number;
  readonly travelAfterMm: number;
  /** How often the tool is lifted, the last time included. */
  readonly liftsBefore: number;
  readonly liftsAfter: number;
  /** Elements that stand elsewhere than in the file's order. */
  readonly moved: number;
  /** Elements that are written from another start point, or backwards. */
  readonly restarted: number;
  readonly stayed: readonly Stayed[];
}
