// Every figure of a run sheet, worked out again from the pass files by another way.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { joinPieces, makeJobRunSheet, readTicket, split } from '../../../src/index.js';
import type { RunPass, RunSheet } from '../../../src/model/run-sheet.js';
import { makeProfile } from './check-profile.js';
import { type Recomputed, recomputePass, stretchSeconds } from './recompute-pass.js';
import { listXjdfFaults } from './xjdf-structure.js';

async function run(sample: string, ticket = readTicket({ pinbar: 1 }), profile = makeProfile()) {
  const job = await split(readFileSync(`samples/${sample}.svg`), ticket, { fileName: `${sample}.svg` });
  expect(job.outcome).toBe('in-register');
  const { sheet, files } = await makeJobRunSheet(job, { profile, sheets: 250 });
  const html = Buffer.from(joinPieces(files[0]!.pieces)).toString('utf8');
  const written = [...job.files, ...job.tieFiles];
  const texts = new Map(written.map(({ name, pieces }) => [name, Buffer.from(joinPieces(pieces)).toString('utf8')]));
  const again = (pass: RunPass): Recomputed => recomputePass(texts.get(pass.file.name)!, 20);
  const xjdf = Buffer.from(joinPieces(files[2]!.pieces)).toString('utf8');
  return { sheet, html, xjdf, again, job };
}

/** Seconds of the tool at the check figures: travel 300 mm/s, 500 mm/s², a lift 0.25 s. */
function toolSeconds(
  stretchesMm: readonly number[],
  travelsMm: readonly number[],
  lifts: number,
  mmPerS: number,
): number {
  const sum = (list: readonly number[], speed: number): number =>
    list.reduce((all, mm) => all + stretchSeconds(mm, speed, 500), 0);
  return sum(stretchesMm, mmPerS) + sum(travelsMm, 300) + lifts * 0.25;
}

function pick(sheet: RunSheet, name: string): RunPass {
  return sheet.passes.find((pass) => pass.name === name)!;
}

/** Cells of a pass card in the page, as the operator reads them. */
function cardOf(html: string, name: string): string {
  return html
    .split('<section class="pass">')
    .find((card) => card.includes(`<div class="name">${name}</div>`))!
    .split('</section>')[0]!;
}

describe('the tuck carton', async () => {
  const { sheet, html, again } = await run('tuck-carton');
  const [crease, cut] = [pick(sheet, 'crease'), pick(sheet, 'cut')];

  it('shows exactly the check values, in gf and N', () => {
    expect([crease.settings.speedCmS!.value, crease.settings.pressureGf!.value, crease.settings.pressureN]).toEqual([
      5, 300, 2.941995,
    ]);
    expect([crease.settings.strokes!.value, crease.settings.offsetMm!.value]).toEqual([1, 0]);
    expect([cut.settings.speedCmS!.value, cut.settings.pressureGf!.value, cut.settings.pressureN]).toEqual([
      10, 50, 0.4903325,
    ]);
    expect(cut.settings.offsetMm!.value).toBe(0.5);
    for (const text of ['>5 cm/s<', '>300 gf (2.94 N)<', '>0 mm<', '>1<'])
      expect(cardOf(html, 'crease')).toContain(text);
    for (const text of ['>10 cm/s<', '>50 gf (0.49 N)<', '>0.5 mm<', '>1<'])
      expect(cardOf(html, 'cut')).toContain(text);
  });

  it.each([
    ['crease', 50],
    ['cut', 100],
  ] as const)('tells lengths, stops and times of %s', (name, mmPerS) => {
    const pass = pick(sheet, name);
    const own = again(pass);
    const lines = pass.lines!;
    expect(lines.lines).toBe(own.lines);
    expect(lines.lifts).toBe(own.lines);
    expect(lines.lengthMm).toBeCloseTo(own.lengthMm, 3);
    expect(lines.stretches).toBe(own.stretchesMm.length);
    expect(lines.travelMm).toBeCloseTo(
      own.travelsMm.reduce((sum, mm) => sum + mm, 0),
      6,
    );
    expect(lines.ties).toBe(0);
    const seconds = toolSeconds(own.stretchesMm, own.travelsMm, own.lines, mmPerS);
    expect(pass.time.lengthOverSpeedS).toBeCloseTo(own.lengthMm / mmPerS, 4);
    expect(pass.time.motionS).toBeCloseTo(seconds, 3);
    expect(pass.time.factor).toBeCloseTo(seconds / (own.lengthMm / mmPerS), 3);
  });

  it('adds up sheets and runs', () => {
    const [a, b] = [crease.time.motionS!, cut.time.motionS!];
    // By the edge: no marks are read; the cut looks for the printed marks.
    expect(crease.time.perSheetS).toBeCloseTo(18 + 3 + a, 9);
    expect(cut.time.perSheetS).toBeCloseTo(18 + 7 + 3 + b, 9);
    expect(crease.time.perRunS).toBeCloseTo(90 + 250 * (21 + a), 6);
    expect(sheet.totals.passByPassS).toBeCloseTo(180 + 250 * (21 + a + 28 + b), 6);
    // The print between them is run elsewhere: the sheet cannot stay lying.
    expect(sheet.totals.toolChangesPerSheetS).toBeCloseTo(sheet.totals.passByPassS!, 6);
    expect(sheet.totals.untimed).toEqual(['print']);
  });

  it('tells what is needed', () => {
    expect(sheet.need).toMatchObject({
      sheets: 250,
      spareSheets: 6,
      copies: 250,
      sheetWidthMm: 240,
      sheetHeightMm: 236,
    });
    expect(sheet.need.areaM2).toBeCloseTo(256 * 0.24 * 0.236, 9);
    expect(sheet.need.massKg).toBeCloseTo(256 * 0.24 * 0.236 * 0.32, 9);
    expect(sheet.machine.fits).toBe(true);
  });

  it('sets both error budgets side by side', () => {
    const totals = sheet.budgets.map(({ totalMm }) => totalMm!);
    const lay = Math.sqrt(2 * 0.3 ** 2 + 2 * 0.05 ** 2);
    for (const [i, wanted] of [lay, Math.hypot(0.1, 0.05), lay, Math.SQRT2 * Math.hypot(0.1, 0.05)].entries())
      expect(totals[i]).toBeCloseTo(wanted, 12);
    for (const text of ['0.43 mm', '0.112 mm', '0.158 mm']) expect(html).toContain(text);
  });

  it('misses nothing, and nothing is old', () => {
    expect([sheet.missing, sheet.untested, sheet.oldNews]).toEqual([[], [], []]);
  });
});

