// A figure of the shop profile as the run sheet shows it, and a record of what is missing, untried or old.
import type { Entered } from '../model/profile.js';
import type { Figure } from '../model/run-sheet.js';

/** What was shown: each list in words, once each. */
export interface FigureLog {
  readonly missing: Set<string>;
  readonly untested: Set<string>;
  readonly oldNews: Set<string>;
}

/** A fresh record. */
export function createFigureLog(): FigureLog {
  return { missing: new Set(), untested: new Set(), oldNews: new Set() };
}

/** Where figures are looked up. */
export interface FigureScope {
  readonly log: FigureLog;
  /** Batch at the machine; null where figures do not hang on one. */
  readonly batch: string | null;
}

/**
 * Shows a figure and notes what is wrong with it.
 *
 * @param what - What it is, in words: `crease-wheel: speed`.
 * @param wanted - Whether it is missed where nobody entered it.
 */
export function showFigure<T>(
  scope: FigureScope,
  entered: Entered<T> | undefined,
  what: string,
  wanted: boolean = true,
): Figure<T> | null {
  const { log, batch } = scope;
  if (entered === undefined) {
    if (wanted) log.missing.add(what);
    return null;
  }
  const untested = entered.state === 'untested starting point';
  const oldNews = batch !== null && entered.batch !== batch;
  if (untested) log.untested.add(what);
  if (oldNews && !untested)
    log.oldNews.add(`${what} (${entered.batch === undefined ? 'no batch said' : `batch ${entered.batch}`})`);
  const { value, from, on, by } = entered;
  return { value, from, on, by, batch: entered.batch ?? null, untested, oldNews };
}
