// Collects findings so that one cause is said once, with a count.
import { type Finding, type FindingCode, type FindingText, finding, type Json, type Place } from '../model/finding.js';
import { placeOf } from '../source/locate.js';
import type { Source } from '../source/source.js';

/** What was met again and again. */
export interface Occurrence {
  readonly code: FindingCode;
  /** What tells causes apart: an id, a layer, a value. */
  readonly subject: string;
  /** Where it was met first. */
  readonly row: number;
  readonly layerPath: string | null;
  /** Further words, each once: font families. */
  readonly words: Set<string>;
  count: number;
}

/** Says an occurrence in words. `place` has line and column. */
export type Say = (occurrence: Occurrence, place: Place) => FindingText;

/** A collection of occurrences. */
export interface FindingLog {
  /** Notes an occurrence; the first of its code and subject gives the place. */
  note(code: FindingCode, subject: string, row: number, layerPath?: string | null): Occurrence;
  /** All findings, by first occurrence. */
  list(sayings: Partial<Record<FindingCode, Say>>): readonly Finding[];
}

/** Findings of one code that get a place of their own; further causes are counted in one more. */
const OWN_PLACES = 50;

/** A log for one file. */
export function createFindingLog(source: Source): FindingLog {
  const occurrences = new Map<string, Occurrence>();
  const causes = new Map<FindingCode, number>();
  return {
    note(code, subject, row, layerPath = null) {
      const key = `${code} ${subject}`;
      let occurrence = occurrences.get(key);
      if (occurrence === undefined) {
        const number = causes.get(code) ?? 0;
        if (number >= OWN_PLACES) occurrence = occurrences.get(`${code} and more`);
        if (occurrence === undefined) {
          causes.set(code, number + 1);
          const isMore = number >= OWN_PLACES;
          occurrence = { code, subject, row, layerPath, words: new Set(), count: 0 };
          occurrences.set(isMore ? `${code} and more` : key, occurrence);
        }
      }
      occurrence.count += 1;
      return occurrence;
    },
    list: (sayings) =>
      [...occurrences.values()].map((occurrence) => say(source, occurrence, sayings[occurrence.code]!)),
  };
}

function say(source: Source, occurrence: Occurrence, saying: Say): Finding {
  const layer = occurrence.layerPath === null ? {} : { layerPath: occurrence.layerPath };
  const place: Place = { ...placeOf(source, occurrence.row), ...layer };
  const text = saying(occurrence, place);
  const data: { readonly [key: string]: Json } = { count: occurrence.count, ...text.data };
  return finding(occurrence.code, { ...text, place, data });
}
