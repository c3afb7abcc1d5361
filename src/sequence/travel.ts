// The way of the lifted tool.
import type { ToolRun, WorkItem } from '../model/sequence.js';

/** Ends nearer than this are one place: the tool goes on without being lifted. @unit px */
const SAME_PX = 0.001;

/** A place on the artboard, px. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where the tool comes down first on an item; null where it has no runs. */
export function entryOf(item: WorkItem): Spot | null {
  const first = item.runs[0];
  return first === undefined ? null : { x: first.x0, y: first.y0 };
}

/** Where the tool leaves an item; null where it has no runs. */
export function exitOf(item: WorkItem): Spot | null {
  const last = item.runs.at(-1);
  return last === undefined ? null : { x: last.x1, y: last.y1 };
}

/** Travel and lifts of runs one after the other, from a place. Lengths in px. */
export interface Travel {
  readonly travel: number;
  readonly lifts: number;
}

/** What running in this order takes. */
export function measureTravel(runs: readonly ToolRun[], from: Spot): Travel {
  let travel = 0;
  let lifts = 0;
  let { x, y } = from;
  for (const run of runs) {
    const step = Math.hypot(run.x0 - x, run.y0 - y);
    travel += step;
    if (lifts === 0 || step > SAME_PX) lifts += 1;
    x = run.x1;
    y = run.y1;
  }
  return { travel, lifts };
}
