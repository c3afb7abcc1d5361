// The browser's own place for texts.
import type { TextStore } from './keep-ticket.js';

/** A browser that refuses to keep anything may do so as soon as the place is named. */
function findStore(): TextStore {
  try {
    return localStorage;
  } catch {
    return { getItem: () => null, setItem: () => undefined };
  }
}

/** The browser's own place, or one that forgets. */
export const BROWSER_STORE: TextStore = findStore();
