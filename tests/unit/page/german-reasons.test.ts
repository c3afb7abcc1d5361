// Reasons in German: every one that the samples give.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { sayReason } from '../../../src/page/german-reasons.js';
import { inspect, split } from '../../../src/pipeline.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

const samples = readdirSync('samples').filter((name) => name.endsWith('.svg'));

/** Why anything of a sample goes where it goes, with and without its ticket. */
async function listReasons(name: string): Promise<readonly string[]> {
  const bytes = readFileSync(`samples/${name}`);
  const { layers, strokes } = await inspect(bytes);
  const suggested = [...layers, ...strokes].flatMap(({ suggestion }) =>
    suggestion === null ? [] : [suggestion.reason],
  );
  const ticket = name.replace('.svg', '.ticket.json');
  const tickets = [
    { pinbar: 1 },
    ...(readdirSync('samples').includes(ticket) ? [JSON.parse(readFileSync(`samples/${ticket}`, 'utf8'))] : []),
  ];
  const placed = await Promise.all(
    tickets.map(async (one) => {
      const { assignment } = await split(bytes, readTicket(one), { skipChecks: true, verify: false });
      return assignment.placements.map(({ reason }) => reason.text);
    }),
  );
  return [...new Set([...suggested, ...placed.flat()])];
}

it('knows every part of the reasons that the samples give; names stay as they are', async () => {
  const reasons = (await Promise.all(samples.map(listReasons))).flat();
  expect(reasons.length).toBeGreaterThan(15);
  const bare = (text: string): string => text.replace(/"[^"]*"|„[^“]*“/g, '');
  const english = /\b(?:the|it|stands|says|its|are|rule|rest|stroke|layer|fill|shapes|lines|without)\b/;
  expect(reasons.filter((text) => !english.test(bare(text)))).toEqual([]);
  expect(reasons.map(sayReason).filter((text) => english.test(bare(text)))).toEqual([]);
});

it.each([
  [
    'the name says "cut", and its shapes are lines without fill',
    'der Name sagt „cut“, und ihre Formen sind Linien ohne Fläche',
  ],
  [
    'the name says "cut", but 2 of its 5 shapes are not lines without fill',
    'der Name sagt „cut“, aber 2 ihrer 5 Formen sind keine Linien ohne Fläche',
  ],
  ['layer "the rest": it stands in layer "the name"', 'Ebene „the rest“: sie steht in der Ebene „the name“'],
  [
    'rule 3: layer "/Die", stroke "#e5007d", width 0.25 mm, dashed',
    'Regel 3: Ebene "/Die", Linie "#e5007d", Linienbreite 0.25 mm, gestrichelt',
  ],
  ['rule 1: the rest', 'Regel 1: der Rest'],
])('%s', (own, german) => {
  expect(sayReason(own)).toBe(german);
});
