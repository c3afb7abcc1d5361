// How large a file may be that the watcher itself reads.
import { DEFAULT_LIMITS, type LimitChanges } from '../index.js';

/** Most bytes of art. What is larger is set aside unread, however much larger it is than memory. */
export function mostBytesOf(limits: LimitChanges): number {
  return limits.bytes ?? DEFAULT_LIMITS.bytes;
}
