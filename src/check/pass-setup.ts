// What the ticket says of each pass beyond its role: side, size, and what it registers to.
import { namesPass, type Pass, type Role, sideOf } from '../model/pass.js';
import type { PassRequest, Ticket } from '../model/ticket.js';
import type { CheckFacts } from './check-facts.js';
import { listOwnMarks } from './list-marks.js';

/** A pass of the job with what the ticket says of it. */
export interface PassSetup {
  readonly pass: Pass;
  /** Index into `Assignment.passes`. */
  readonly index: number;
  readonly side: 'front' | 'reverse';
  readonly request: PassRequest | null;
  /** Whether the sheet of the pass gets register marks. */
  readonly marked: boolean;
}

/** Roles that leave something on the board that a camera sees. */
const VISIBLE: ReadonlySet<Role> = new Set<Role>(['white', 'print', 'foil-stamping', 'cold-foil-stamping']);

/** Roles that lay something on the face of the board. */
const COATING: ReadonlySet<Role> = new Set<Role>([...VISIBLE, 'varnish']);

/** Whether a camera finds what a pass leaves on the board. */
export function isVisible(role: Role): boolean {
  return VISIBLE.has(role);
}

/** Whether a pass lays ink, varnish or foil on the board. */
export function isCoating(role: Role): boolean {
  return COATING.has(role);
}

/** Passes that hold marks which the designer drew. */
function listOwnMarked(facts: CheckFacts): ReadonlySet<number> {
  const own = new Set(listOwnMarks(facts).map(({ shape }) => shape!.index));
  return new Set(facts.assignment.placements.filter(({ shape }) => own.has(shape)).map(({ pass }) => pass));
}

function findRequest(pass: Pass, ticket: Ticket): PassRequest | null {
  return ticket.passes.find(({ name }) => name === pass.name) ?? null;
}

/** The passes in the order of the runs. */
export function listSetups(facts: CheckFacts): readonly PassSetup[] {
  const { artwork, assignment, ticket } = facts;
  const ownMarked = listOwnMarked(facts);
  const { wanted, passes: marked } = ticket.marks;
  return assignment.passes
    .map((pass, index): PassSetup => {
      const request = findRequest(pass, ticket);
      const side = sideOf(pass.role, request?.side);
      const gets = artwork.marks >= 0 || (wanted && namesPass(marked, pass));
      return { pass, index, side, request, marked: gets || ownMarked.has(index) };
    })
    .sort((a, b) => a.pass.order - b.pass.order);
}
