// JSON to a complete ticket, or every fault at once.
import { finding } from '../model/finding.js';
import { ROLES, type Role } from '../model/pass.js';
import type { PassRequest, Rule, Ticket } from '../model/ticket.js';
import { PinbarError } from '../model/trouble.js';
import { checkTicket, type TicketFault } from './check-ticket.js';
import { DEFAULT_TICKET } from './default-ticket.js';
import { nearestWord } from './nearest-word.js';

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const position = /position (\d+)/.exec(reason)?.[1];
    const before = position === undefined ? null : text.slice(0, Number(position)).split('\n');
    const place = before === null ? {} : { line: before.length, column: before.at(-1)!.length + 1 };
    const where = before === null ? '' : ` (line ${place.line}, column ${place.column})`;
    throw new PinbarError(
      'ticket/not-json',
      {
        message: `The ticket is not JSON${where}: ${reason}`,
        remedy: 'Mend the comma, quote or bracket there.',
        place,
      },
      [],
      error,
    );
  }
}

/** A copy without prototype tricks, cut at a depth no ticket has. */
function throwFaults(faults: readonly TicketFault[]): never {
  const texts = faults.map((fault) => ({
    message: fault.message,
    remedy: fault.remedy,
    data: { path: fault.path },
  }));
  const before = texts.slice(0, -1).map((text) => finding('ticket/wrong', text));
  throw new PinbarError('ticket/wrong', texts.at(-1)!, before);
}

type Loose = Partial<Omit<Ticket, 'marks' | 'passes' | 'rules'>> & {
  readonly marks?: Partial<Ticket['marks']>;
  readonly passes?: readonly PassRequest[];
  readonly rules?: readonly Rule[];
};

/** What the shape alone cannot say: rules name passes that exist, passes have names of their own, marks name passes. */
function checkMeaning(ticket: Loose): readonly TicketFault[] {
  const faults: TicketFault[] = [];
  const names = (ticket.passes ?? []).map((pass) => pass.name);
  names.forEach((name, i) => {
    if (names.indexOf(name) !== i) {
      faults.push({
        path: `passes[${i}].name`,
        message: `Two passes are called "${name}".`,
        remedy: 'Give each a name of its own.',
      });
    }
  });
  (ticket.rules ?? []).forEach((rule, i) => {
    faults.push(...checkRule(rule, `rules[${i}]`, names));
  });
  return faults;
}

const CONDITIONS = ['layer', 'stroke', 'fill', 'widthMm', 'dashed', 'class', 'id', 'element', 'rest'] as const;

/** What is wrong with one rule beyond its shape. */
export function checkRule(rule: Rule, path: string, names: readonly string[]): readonly TicketFault[] {
  const faults: TicketFault[] = [];
  const known = [...names, ...ROLES];
  if (!known.includes(rule.pass)) {
    const near = nearestWord(rule.pass, known);
    faults.push({
      path: `${path}.pass`,
      message: `${path}.pass is "${rule.pass}", which is neither a pass of the ticket nor a role.`,
      remedy: near === null ? `Roles are: ${ROLES.join(', ')}.` : `Did you mean "${near}"?`,
    });
  }
  if (CONDITIONS.every((key) => rule[key] === undefined || rule[key] === false) && rule.dashed !== false) {
    faults.push({
      path,
      message: `${path} says no condition, so it would take nothing.`,
      remedy: `Add one of: ${CONDITIONS.join(', ')}.`,
    });
  }
  return faults;
}

/**
 * Reads a ticket.
 *
 * @param value - JSON text, or the parsed object.
 * @returns The ticket with every default filled in.
 * @throws PinbarError `ticket/not-json`, or `ticket/wrong` with one finding per fault.
 */
export function readTicket(value: unknown): Ticket {
  const parsed = typeof value === 'string' ? parseJson(value) : value;
  const faults = checkTicket(parsed);
  if (faults.length > 0) throwFaults(faults);
  const { pinbar: _, $schema: __, ...loose } = parsed as Loose & { readonly pinbar: 1; readonly $schema?: string };
  const meaning = checkMeaning(loose);
  if (meaning.length > 0) throwFaults(meaning);
  return { ...DEFAULT_TICKET, ...loose, marks: { ...DEFAULT_TICKET.marks, ...loose.marks } };
}

/** Whether a word is a role. */
export function isRole(word: string): word is Role {
  return (ROLES as readonly string[]).includes(word);
}