describe('the sleeve', async () => {
  const ticket = readTicket(readFileSync('samples/sleeve.ticket.json', 'utf8'));
  const { sheet, html, again } = await run('sleeve', ticket);
  const perforate = pick(sheet, 'perforate');

  it('shares each line of 54 mm into five stretches and four ties', () => {
    const own = again(perforate);
    expect(own.stretchesMm).toEqual([54, 54]);
    expect(perforate.lines).toMatchObject({ lines: 2, ties: 8, lifts: 10, stretches: 10 });
    expect(perforate.lines!.tieLengthMm).toBeCloseTo(8, 9);
    expect(perforate.lines!.greatestStretch).toBeCloseTo(0, 9);
    const ways = [...own.travelsMm, ...Array<number>(8).fill(1)];
    expect(perforate.time.motionS).toBeCloseTo(toolSeconds(Array<number>(10).fill(10), ways, 10, 100), 6);
    for (const text of ['>250 gf (2.45 N)<', '>10 mm<', '>1 mm<', '8 ties, 8 mm together', '>tool up<'])
      expect(cardOf(html, 'perforate')).toContain(text);
    expect(perforate.settings.pressureN).toBe(2.4516625);
  });

  it('leaves the sheet lying from perforation to cut, with a tool change for each', () => {
    const [crease, cut] = [pick(sheet, 'crease'), pick(sheet, 'cut')];
    const [a, b, c] = [crease, perforate, cut].map(({ time }) => time.motionS!);
    const stay = 90 + 250 * (18 + 3 + a!) + 250 * (18 + 7 + 3 + b! + 3 + c! + 2 * 90);
    expect(sheet.totals.toolChangesPerSheetS).toBeCloseTo(stay, 6);
    expect(sheet.totals.passByPassS).toBeCloseTo(270 + 250 * (21 + a! + 28 + b! + 28 + c!), 6);
  });

  it('scores ties without a lift where the shop has a pressure for them', async () => {
    const job = await split(readFileSync('samples/sleeve.svg'), ticket, { fileName: 'sleeve.svg' });
    const profile = makeProfile((own) => {
      const point = own.materials[0]!.settings[2]! as { tiePressureGf?: unknown; pressureGf: unknown };
      point.tiePressureGf = { ...(point.pressureGf as object), value: 40 };
    });
    const scored = (await makeJobRunSheet(job, { profile })).sheet.passes.find(({ name }) => name === 'perforate')!;
    expect(scored.lines).toMatchObject({ ties: 8, lifts: 2, stretches: 2 });
    expect(scored.settings.tiePressureN).toBe(0.392266);
    expect(scored.time.motionS).toBeCloseTo(toolSeconds([54, 54], again(perforate).travelsMm, 2, 100), 6);
  });

  it('reads ties that are in the files, of every copy, and shares nothing out again', async () => {
    const ties = [{ pass: 'perforate', mode: 'pattern', cutMm: 10, tieMm: 1, tiesPass: true }];
    const own = { ...(JSON.parse(readFileSync('samples/sleeve.ticket.json', 'utf8')) as object), ties };
    const one = await run('sleeve', readTicket(own));
    const single = pick(one.sheet, 'perforate');
    expect(single.lines).toMatchObject({ lines: 10, lifts: 10, ties: 8, tieLengthMm: 8 });
    expect(single.time.motionS).toBeCloseTo(perforate.time.motionS!, 6);
    expect(single.tieFile!.name).toBe('sleeve.3-perforate-ties.svg');
    expect(one.sheet.notes).toEqual([]);
    expect(one.sheet.missing).toEqual(['point, board: tie pressure']);
    expect(cardOf(one.html, 'perforate')).not.toContain('>tool up<');
    const sheetOf = { widthMm: 700, heightMm: 500, gutterMm: 6, ups: '2x1' };
    const made = await run('sleeve', readTicket({ ...own, sheet: sheetOf }));
    expect(pick(made.sheet, 'perforate').lines).toMatchObject({ lines: 20, lifts: 20, ties: 16, tieLengthMm: 16 });
    expect(pick(made.sheet, 'perforate ties').lines).toMatchObject({ lines: 16, lifts: 16 });
    // Scaled copies have ties of the length asked for, as many more as fit.
    const large = await run('sleeve', readTicket({ ...own, sheet: { ...sheetOf, ups: '1x1', scale: 1.5 } }));
    const [cuts, alone] = ['perforate', 'perforate ties'].map((name) => pick(large.sheet, name).lines!);
    // 81 mm each: seven cuts and six ties are 76 mm.
    expect([cuts!.ties, alone!.lines]).toEqual([12, 12]);
    expect(cuts!.tieLengthMm).toBeCloseTo(alone!.lengthMm, 4);
    expect(cardOf(made.html, 'perforate ties')).toContain('<b>sleeve.3-perforate-ties.svg</b>');
  });
});

