// One step back, one step forward.

/** What was, what is, and what was taken back. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
}

/** Steps that are kept. */
const MOST_STEPS = 200;

/** A history of one state. */
export function beginHistory<T>(present: T): History<T> {
  return { past: [], present, future: [] };
}

/** A new state; what was taken back is gone. */
export function stepOn<T>({ past, present }: History<T>, next: T): History<T> {
  return { past: [...past, present].slice(-MOST_STEPS), present: next, future: [] };
}

/** The state before; itself where there is none. */
export function stepBack<T>(history: History<T>): History<T> {
  const { past, present, future } = history;
  return past.length === 0 ? history : { past: past.slice(0, -1), present: past.at(-1)!, future: [present, ...future] };
}

/** The state that was taken back; itself where there is none. */
export function stepForth<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  return history.future.length === 0 ? history : { past: [...history.past, history.present], present: next!, future };
}
