// What a hand on the page changes in the ticket about the lines of tools: their order in a pass, and their ties.
import { isToolpath, namePass, namesPass, type Pass, ROLES } from '../model/pass.js';
import type { SequenceRequest } from '../model/sequence.js';
import type { Ticket } from '../model/ticket.js';
import { findTieRequest, type TieRequest } from '../model/ties.js';
import { DEFAULT_SEQUENCE, DEFAULT_TIES } from '../ticket/default-ticket.js';

/** How the lines of tools follow each other: as drawn, by a short way, or that with other start points. */
export type LineOrder = 'drawn' | 'short' | 'restarted';

/** How the ticket has lines put in order. */
export function findLineOrder({ sequence }: Ticket): LineOrder {
  if (sequence === undefined) return 'drawn';
  return sequence.restartContours ? 'restarted' : 'short';
}

/** The ticket with another order of lines. */
export function setLineOrder({ sequence, ...ticket }: Ticket, order: LineOrder): Ticket {
  if (order === 'drawn') return ticket;
  return { ...ticket, sequence: { ...(sequence ?? DEFAULT_SEQUENCE), restartContours: order === 'restarted' } };
}

/** Whether the lines of a pass are put in order. */
export function isOrdered({ sequence }: Ticket, pass: Pass): boolean {
  return sequence !== undefined && namesPass(sequence.passes, pass);
}

/** The ticket that puts the lines of a pass in order, or leaves them as drawn. */
export function setOrdered(ticket: Ticket, passes: readonly Pass[], pass: Pass, wanted: boolean): Ticket {
  const { sequence, ...rest } = ticket;
  if (sequence === undefined) return ticket;
  const tools = passes.filter(({ role }) => isToolpath(role));
  const kept = tools.filter((one) => (one.name === pass.name ? wanted : isOrdered(ticket, one)));
  if (kept.length === 0) return rest;
  const names = kept.length === tools.length ? [] : kept.map(({ name }) => name);
  return { ...rest, sequence: { ...sequence, passes: names } };
}

/** The ticket whose head waits in another corner before the first line. */
export function setOrigin(ticket: Ticket, origin: SequenceRequest['origin']): Ticket {
  return ticket.sequence === undefined ? ticket : { ...ticket, sequence: { ...ticket.sequence, origin } };
}

/** The ties that the ticket asks of a pass; null for none. */
export function findTies({ ties = [] }: Ticket, pass: Pass): TieRequest | null {
  return findTieRequest(ties, pass) ?? null;
}

/** Ties to begin with. */
export function beginTies(pass: Pass, mode: TieRequest['mode']): TieRequest {
  return { pass: pass.name, mode, ...DEFAULT_TIES[mode] };
}

/** The ticket that asks these ties of a pass; those of all other passes stay, also where a request named them by their role. */
export function setTies(
  ticket: Ticket,
  passes: readonly Pass[],
  { pass, request }: { readonly pass: Pass; readonly request: TieRequest | null },
): Ticket {
  const { ties = [], ...rest } = ticket;
  const others = ties.flatMap((one) => {
    if (!namesPass([one.pass], pass)) return [one];
    const alike =
      one.pass === pass.name ? [] : passes.filter(({ name, role }) => role === one.pass && name !== pass.name);
    return alike.map(({ name }) => ({ ...one, pass: name }));
  });
  const all = request === null ? others : [...others, { ...request, pass: pass.name }];
  return all.length === 0 ? rest : { ...rest, ties: all };
}

/** The ticket without passes and rules of its own, and without what it asked of passes that are then gone. */
export function toNames({ sequence, ties = [], ...rest }: Ticket): Ticket {
  const stays = (word: string): boolean => ROLES.some((role) => word === role || word === namePass(role));
  const ordered = sequence?.passes.filter(stays) ?? [];
  const isOrderKept = sequence !== undefined && (sequence.passes.length === 0 || ordered.length > 0);
  const kept = ties.filter(({ pass }) => stays(pass));
  return {
    ...rest,
    passes: [],
    rules: [],
    ...(isOrderKept ? { sequence: { ...sequence, passes: ordered } } : {}),
    ...(kept.length === 0 ? {} : { ties: kept }),
  };
}
