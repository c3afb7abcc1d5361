// Where a watcher's work comes from or goes to, where that is not its own scan.
import type { Delivery } from './scan-in.js';

/** A job out of a queue: names below `in/`, and what says that nothing more comes of it here. */
export interface QueuedJob {
  readonly from: readonly Buffer[];
  readonly settle: () => void;
}

/** A queue, from one of its two ends. */
export interface JobFeed {
  /** Puts what was found into the queue; null on the side of the workers. */
  readonly offer: ((found: readonly { readonly delivery: Delivery; readonly sha256: string }[]) => void) | null;
  /** What came out of the queue since; null on the side of the watcher. */
  readonly take: (() => readonly QueuedJob[]) | null;
  readonly close: () => Promise<void>;
}
