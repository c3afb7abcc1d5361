// The page: everything shown, nothing made up, nothing that runs, names that are only text.
import { readFileSync } from 'node:fs';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { type JobResult, joinPieces, makeJobRunSheet, readTicket, split } from '../../../src/index.js';
import type { ShopProfile } from '../../../src/model/profile.js';
import { figure, makeProfile } from './check-profile.js';

async function splitCarton(ticket: object = {}): Promise<JobResult> {
  return split(readFileSync('samples/tuck-carton.svg'), readTicket({ pinbar: 1, ...ticket }), {
    fileName: 'tuck-carton.svg',
  });
}

async function print(profile: ShopProfile, job?: JobResult) {
  const { sheet, files } = await makeJobRunSheet(job ?? (await splitCarton()), { profile });
  return { sheet, html: Buffer.from(joinPieces(files[0]!.pieces)).toString('utf8') };
}

function count(html: string, text: string): number {
  return html.split(text).length - 1;
}

describe('the page', () => {
  it('is well-formed but for the tags that HTML leaves open, and loads and runs nothing', async () => {
    const { html } = await print(makeProfile());
    const closed = html.replace('<!doctype html>', '').replace(/<(meta [^>]*|br)>/g, '<$1/>');
    const troubles: string[] = [];
    new DOMParser({ onError: (_, message) => void troubles.push(message) }).parseFromString(closed, 'text/xml');
    expect(troubles).toEqual([]);
    expect(html).not.toMatch(/<script|<link|<iframe|\son\w+=|javascript:|@import|url\(/i);
    const outside = [...html.matchAll(/(?:href|src)="([^"]{0,30})/g)].map(([, address]) => address!);
    expect(outside.every((address) => address.startsWith('data:image/svg+xml;base64,'))).toBe(true);
  });

  it('shows the passes in order with hash, picture and a box per step', async () => {
    const { html, sheet } = await print(makeProfile());
    const cards = html.split('<section class="pass">').slice(1);
    expect(cards.map((card) => /class="name">(\w+)</.exec(card)![1])).toEqual(['crease', 'print', 'cut']);
    for (const [i, card] of cards.entries()) {
      const { file } = sheet.passes[i]!;
      expect(card).toContain(`<b>${file.name}</b>`);
      expect(card).toContain(`SHA-256 ${file.sha256}`);
      expect(card).toContain('<figure><svg ');
      expect(count(card, '<li>')).toBe(count(card, 'class="tick"'));
      expect(count(card, '<li>')).toBe(sheet.passes[i]!.tool === null ? 5 : 7);
    }
    expect(html).toContain('<b>Tools first.</b> No tool on the printed face.');
    expect(cards[0]).toContain('Flat board.');
    expect(cards[2]).toContain('registers to the printed marks');
  });

  it('counts one of a thing as one', async () => {
    const { files } = await makeJobRunSheet(await splitCarton(), { profile: makeProfile(), sheets: 1 });
    const html = Buffer.from(joinPieces(files[0]!.pieces)).toString('utf8');
    expect(html).toContain('Time for 1 sheet on this machine');
    expect(html).not.toMatch(/\b1 (?:sheets|lines|lifts|ties|stretches)\b/);
    const two = await makeJobRunSheet(await splitCarton(), { profile: makeProfile(), sheets: 2 });
    expect(Buffer.from(joinPieces(two.files[0]!.pieces)).toString('utf8')).toContain('Run the other sheet.');
  });

  it('shows white and varnish dark, so that they are seen on paper, and print as it is', async () => {
    const job = await split(readFileSync('samples/label-sheet.svg'), readTicket({ pinbar: 1 }), { skipChecks: true });
    const { html } = await print(makeProfile(), job);
    const cards = html.split('<section class="pass">').slice(1);
    const dark = cards.map((card) => [/class="name">([\w-]+)</.exec(card)![1], card.includes('filter:brightness(0)')]);
    expect(dark).toEqual([
      ['white', true],
      ['print', false],
      ['varnish', true],
      ['partial-cut', false],
      ['drill', false],
    ]);
    expect(cards[0]).toContain('Shown dark: white.');
  });

  it('never lets a page cut a step, a card, a table or a caution', async () => {
    const { html } = await print(makeProfile());
    const style = html.split('<style>')[1]!.split('</style>')[0]!;
    const whole = [...style.matchAll(/([^{}]+)\{([^{}]*)\}/g)]
      .filter(([, , body]) => body!.includes('break-inside:avoid'))
      .map(([, selector]) => selector!.trim());
    expect(whole).toEqual(expect.arrayContaining(['table', '.box', '.caution', '.pass', 'ol.steps>li', '.sign-off']));
    expect(style).toContain('break-after:avoid');
  });

  it('shows what is missing and makes nothing up', async () => {
    const bare = makeProfile((own) => {
      const machine = own.machines[0]! as unknown as Record<string, unknown>;
      for (const key of ['times', 'register', 'origin', 'widthMm']) delete machine[key];
      const material = own.materials[0]! as unknown as { settings: Record<string, unknown>[]; caliperMm?: unknown };
      delete material.caliperMm;
      material.settings[0] = { tool: 'wheel' };
      own.orders = [];
    });
    const { html, sheet } = await print(bare);
    const [crease] = sheet.passes;
    expect(crease!.settings).toMatchObject({
      speedCmS: null,
      pressureGf: null,
      pressureN: null,
      strokes: null,
      offsetMm: null,
    });
    expect(crease!.time).toMatchObject({ lengthOverSpeedS: null, motionS: null, perSheetS: null, perRunS: null });
    expect(sheet.passes[2]!.time.lengthOverSpeedS).toBeGreaterThan(5);
    expect(sheet.passes[2]!.time.motionS).toBeNull();
    expect(sheet.totals).toMatchObject({ passByPassS: null, toolChangesPerSheetS: null });
    expect(sheet.budgets.map(({ totalMm }) => totalMm)).toEqual([null, null, null, null]);
    expect(sheet.machine.fits).toBeNull();
    expect(sheet.passes[0]!.register).toEqual({ to: null, saidBy: 'nobody', side: 'front', turn: null });
    expect(sheet.notes).toContain('No order of the shop fits these passes, so nobody says why they run in this order.');
    for (const what of [
      'wheel, board: pressure',
      'board: caliper',
      'table: acceleration',
      'table: register by lay',
      'table: origin',
    ])
      expect(sheet.missing).toContain(what);
    expect(count(html, '<span class="missing">missing</span>')).toBeGreaterThan(25);
    expect(html).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it('marks starting points that nobody tried, and what was found on another batch', async () => {
    const profile = makeProfile((own) => {
      own.materials[0]!.batch = 'B8';
      const setting = own.materials[0]!.settings[0]! as Record<string, unknown>;
      setting.pressureGf = figure(300, { batch: 'B8', state: 'untested starting point' });
      setting.speedCmS = figure(5, { batch: 'B8' });
      setting.strokes = figure(1, { batch: undefined });
    });
    const { html, sheet } = await print(profile);
    expect(sheet.untested).toEqual(['wheel, board: pressure']);
    expect(sheet.oldNews).toContain('wheel, board: offset (batch B7)');
    expect(sheet.oldNews).toContain('wheel, board: strokes (no batch said)');
    expect(sheet.oldNews.some((what) => what.includes('wheel, board: speed'))).toBe(false);
    expect(sheet.oldNews.some((what) => what.includes('table'))).toBe(false);
    expect(html).toContain('<h3>Run a test strip first</h3>');
    expect(html).toContain('<b>untested starting point</b>');
    expect(html).toContain('<b>old news: another batch</b>');
  });

  it('gives the cautions of the tools that are mounted, each with its sign', async () => {
    const { html, sheet } = await print(makeProfile());
    // The crease wheel states no hazard, the knife states nothing and cuts, and print is run who knows where.
    expect(sheet.cautions.map(({ level, sign }) => `${level} ${sign}`)).toEqual([
      'WARNING W022',
      'WARNING W027',
      'WARNING W017',
      'NOTICE M002',
    ]);
    expect(html).toContain('A blade stays sharp when the machine is off.');
    expect(html).toContain('aria-label="Sharp element (W022)"');
    const only = await split(
      readFileSync('samples/tuck-carton.svg'),
      readTicket({ pinbar: 1, rules: [{ pass: 'creasing', layer: 'Crease' }], hidden: 'skip' }),
      { skipChecks: true },
    );
    if (only.manifest !== null) {
      expect((await print(makeProfile(), only)).sheet.cautions.map(({ sign }) => sign)).toEqual(['M002']);
    }
  });

  it('takes names for text, whatever they hold', async () => {
    const nasty = '"><script>alert(1)</script>&\u0007';
    const profile = makeProfile((own) => {
      own.shop = nasty;
      own.machines[0]!.name = nasty;
      own.machines[0]!.tools[0]!.name = nasty;
      own.materials[0]!.name = nasty;
      own.materials[0]!.batch = nasty;
      own.materials[0]!.settings[0]!.tool = nasty;
      own.orders[0]!.name = nasty;
      own.orders[0]!.reason = nasty;
      own.machines[0]!.origin.by = nasty;
      own.materials[0]!.settings[0]!.pressureGf.by = nasty;
    });
    const { html } = await print(profile);
    expect(html).not.toContain('<script');
    expect(html).not.toContain('\u0007');
    expect(count(html, '&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;\ufffd')).toBeGreaterThan(8);
  });

  it('says over which axis the sheet is turned, or that nobody said', async () => {
    const passes = [
      { name: 'crease', role: 'reverse-creasing' },
      { name: 'print', role: 'print', registersTo: 'pins' },
      { name: 'cut', role: 'cutting', registersTo: 'print' },
    ];
    const rules = ['Crease', 'Artwork', 'Cut'].map((layer, i) => ({ pass: passes[i]!.name, layer }));
    const turned = await splitCarton({ passes, rules, checks: { turnAxis: 'vertical' } });
    const { html, sheet } = await print(makeProfile(), turned);
    const middle = { axis: 'vertical', axisMm: 120, way: null };
    expect(sheet.passes.map(({ register }) => [register.side, register.turn, register.to, register.saidBy])).toEqual([
      ['reverse', middle, null, 'nobody'],
      ['front', middle, 'pins', 'ticket'],
      ['front', null, 'print', 'ticket'],
    ]);
    expect(html).toContain('Turn the sheet over like the page of a book');
    expect(html).toContain('the marks of pass print');
    const unsaid = await split(readFileSync('samples/tuck-carton.svg'), readTicket({ pinbar: 1, passes, rules }), {
      skipChecks: true,
    });
    expect((await print(makeProfile(), unsaid)).sheet.notes).toContain(
      'Nothing says over which axis the sheet is turned before crease.',
    );
  });

  it('tells sheets of copies', async () => {
    const sheet = { widthMm: 700, heightMm: 500, gripperMm: 12, gutterMm: 6, ups: '2x1' };
    const made = (await print(makeProfile(), await splitCarton({ sheet }))).sheet;
    expect(made.need).toMatchObject({ copiesPerSheet: 2, copies: 500, sheetWidthMm: 700, sheetHeightMm: 500 });
    const single = (await print(makeProfile())).sheet;
    expect(made.passes[2]!.lines!.lengthMm).toBeCloseTo(2 * single.passes[2]!.lines!.lengthMm, 6);
    expect(made.machine.fits).toBe(true);
  });

  it('times by three timed runs, and says how well they are met', async () => {
    const like = (lengthMm: number, many: number) => [{ lengthMm, count: many }];
    const timed = (speedCmS: number, stretches: object[], lifts: number, seconds: number) => ({
      ...{ name: 'a', on: '2026-03-31', by: 'R. O.', speedCmS, lifts, stretches, seconds },
      travels: like(50, lifts - 1),
    });
    const profile = makeProfile((own) => {
      const machine = own.machines[0]! as unknown as Record<string, unknown>;
      machine.timedRuns = [
        timed(5, like(100, 6), 6, 24),
        timed(10, like(5, 60), 10, 30),
        timed(10, like(40, 20), 20, 36),
        timed(10, like(300, 4), 4, 22),
      ];
    });
    const { sheet, html } = await print(profile);
    expect(sheet.motion).toMatchObject({ fitted: true, runs: 4 });
    expect(sheet.motion.residualS).toBeGreaterThan(0);
    expect(html).toContain('fitted to 4 timed runs');
  });
});
