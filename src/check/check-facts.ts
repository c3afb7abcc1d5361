// What every check gets, and what a check is.
import type { Artwork } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import type { MarkPlan } from '../model/marks.js';
import type { Assignment } from '../model/pass.js';
import type { Ticket } from '../model/ticket.js';

/** The artwork as it would be split, the job's numbers (`ticket.checks`), and what the road reads of the source. */
export interface CheckFacts {
  readonly artwork: Artwork;
  readonly assignment: Assignment;
  readonly ticket: Ticket;
  /** The marks that the sheets get; null where they get none. */
  readonly marks: MarkPlan | null;
}

/** One question to the artwork. Findings carry the measured and the allowed value, a place in mm, and what to do. */
export type Check = (facts: CheckFacts) => readonly Finding[];
