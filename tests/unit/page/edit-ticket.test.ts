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
async function sortBy(ticket: Ticket, art = ART): Promise<Readonly<Record<string, string>>> {
  // Written and read, as the command line would.
  const read = readTicket(JSON.parse(JSON.stringify(writeTicket(ticket))));
  const { artwork, assignment } = await split(art, read, { skipChecks: true });
  const found = artwork.shapes.map(({ index, id }): readonly [string, string] => {
    const placed = assignment.placements.find(({ shape }) => shape === index);
    const cause = assignment.exclusions.find(({ shape }) => shape === index)?.cause;
    return [id, placed === undefined ? `(${cause})` : assignment.passes[placed.pass]!.name];
  });
  return Object.fromEntries(found);
}

async function move(steps: readonly (readonly [Moved, Target])[], first = DEFAULT_TICKET, art = ART): Promise<Ticket> {
  const inspection = await inspect(art);
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
      { pass: 'print', layer: '/Print' },
      { pass: 'cutting', layer: '/Cut' },
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

describe('a move among layers that are hard to tell apart', () => {
  // Outermost and nested of one name, two of one name side by side, one whose name is the path of another, one that differs in case.
  const names = { a: 'Cut', b: 'Art/Cut', c: 'Cut (2)', d: 'Art/Cut (2)', e: 'Art/cut', f: 'Art/C*' };
  const rect = (id: string, at: number): string =>
    `<rect id="${id}" x="${at}" y="10" width="4" height="4" ${LINE} stroke="#c2185b"/>`;
  const group = (label: string, inner: string): string => `<g i:groupmode="layer" i:label="${label}">${inner}</g>`;
  const art =
    encodeUtf8(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:i="urn:i" width="90mm" height="30mm" viewBox="0 0 90 30">
${group('Cut', rect('a', 5))}${group('Cut', rect('c', 15))}
${group('Art', group('Cut', rect('b', 25)) + group('Cut', rect('d', 35)) + group('cut', rect('e', 45)) + group('C*', rect('f', 55)))}
${rect('loose', 65)}</svg>`);
  const all = { a: 'cut', b: 'cut', c: 'cut', d: 'cut', e: 'cut', f: 'print', loose: '(open)' };

  it('has the layers that it says', async () => {
    const { layers } = await inspect(art);
    expect(layers.map(({ path }) => path)).toEqual([
      'Cut',
      'Cut (2)',
      'Art',
      'Art/Cut',
      'Art/Cut (2)',
      'Art/cut',
      'Art/C*',
    ]);
    expect(await sortBy(DEFAULT_TICKET, art)).toEqual(all);
  });

  it.each(Object.entries(names))('takes %s alone, from names and from rules', async (id, path) => {
    const moved = await move([[layer(path), role('varnish')]], DEFAULT_TICKET, art);
    expect(await sortBy(moved, art)).toEqual({ ...all, [id]: 'varnish' });
    const rules = [
      { pass: 'cutting', layer: '*cut*' },
      { pass: 'print', layer: 'art' },
    ];
    const byRules = readTicket({ pinbar: 1, rules });
    expect(await sortBy(byRules, art)).toEqual(all);
    const again = await move([[layer(path), role('varnish')]], byRules, art);
    expect(await sortBy(again, art)).toEqual({ ...all, [id]: 'varnish' });
    const back = await move(
      [[layer(path), { role: all[id as 'a'] === 'cut' ? 'cutting' : 'print', name: null }]],
      again,
      art,
    );
    expect(await sortBy(back, art)).toEqual(all);
  });

  it('takes the layer around with all in it, and each in it again', async () => {
    const around = await move([[layer('Art'), role('varnish')]], DEFAULT_TICKET, art);
    const taken = { ...all, b: 'varnish', d: 'varnish', e: 'varnish', f: 'varnish' };
    expect(await sortBy(around, art)).toEqual(taken);
    const inner = await move([[layer('Art/Cut (2)'), role('perforating')]], around, art);
    expect(await sortBy(inner, art)).toEqual({ ...taken, d: 'perforate' });
  });

  it('takes what stands in no layer and nothing else', async () => {
    const half = readTicket({ pinbar: 1, rules: [{ pass: 'cutting', layer: '/Cut' }] });
    const open = { a: 'cut', b: '(open)', c: '(open)', d: '(open)', e: '(open)', f: '(open)', loose: '(open)' };
    expect(await sortBy(half, art)).toEqual(open);
    const loose = await move([[{ kind: 'rest' }, role('creasing')]], half, art);
    expect(await sortBy(loose, art)).toEqual({ ...open, loose: 'crease' });
  });

  it('takes lines of a colour wherever they stand, after layers were moved', async () => {
    const red: Moved = { kind: 'stroke', colour: '#c2185b' };
    const ticket = await move(
      [
        [layer('Cut (2)'), role('varnish')],
        [red, role('creasing')],
      ],
      DEFAULT_TICKET,
      art,
    );
    expect(new Set(Object.values(await sortBy(ticket, art)))).toEqual(new Set(['crease']));
    const last = await move([[layer('Art/C*'), role('print')]], ticket, art);
    expect(await sortBy(last, art)).toMatchObject({ a: 'crease', e: 'crease', f: 'print' });
  });
});

describe('a move of a layer', () => {
  it('overrules what rules say of the paint of its lines, there and nowhere else', async () => {
    const byPaint = readTicket({
      pinbar: 1,
      rules: [
        { pass: 'cutting', stroke: '#C2185B' },
        { pass: 'creasing', stroke: '#1d4ed8' },
        { pass: 'print', fill: 'any' },
      ],
    });
    expect(await sortBy(byPaint)).toEqual({
      ground: 'print',
      motif: 'print',
      edge: 'cut',
      fold: 'crease',
      note: 'crease',
    });
    const ticket = await move([[layer('Cut'), role('perforating')]], byPaint);
    expect(await sortBy(ticket)).toEqual({
      ground: 'print',
      motif: 'print',
      edge: 'perforate',
      fold: 'perforate',
      note: 'crease',
    });
    const motif = await move([[layer('Print/Motif'), role('varnish')]], ticket);
    expect((await sortBy(motif)).motif).toBe('varnish');
    // No rule for lines where there are none.
    expect(motif.rules.filter((rule) => rule.layer === '/Print/Motif').map(({ stroke }) => stroke)).toEqual([
      undefined,
      undefined,
    ]);
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
