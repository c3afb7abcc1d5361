// Waits until something changes in the folder, or the time is up. Events only shorten the wait: what is there says the scan.
import { type FSWatcher, watch } from 'chokidar';
import type { Layout } from './layout.js';

/** A bell that the watcher waits for. */
export interface ChangeBell {
  readonly ring: () => void;
  /** Resolves at the next ring, or after some ms. */
  readonly wait: (ms: number) => Promise<void>;
  readonly close: () => void;
}

/** Rings that come in one go are one, ms. */
const GATHER_MS = 25;

/** Watches `in/` and `waiting/`; null where that cannot be, and then the scans do alone. */
function listenTo(layout: Layout, onChange: () => void): FSWatcher | null {
  const paths = [layout.in, layout.waiting].map(String);
  try {
    const watcher = watch(paths, { ignoreInitial: true, followSymlinks: false, depth: 8 });
    watcher.on('all', onChange);
    // Too many watches, a share without events: no reason to stop.
    watcher.on('error', () => undefined);
    return watcher;
  } catch {
    return null;
  }
}

/** Hangs up a bell that changes, jobs and the order to stop ring. */
export function hangBell(options: { readonly pollOnly: boolean }, layout: Layout, signal: AbortSignal): ChangeBell {
  let rung = false;
  let wake: (() => void) | null = null;
  const ring = (): void => {
    rung = true;
    wake?.();
  };
  const watcher = options.pollOnly ? null : listenTo(layout, ring);
  signal.addEventListener('abort', ring);
  const wait = async (ms: number): Promise<void> => {
    if (!rung) {
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, ms);
        wake = () => {
          clearTimeout(timer);
          // Short, so that many changes at once are looked at together.
          setTimeout(resolve, signal.aborted ? 0 : GATHER_MS);
        };
      });
    }
    wake = null;
    rung = false;
  };
  return {
    ring,
    wait,
    close: () => {
      signal.removeEventListener('abort', ring);
      void watcher?.close();
    },
  };
}
