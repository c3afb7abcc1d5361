// Order and ties that a hand on the page asks for, pass by pass.
import { describe, expect, it } from 'vitest';
import type { Pass } from '../../../src/model/pass.js';
import type { Ticket } from '../../../src/model/ticket.js';
import {
  beginTies,
  findLineOrder,
  findTies,
  isOrdered,
  setLineOrder,
  setOrdered,
  setOrigin,
  setTies,
  toNames,
} from '../../../src/page/edit-lines.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';
import { writeTicket } from '../../../src/ticket/write-ticket.js';

const PASSES: readonly Pass[] = [
  { order: 1, name: 'crease', role: 'creasing' },
  { order: 2, name: 'print', role: 'print' },
  { order: 3, name: 'holes', role: 'cutting' },
  { order: 4, name: 'edge', role: 'cutting' },
];
const [CREASE, , HOLES, EDGE] = PASSES as readonly [Pass, Pass, Pass, Pass];

const TICKET: Ticket = { ...DEFAULT_TICKET, passes: PASSES.map(({ name, role }) => ({ name, role })) };

/** Read as the command line would. */
function reread(ticket: Ticket): Ticket {
  return readTicket(JSON.parse(JSON.stringify(writeTicket(ticket))));
}

function ordered(ticket: Ticket): readonly string[] {
  return PASSES.filter((pass) => isOrdered(ticket, pass)).map(({ name }) => name);
}

describe('the order', () => {
  it('is that of the drawing until it is asked for, and again when it is taken out', () => {
    expect(findLineOrder(TICKET)).toBe('drawn');
    const restarted = setLineOrder(TICKET, 'restarted');
    expect(findLineOrder(reread(restarted))).toBe('restarted');
    const moved = setOrigin(restarted, 'bottom-left');
    const short = setLineOrder(moved, 'short');
    expect(reread(short).sequence).toEqual({ passes: [], origin: 'bottom-left', restartContours: false });
    expect(setLineOrder(short, 'drawn')).toEqual(TICKET);
    expect(setOrigin(TICKET, 'top-right')).toBe(TICKET);
  });

  it('is left to some passes', () => {
    const all = setLineOrder(TICKET, 'short');
    const some = setOrdered(all, PASSES, HOLES, false);
    expect(some.sequence!.passes).toEqual(['crease', 'edge']);
    expect(ordered(reread(some))).toEqual(['crease', 'edge']);
    expect(setOrdered(some, PASSES, HOLES, true)).toEqual(all);
    const none = [CREASE, EDGE].reduce((ticket, pass) => setOrdered(ticket, PASSES, pass, false), some);
    expect(none).toEqual(TICKET);
  });

  it('that names a role is that of its passes', () => {
    const byRole = {
      ...TICKET,
      sequence: { passes: ['cutting'], origin: 'top-left', restartContours: false },
    } as const;
    expect(ordered(byRole)).toEqual(['holes', 'edge']);
    expect(ordered(setOrdered(byRole, PASSES, EDGE, false))).toEqual(['holes']);
  });
});

describe('ties', () => {
  it('are asked of a pass, changed and taken out, and those of others stay', () => {
    const hold = setTies(TICKET, PASSES, { pass: EDGE, request: beginTies(EDGE, 'hold') });
    const both = setTies(hold, PASSES, { pass: CREASE, request: beginTies(CREASE, 'pattern') });
    expect(reread(both)).toEqual(both);
    expect(findTies(both, EDGE)).toEqual(beginTies(EDGE, 'hold'));
    const changed = setTies(both, PASSES, { pass: CREASE, request: { ...beginTies(CREASE, 'pattern'), cutMm: 4 } });
    expect(changed.ties).toHaveLength(2);
    expect(findTies(changed, CREASE)!.cutMm).toBe(4);
    const one = setTies(changed, PASSES, { pass: EDGE, request: null });
    expect(findTies(one, EDGE)).toBe(null);
    expect(setTies(one, PASSES, { pass: CREASE, request: null })).toEqual(TICKET);
  });

  it('that a role asked for stay on its other pass', () => {
    const byRole = { ...TICKET, ties: [{ ...beginTies(EDGE, 'hold'), pass: 'cutting', freeMm: 80 }] };
    expect(findTies(byRole, HOLES)!.freeMm).toBe(80);
    const without = setTies(byRole, PASSES, { pass: EDGE, request: null });
    expect(findTies(without, EDGE)).toBe(null);
    expect(findTies(without, HOLES)).toMatchObject({ pass: 'holes', freeMm: 80 });
  });
});

it('back at the names of the layers, a ticket asks nothing of passes that are gone', () => {
  const ordered = setOrdered(setLineOrder(TICKET, 'short'), PASSES, EDGE, false);
  const tied = [CREASE, HOLES].reduce(
    (ticket, pass) => setTies(ticket, PASSES, { pass, request: beginTies(pass, 'hold') }),
    ordered,
  );
  const names = toNames({ ...tied, rules: [{ pass: 'edge', layer: 'Rim' }] });
  expect(names.sequence!.passes).toEqual(['crease']);
  expect(names.ties!.map(({ pass }) => pass)).toEqual(['crease']);
  expect(reread(names)).toEqual(names);
  const gone = setTies(setOrdered(ordered, PASSES, CREASE, false), PASSES, {
    pass: HOLES,
    request: beginTies(HOLES, 'hold'),
  });
  expect(toNames(gone)).toEqual(DEFAULT_TICKET);
});
