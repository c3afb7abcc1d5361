// Whose jobs may be taken over: those of dead watchers, of those who left, and of names that were said.
import { PinbarError } from '../index.js';
import { judgeLife, listRooms, type OwnerRecord } from './owner.js';
import type { Station } from './station.js';

/** A room that nobody works in any more. */
export interface LeftRoom {
  readonly home: Buffer;
  readonly name: string;
  /** Whether its watcher died, perhaps of a job; false where it left. */
  readonly died: boolean;
}

/** What may be taken besides what is surely dead. */
export interface TakeOverWords {
  /** Own name, where one was said: it brings back what the same name left on another machine. */
  readonly owner: string | null;
  readonly takeOver: readonly string[];
}

/** Rooms besides one's own. */
export interface RoomsSeen {
  /** Those whose jobs may be taken over. */
  readonly left: readonly LeftRoom[];
  /** How many there are besides those. */
  readonly others: number;
}

/** Looks at the rooms of others. */
export async function listLeftRooms(station: Station, self: OwnerRecord, words: TakeOverWords): Promise<RoomsSeen> {
  const left: LeftRoom[] = [];
  let others = 0;
  for (const { home, name, record } of listRooms(station.disk, station.layout, station.home)) {
    if (record === null) {
      left.push({ home, name, died: false });
      continue;
    }
    const life = await judgeLife(record, self, home);
    const said = record.owner === words.owner || words.takeOver.includes(record.owner);
    if (life === 'dead' || (life === 'unknown' && said)) left.push({ home, name, died: true });
    else others++;
  }
  return { left, others };
}

/**
 * Refuses a name that a living watcher has: after a crash nobody could tell whose jobs are whose.
 *
 * @throws PinbarError `use/wrong`.
 */
export async function refuseTwin(station: Station, self: OwnerRecord): Promise<void> {
  for (const { home, record } of listRooms(station.disk, station.layout, station.home)) {
    if (record === null || record.owner !== self.owner) continue;
    if ((await judgeLife(record, self, home)) !== 'alive') continue;
    throw new PinbarError('use/wrong', {
      message: `A watcher named "${self.owner}" is at work on this folder.`,
      remedy: 'Give this one another name with --owner, or none: on one machine watchers need no names.',
    });
  }
}
