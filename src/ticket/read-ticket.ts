// JSON to a complete ticket, or every fault at once.
import type { SheetRequest } from '../model/layout.js';
import type { SequenceRequest } from '../model/sequence.js';
import type { PassRequest, Rule, Ticket } from '../model/ticket.js';
import type { TieRequest } from '../model/ties.js';
import { checkPassNames, checkRules, checkTwice, type Placed } from './check-rules.js';
import { checkTicket, type TicketFault } from './check-ticket.js';
import { DEFAULT_SEQUENCE, DEFAULT_SHEET, DEFAULT_TICKET, DEFAULT_TIES } from './default-ticket.js';
import { parseJson } from './parse-json.js';
import { throwFaults } from './throw-faults.js';

type Loose = Partial<Omit<Ticket, 'marks' | 'checks' | 'sequence' | 'sheet' | 'ties' | 'passes' | 'rules'>> & {
  readonly marks?: Partial<Ticket['marks']>;
  readonly checks?: Partial<Ticket['checks']>;
  readonly sequence?: Partial<SequenceRequest>;
  readonly ties?: readonly (Partial<TieRequest> & Pick<TieRequest, 'pass' | 'mode'>)[];
  readonly sheet?: Pick<SheetRequest, 'widthMm' | 'heightMm'> & Partial<SheetRequest>;
  readonly passes?: readonly PassRequest[];
  readonly rules?: readonly Rule[];
};

function member(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null ? (value as { readonly [key: string]: unknown })[key] : undefined;
}

/** Items of a list by their places; none where it is no list. */
function listItems(list: unknown): readonly Placed<unknown>[] {
  return Array.isArray(list) ? list.map((item, at) => ({ at, item: item as unknown })) : [];
}

function hasName(placed: Placed<unknown>): placed is Placed<PassRequest> {
  return typeof member(placed.item, 'name') === 'string';
}

function isText(placed: Placed<unknown>): placed is Placed<string> {
  return typeof placed.item === 'string';
}

/** Faults of meaning in those items that have no fault of shape, so that one fault does not hide another. */
function checkMeaning(value: unknown, shape: readonly TicketFault[]): readonly TicketFault[] {
  const broken = new Set(shape.map((fault) => /^\w+(?:\[\d+\])?/.exec(fault.path)?.[0]));
  const rules = broken.has('rules') ? [] : listItems(member(value, 'rules'));
  const sound = rules.filter(({ at }) => !broken.has(`rules[${at}]`)) as readonly Placed<Rule>[];
  const passes = listItems(member(value, 'passes')).filter(hasName);
  const passesOf = (key: string): readonly Placed<string>[] =>
    broken.has(key) ? [] : listItems(member(member(value, key), 'passes')).filter(isText);
  const names = passes.map(({ item }) => item.name);
  const tied = listItems(member(value, 'ties')).flatMap(({ at, item }) => {
    const pass = member(item, 'pass');
    return typeof pass === 'string' && !broken.has(`ties[${at}]`) ? [{ at, item: pass }] : [];
  });
  return [
    ...checkRules(sound, passes),
    ...checkPassNames('ties', tied, names),
    ...checkTwice(tied),
    ...['marks', 'sequence'].flatMap((key) => checkPassNames(`${key}.passes`, passesOf(key), names)),
  ];
}

/**
 * Reads a ticket.
 *
 * @param value - JSON text, or the parsed object.
 * @returns The ticket with every default filled in; nothing in it is shared with `value`.
 * @throws PinbarError `ticket/not-json`, or `ticket/wrong` with one finding per fault.
 */
export function readTicket(value: unknown): Ticket {
  const parsed = typeof value === 'string' ? parseJson(value, { noun: 'ticket', code: 'ticket/not-json' }) : value;
  const shape = checkTicket(parsed);
  const faults = [...shape, ...checkMeaning(parsed, shape)];
  if (faults.length > 0) throwFaults('ticket/wrong', faults);
  const copy = JSON.parse(JSON.stringify(parsed)) as Loose & { readonly pinbar: 1; readonly $schema?: string };
  const { pinbar: _, $schema: __, sheet, sequence, ties, ...rest } = copy;
  return {
    ...DEFAULT_TICKET,
    ...rest,
    marks: { ...DEFAULT_TICKET.marks, ...rest.marks },
    checks: { ...DEFAULT_TICKET.checks, ...rest.checks },
    ...(sequence === undefined ? {} : { sequence: { ...DEFAULT_SEQUENCE, ...sequence } }),
    ...(ties === undefined ? {} : { ties: ties.map((tie) => ({ ...DEFAULT_TIES[tie.mode], ...tie })) }),
    ...(sheet === undefined ? {} : { sheet: { ...DEFAULT_SHEET, ...sheet } }),
  };
}