describe('a sheet that is turned over between two tools', async () => {
  const passes = [
    { name: 'crease', role: 'creasing' },
    { name: 'perforate', role: 'perforating', side: 'reverse', turn: 'work-and-turn' },
    { name: 'cut', role: 'cutting', side: 'reverse', turn: 'work-and-turn' },
    { name: 'print', role: 'print' },
  ];
  const own = JSON.parse(readFileSync('samples/sleeve.ticket.json', 'utf8')) as object;
  const { sheet } = await run('sleeve', readTicket({ ...own, passes, severities: {} }));

  it('does not stay lying: it is laid anew, and stays from there', () => {
    const [a, b, c] = ['crease', 'perforate', 'cut'].map((name) => pick(sheet, name).time);
    const stay = 90 + 250 * (18 + a!.marksS! + 3 + a!.motionS!);
    const turned = 250 * (18 + Math.max(b!.marksS!, c!.marksS!) + 3 + b!.motionS! + 3 + c!.motionS! + 2 * 90);
    expect(sheet.totals.toolChangesPerSheetS).toBeCloseTo(stay + turned, 6);
  });
});

describe('ties in a file of their own', async () => {
  const scored = makeProfile((own) => {
    for (const at of [1, 2]) {
      const settings = own.materials[0]!.settings[at]! as { tiePressureGf?: unknown; pressureGf: unknown };
      settings.tiePressureGf = { ...(settings.pressureGf as object), value: 20 + at };
    }
  });
  const ties = [
    { pass: 'perforate', mode: 'pattern', cutMm: 10, tieMm: 1, tiesPass: true },
    { pass: 'cut', mode: 'hold', tieMm: 0.5, tiesPass: true },
  ];
  const own = { ...(JSON.parse(readFileSync('samples/sleeve.ticket.json', 'utf8')) as object), ties };
  const { sheet, html, xjdf, again, job } = await run('sleeve', readTicket(own), scored);

  it('are steps of their own behind their passes, with file, tool and the pressure for ties', () => {
    expect(sheet.passes.map(({ order, name, tiesOf }) => [order, name, tiesOf])).toEqual([
      [1, 'crease', null],
      [2, 'print', null],
      [3, 'perforate', null],
      [3, 'perforate ties', 'perforate'],
      [4, 'cut', null],
      [4, 'cut ties', 'cut'],
    ]);
    for (const [name, tool, gf, newton] of [
      ['perforate ties', 'point', 22, 0.2157463],
      ['cut ties', 'knife', 21, 0.20593965],
    ] as const) {
      const step = pick(sheet, name);
      expect([step.tool!.name, step.settings.pressureGf!.value]).toEqual([tool, gf]);
      expect(step.settings.pressureN).toBeCloseTo(newton, 12);
      const file = job.tieFiles.find((one) => one.name === step.file.name)!;
      expect(step.file).toEqual({ name: file.name, bytes: file.byteLength, sha256: file.sha256 });
      const before = pick(sheet, step.tiesOf!);
      expect(before.tieFile).toEqual(step.file);
      // The machine makes none besides those in the file, and sets no pressure for ties in the pass itself.
      expect([before.settings.cutMm, before.settings.tieMm, before.settings.tiePressureGf]).toEqual([null, null, null]);
      expect([step.lines!.tiesAreDrawn, before.lines!.tiesAreDrawn]).toEqual([false, true]);
      const card = cardOf(html, name);
      for (const text of [`>${gf} gf (${newton.toFixed(2)} N)<`, `<b>${file.name}</b>`, file.sha256, '<figure><svg '])
        expect(card).toContain(text);
      expect(card).toContain(`Leave <b>${tool}</b> mounted`);
      expect(cardOf(html, step.tiesOf!)).not.toContain(`Take <b>${tool}</b> off`);
      expect(cardOf(html, step.tiesOf!)).toContain('set no perforation at the machine');
    }
    expect(sheet.missing).toEqual([]);
  });

  it.each(['perforate ties', 'cut ties'])('take the time of their own lines: %s', (name) => {
    const step = pick(sheet, name);
    const file = again(step);
    expect(step.lines).toMatchObject({ lines: file.lines, lifts: file.lines, stretches: file.stretchesMm.length });
    expect(step.lines!.lines).toBe(pick(sheet, step.tiesOf!).lines!.ties);
    expect(step.lines!.lengthMm).toBeCloseTo(file.lengthMm, 4);
    expect(step.lines!.lengthMm).toBeCloseTo(pick(sheet, step.tiesOf!).lines!.tieLengthMm, 4);
    const seconds = toolSeconds(file.stretchesMm, file.travelsMm, file.lines, 100);
    expect(step.time.motionS).toBeCloseTo(seconds, 3);
    // Neither laid nor mounted for: the sheet lies and the tool is on.
    expect(step.time).toMatchObject({ loadS: 0, marksS: 0, startS: 3 });
    expect(step.time.perSheetS).toBeCloseTo(3 + seconds, 3);
    expect(step.time.perRunS).toBeCloseTo(250 * (3 + seconds), 1);
  });

  it('are drawn so that they are seen: a diamond around each, on the thin lines of their pass', () => {
    const picture = cardOf(html, 'perforate ties').split('<figure>')[1]!;
    const paths = [...picture.matchAll(/<path d="([^"]*)" fill="none" stroke="#000" stroke-width="([\d.]+)"/g)];
    const [around, own, diamonds] = paths.map(([, d]) => d!.match(/M/g)!.length);
    expect([around, own, diamonds]).toEqual([10, 8, 8]);
    expect(Number(paths[0]![2])).toBeLessThan(Number(paths[1]![2]) / 2);
    expect(picture).toContain('Diamonds: ties, on the thin lines of perforate.');
  });

  it('count in both ways of working, without a tool change', () => {
    const [a, b, bt, c, ct] = ['crease', 'perforate', 'perforate ties', 'cut', 'cut ties'].map(
      (name) => pick(sheet, name).time.motionS!,
    );
    const onSheet = 3 + b! + 3 + bt! + 3 + c! + 3 + ct!;
    expect(sheet.totals.passByPassS).toBeCloseTo(270 + 250 * (21 + a! + 25 + 25 + onSheet), 6);
    const stay = 90 + 250 * (21 + a!) + 250 * (25 + onSheet + 2 * 90);
    expect(sheet.totals.toolChangesPerSheetS).toBeCloseTo(stay, 6);
    // Setting up takes spare sheets for the passes alone.
    expect(sheet.need.spareSheets).toBe(8);
  });

  it('are processes of the XJDF ticket', () => {
    expect(listXjdfFaults(xjdf)).toEqual([]);
    expect(xjdf).toContain('Types="Creasing DigitalPrinting Perforating Perforating ShapeCutting ShapeCutting"');
    const set = xjdf.split('<ResourceSet ').find((text) => text.includes('sleeve.3-perforate-ties.svg'))!;
    expect(set).toContain('CombinedProcessIndex="3"');
    expect(set).toContain(
      'ties of perforate, run while the sheet still lies; tool point; speed 10 cm/s; pressure 22 gf',
    );
    expect(set).toContain(`SHA-256 ${pick(sheet, 'perforate ties').file.sha256}</Comment>`);
    expect(xjdf.match(/<Perforate /g)).toHaveLength(18);
  });
});
