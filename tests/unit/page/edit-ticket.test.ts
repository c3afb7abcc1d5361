// Moves of layers, lines and passes, judged by where the shapes then go.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import type { Ticket } from '../../../src/model/ticket.js';
import { type Moved, moveRun, moveTo, spellSuggestions, type Target } from '../../../src/page/edit-ticket.js';
import { inspect, split } from '../../../src/pipeline.js';
import { DEFAULT_TICKET } from '../../../src/ticket/default-ticket.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';
import { writeTicket } from '../../../src/ticket/write-ticket.js';

const LINE = 'fill="none" stroke-width="0.3"';
const ART = encodeUtf8(`<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
<g id="Print"><rect id="ground" x="30" y="30" width="40" height="20" fill="#2f6f5e"/>
<g id="Motif"><rect id="motif" x="35" y="35" width="5" height="5" fill="#c9a227"/></g></g>
<g id="Cut"><rect id="edge" x="32" y="32" width="36" height="16" ${LINE} stroke="#c2185b"/>
<path id="fold" d="M50 32V48" ${LINE} stroke="#1d4ed8"/></g>
<path id="note" d="M40 60H60" ${LINE} stroke="#1d4ed8"/>
</svg>`);

/** Where each shape goes: the name of its pass, or why it is in none. */
async function sortBy(ticket: Ticket): Promise<Readonly<Record<string, string>>> {
  // Written and read, as the command line would.
  const read = readTicket(JSON.parse(JSON.stringify(writeTicket(ticket))));
  const { artwork, assignment } = await split(ART, read, { skipChecks: true });
  const found = artwork.shapes.map(({ index, id }): readonly [string, string] => {
    const placed = assignment.placements.find(({ shape }) => shape === index);
    const cause = assignment.exclusions.find(({ shape }) => shape === index)?.cause;
    return [id, placed === undefined ? `(${cause})` : assignment.passes[placed.pass]!.name];
  });
  return Object.fromEntries(found);
}

async function move(steps: readonly (readonly [Moved, Target])[], first = DEFAULT_TICKET): Promise<Ticket> {
  const inspection = await inspect(ART);
  return steps.reduce((ticket, [moved, target]) => moveTo(ticket, inspection, moved, target), first);
}

const BLUE: Moved = { kind: 'stroke', colour: '#1d4ed8' };
const layer = (path: string): Moved => ({ kind: 'layer', path });
const role = (word: Target['role']): Target => ({ role: word, name: null });

describe('a move', () => {
  const untouched = { ground: 'print', motif: 'print', edge: 'cut', fold: 'cut', note: '(open)' };

  it('of nothing leaves all to the names', async () => {
    expect(await sortBy(DEFAULT_TICKET)).toEqual(untouched);
    const spelled = { ...DEFAULT_TICKET, rules: spellSuggestions(await inspect(ART)) };
    expect(spelled.rules).toEqual([
      { pass: 'print', layer: 'Print' },
      { pass: 'cutting', layer: 'Cut' },
    ]);
    expect(await sortBy(spelled)).toEqual(untouched);
  });

  it('of a line takes all of its colour, in layers and outside, and nothing else', async () => {
    const ticket = await move([[BLUE, role('creasing')]]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, fold: 'crease', note: 'crease' });
  });

  it('of a line again takes the place of the first', async () => {
    const ticket = await move([
      [BLUE, role('creasing')],
      [BLUE, role('perforating')],
    ]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, fold: 'perforate', note: 'perforate' });
    expect(ticket.rules).toHaveLength(4);
  });

  it('of a layer takes what is in it', async () => {
    const ticket = await move([[layer('Print'), role('varnish')]]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, ground: 'varnish', motif: 'varnish' });
  });

  it('of a layer within leaves the one around it', async () => {
    const ticket = await move([[layer('Print/Motif'), role('varnish')]]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, motif: 'varnish' });
  });

  it('of a layer takes back what was moved within it before', async () => {
    const ticket = await move([
      [layer('Print/Motif'), role('varnish')],
      [layer('Print'), role('print')],
    ]);
    expect(await sortBy(ticket)).toEqual(untouched);
  });

  it('of what stands in no layer', async () => {
    const ticket = await move([[{ kind: 'rest' }, role('cutting')]]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, note: 'cut' });
  });

  it('out of the job', async () => {
    const ticket = await move([[BLUE, role('ignore')]]);
    expect(await sortBy(ticket)).toEqual({ ...untouched, fold: '(ignored)', note: '(ignored)' });
  });

  it('to a pass of the ticket by its name, and to one that is not there yet', async () => {
    const named = readTicket({
      pinbar: 1,
      passes: [
        { name: 'ink', role: 'print' },
        { name: 'knife', role: 'cutting' },
      ],
      rules: [
        { pass: 'ink', layer: 'Print' },
        { pass: 'knife', layer: 'Cut' },
      ],
    });
    const ticket = await move([[BLUE, role('creasing')]], named);
    expect(ticket.passes.map(({ name }) => name)).toEqual(['crease', 'ink', 'knife']);
    expect(await sortBy(ticket)).toEqual({
      ground: 'ink',
      motif: 'ink',
      edge: 'knife',
      fold: 'crease',
      note: 'crease',
    });
    const other = await move([[BLUE, { role: 'cutting', name: 'knife' }]], named);
    expect((await sortBy(other)).note).toBe('knife');
  });
});

describe('a pass', () => {
  const passes = [
    { order: 1, name: 'crease', role: 'creasing' },
    { order: 2, name: 'print', role: 'print' },
    { order: 3, name: 'cut', role: 'cutting' },
  ] as const;

  it('runs earlier or later, and keeps what the ticket says of it', () => {
    const ticket = { ...DEFAULT_TICKET, passes: [{ name: 'print', role: 'print', registersTo: 'edge' }] } as Ticket;
    const moved = moveRun(ticket, passes, 1, -1);
    expect(moved.passes.map(({ name }) => name)).toEqual(['print', 'crease', 'cut']);
    expect(moved.passes[0]!.registersTo).toBe('edge');
    expect(moveRun(ticket, passes, 2, 1)).toBe(ticket);
    expect(moveRun(ticket, passes, 0, -1)).toBe(ticket);
  });
});
