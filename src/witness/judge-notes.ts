// What the second judge writes down, bounded.
import { type Finding, finding, type Place } from '../model/finding.js';
import type { WitnessElement } from './read-tree.js';

/** Most findings listed for one file; the rest is counted. */
export const LISTED_FINDINGS = 100;

/** Findings about one file. */
export interface JudgeNotes {
  readonly file: string;
  readonly findings: Finding[];
  /** How many were found, listed or not. */
  count: number;
}

/** An empty page. */
export function openNotes(file: string): JudgeNotes {
  return { file, findings: [], count: 0 };
}

/** An element as a person would point at it. */
export function describeElement(element: WitnessElement): string {
  return element.id === ''
    ? `${element.local} (element ${element.ordinal + 1} of the file)`
    : `${element.local} "${element.id}"`;
}

/** Where an element stands. */
export function placeOfElement(file: string, element: WitnessElement | null): Place {
  if (element === null) return { file };
  return element.id === '' ? { file, element: element.local } : { file, element: element.local, id: element.id };
}

/** Writes one difference down; `text` goes on after the element's description. */
export function noteDifference(notes: JudgeNotes, element: WitnessElement | null, text: string): void {
  notes.count += 1;
  if (notes.findings.length >= LISTED_FINDINGS) return;
  const subject = element === null ? notes.file : `${notes.file}: ${describeElement(element)}`;
  notes.findings.push(
    finding('witness/disagrees', {
      message: `${subject} ${text}.`,
      remedy: 'Do not run these files; report the artwork to the makers of pinbar.',
      place: placeOfElement(notes.file, element),
    }),
  );
}

/** The findings, with a last one that says how many more there are. */
export function closeNotes(notes: JudgeNotes): readonly Finding[] {
  const more = notes.count - notes.findings.length;
  if (more <= 0) return notes.findings;
  const rest = finding('witness/disagrees', {
    message: `${notes.file}: ${more} more differences are not listed.`,
    remedy: 'Look at the ones listed first.',
    place: { file: notes.file },
    data: { count: notes.count },
  });
  return [...notes.findings, rest];
}

/** A file that the second judge cannot read. */
export function sayUnreadable(file: string, fault: string): Finding {
  return finding('witness/unreadable', {
    message: `${file}: the second judge cannot read it: ${fault}.`,
    remedy: 'Check the file in the program that made it; a file beyond the bounds can go without the second judge.',
    place: { file },
  });
}
