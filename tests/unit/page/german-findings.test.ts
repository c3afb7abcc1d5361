// Findings in German: every code, its values in their places, and nothing English beside its own words.
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS, type Finding, finding } from '../../../src/model/finding.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { GERMAN_FINDINGS, sayInGerman } from '../../../src/page/german-findings.js';
import { split } from '../../../src/pipeline.js';
import { readTicket } from '../../../src/ticket/read-ticket.js';

const codes = Object.keys(FINDING_KINDS) as (keyof typeof FINDING_KINDS)[];
const texts = codes.flatMap((code) => GERMAN_FINDINGS[code].map((text) => [code, text] as const));

/** Words that are in every English text of some length, and in no German one. */
const ENGLISH = /\b(?:the|is|are|of|and|not|with|shape|shapes|pass|passes|line|layer|cut|crease)\b/i;

describe('the table', () => {
  it('says of every code what it is, and what to do unless it is a note', () => {
    expect(Object.keys(GERMAN_FINDINGS).sort()).toEqual([...codes].sort());
    const mute = codes.filter((code) => GERMAN_FINDINGS[code][0] === '');
    expect(mute).toEqual([]);
    const helpless = codes.filter(
      (code) => GERMAN_FINDINGS[code][1] === '' && FINDING_KINDS[code].severity === 'error',
    );
    expect(helpless).toEqual(['cancelled']);
  });

  it('is German, in whole sentences, each said once', () => {
    expect(texts.filter(([, text]) => ENGLISH.test(text))).toEqual([]);
    expect(texts.filter(([, text]) => text !== '' && !/^[A-ZÄÖÜ„].*[.?]$/.test(text))).toEqual([]);
    expect(codes.filter((code) => ENGLISH.test(FINDING_KINDS[code].doc)).length).toBeGreaterThan(100);
    const said = codes.map((code) => GERMAN_FINDINGS[code][0]);
    const twice = said.filter((text, at) => said.indexOf(text) !== at);
    // Told of by two judges, once each.
    expect(twice).toEqual([GERMAN_FINDINGS['verify/repainted'][0]]);
  });
});

const RIM = 'fill="none" stroke="#c2185b" stroke-width="0.3"';
const CARD = `<rect x="10" y="10" width="40" height="20" ${RIM}/>`;

async function find(art: string, ticket: object): Promise<readonly Finding[]> {
  const bytes = encodeUtf8(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${art}</svg>`,
  );
  return (await split(bytes, readTicket(JSON.parse(JSON.stringify({ pinbar: 1, ...ticket }))))).findings;
}

describe('values', () => {
  it('stand in their places, with a decimal comma', async () => {
    const found = await find(`<g id="Cut">${CARD}</g>`, {});
    const room = found.find(({ code }) => code === 'mark/no-room')!;
    const { what, todo } = sayInGerman(room);
    expect(what).toMatch(/fehlen \d+(?:,\d+)? mm\.$/);
    expect(todo).toContain(`einen Rand von ${String(room.data.marginMm).replace('.', ',')} mm`);
  });

  it('are there wherever a text has a place for them', async () => {
    const placed = codes.filter((code) => GERMAN_FINDINGS[code].some((text) => text.includes('{')));
    expect(placed.toSorted()).toEqual(['mark/no-room', 'sheet/bleed-into-neighbour', 'turn/off-artboard']);
    const bleeding = `<g id="Print"><rect x="7" y="7" width="46" height="26" fill="#2f6f5e"/></g><g id="Cut">${CARD}</g>`;
    const sheet = { widthMm: 200, heightMm: 200, gutterMm: 1, ups: '2x2', turn: 0 };
    const found = await find(bleeding, { sheet, marks: { wanted: false } });
    const near = found.find(({ code }) => code === 'sheet/bleed-into-neighbour')!;
    expect(sayInGerman(near).todo).toBe(
      `Zwischen den Zuschnitten ${String(near.data.gutterMm).replace('.', ',')} mm angeben.`,
    );
    const cut = { name: 'cut', role: 'cutting', side: 'reverse', turn: 'work-and-turn', axisMm: 5 };
    const passes = [{ name: 'print', role: 'print' }, cut];
    const turned = await find(bleeding, { passes, marginMm: 20 });
    const off = turned.find(({ code }) => code === 'turn/off-artboard')!;
    expect(sayInGerman(off).what).toContain(`bis zu ${String(off.data.measuredMm).replace('.', ',')} mm über`);
  });

  it('of the place and of what was measured are told in one line', () => {
    const made = finding('check/outline-open', {
      message: 'A gap.',
      place: { xMm: 12.5, yMm: 30, layerPath: 'Die/Cut' },
      data: { measuredMm: 0.25, allowedMm: 0.05, count: 3 },
    });
    expect(sayInGerman(made).details).toBe(
      'gemessen 0,25 mm, erlaubt 0,05 mm; bei 12,5 / 30 mm, Ebene Die/Cut; 3 im Ganzen',
    );
  });

  it('that are names stay as they are', async () => {
    const rules = [
      { pass: 'cutting', stroke: '#c2185b' },
      { pass: 'creasing', element: 'rect' },
      { pass: 'print', layer: 'Nothing' },
    ];
    const found = await find(CARD, { rules });
    const detailsOf = (wanted: string): string => sayInGerman(found.find(({ code }) => code === wanted)!).details;
    expect(detailsOf('classify/claimed-twice')).toMatch(/^Durchgänge (?:cut, crease|crease, cut); /);
    expect(detailsOf('classify/rule-unused')).toMatch(/^Regel [23]/);
  });
});
