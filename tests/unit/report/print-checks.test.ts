// The list and the picture of the checks: worst first, grouped, and numbered alike.
import { describe, expect, it } from 'vitest';
import { check, type FindingCode, joinPieces, readTicket } from '../../../src/index.js';
import { finding } from '../../../src/model/finding.js';
import { describeFinding } from '../../../src/report/describe-finding.js';
import { groupFindings } from '../../../src/report/group-findings.js';
import { printChecks } from '../../../src/report/print-checks.js';
import { readSource } from '../../../src/source/read-source.js';

const ART = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="150mm" viewBox="0 0 200 150">
<g id="Art"><rect id="panel" x="60" y="45" width="80" height="60" fill="#c9a227"/></g>
<g id="Riddle &lt;1&gt;"><path id="curl" d="M80 60h10v10z" fill="#553"/><path id="curl2" d="M90 80h10v10z" fill="#553"/></g>
<g id="Cut"><path id="outline" d="M65 50H135V100H65Z" fill="none" stroke="#2a7f62" stroke-width=".2"/>
<path id="stray" d="M190 10H215" fill="none" stroke="#2a7f62" stroke-width=".2"/></g></svg>`;

async function checkArt() {
  const ticket = readTicket({ pinbar: 1, marks: { wanted: false }, checks: { artboardWidthMm: 150 } });
  return check(new TextEncoder().encode(ART), ticket, { fileName: 'riddle.svg' });
}

function numbersIn(text: string): readonly number[] {
  return [...text.matchAll(/^ {2,}(\d+) {2}\S/gm)].map(([, number]) => Number(number));
}

describe('groups', () => {
  const make = (code: FindingCode) => finding(code, { message: code });
  const found = (
    ['check/turn-axis-unsaid', 'check/size-suspicious', 'classify/draws-nothing', 'check/blank-off-sheet'] as const
  ).map(make);

  it('put the worst first, and the drawing before its checks', () => {
    const groups = groupFindings([...found, make('classify/unclaimed'), make('check/artboard-too-large')]);
    expect(groups.map(({ severity, heading }) => `${severity} ${heading}`)).toEqual([
      'error Drawing and passes found in it',
      'error Sheet and size',
      'warning Sheet and size',
      'warning Passes',
      'note Drawing and passes found in it',
    ]);
  });

  it('number through, and lose nothing', () => {
    const items = groupFindings(found).flatMap((group) => group.items);
    expect(items.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
    expect(new Set(items.map((item) => item.finding))).toEqual(new Set(found));
  });
});

describe('one line of facts', () => {
  it('says measured and allowed with their units, the place, and how many there are', () => {
    const item = finding('check/blank-off-sheet', {
      message: '',
      place: { xMm: 1.5, yMm: -2, layerPath: 'Die/Cut', id: 'o', line: 3, column: 9 },
      data: { measuredMm2: 2.00049, allowedMm2: 0, count: 4 },
    });
    expect(describeFinding(item)).toBe(
      'measured 2 mm², allowed 0 mm²; at 1.5, -2 mm, layer Die/Cut, id o, line 3; 4 in all',
    );
  });

  it('leaves out what is not known, and a value of several numbers', () => {
    const data = { measuredWidthMm: 3, measuredHeightMm: 4, allowedPpi: 200, count: 1 };
    expect(describeFinding(finding('check/size-suspicious', { message: '', data }))).toBe('allowed 200 ppi');
    expect(describeFinding(finding('check/size-suspicious', { message: '' }))).toBe('');
  });
});

describe('the list', () => {
  it('begins with the verdict and counts every finding', async () => {
    const result = await checkArt();
    const text = printChecks(result);
    expect(text).toMatch(/^riddle: not fit to run\n200 x 150 mm, 2 passes \(print, cut\), 2 errors, /);
    expect(numbersIn(text)).toEqual(result.findings.map((_, i) => i + 1));
    expect(result.counts.error).toBe(2);
  });

  it('says of each what, where and what to do, in the order of the result', async () => {
    const { findings, ...rest } = await checkArt();
    const text = printChecks({ findings, ...rest });
    let from = 0;
    for (const item of findings) {
      const at = text.indexOf(item.message, from);
      expect(at).toBeGreaterThan(from);
      from = at;
      expect(text.slice(at)).toContain(item.code);
      if (item.remedy !== '') expect(text.slice(at)).toContain(`-> ${item.remedy}`);
    }
  });

  it('tells the blank and its panels', async () => {
    expect(printChecks(await checkArt())).toContain(
      'The blank: 1 blank, 1 panel; 70 x 50 mm, 35 cm² of board, 0 % waste around\n  panel 1: 70 x 50 mm\n',
    );
  });
});

describe('the picture', () => {
  it('is well-formed, loads nothing and runs nothing', async () => {
    const { picture } = await checkArt();
    const bytes = joinPieces(picture.pieces);
    const source = readSource(bytes);
    expect(source.elements.count).toBeGreaterThan(20);
    const text = new TextDecoder().decode(bytes);
    expect(text.match(/href="[^,]*,PHN2Z/g)).toEqual(['href="data:image/svg+xml;base64,PHN2Z']);
    expect(text).not.toMatch(/<script|onload|<style/);
  });

  it('bears the numbers of the list, once in the legend and once at each place', async () => {
    const { picture, findings } = await checkArt();
    const text = new TextDecoder().decode(joinPieces(picture.pieces));
    findings.forEach((item, i) => {
      const drawn = [...text.matchAll(/font-weight="700" fill="[^"]+">(\d+)</g)].filter((m) => m[1] === String(i + 1));
      const places = new Set([item.place, ...((item.data.places ?? []) as object[])].map((p) => JSON.stringify(p)));
      const placed = item.place.xMm !== undefined;
      expect(drawn.length).toBeGreaterThanOrEqual(placed ? 2 : 1);
      expect(drawn.length).toBeLessThanOrEqual(1 + places.size);
    });
  });

  it('points at the places in the scale of its rulers', async () => {
    const { picture, findings } = await checkArt();
    const text = new TextDecoder().decode(joinPieces(picture.pieces));
    const frame = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)"/.exec(text)!.slice(1).map(Number);
    const scale = frame[2]! / 200;
    const stray = findings.find((item) => item.place.id === 'curl')!;
    expect(stray.place).toMatchObject({ xMm: 80, yMm: 60 });
    const x = Math.round((frame[0]! + 80 * scale) * 100) / 100;
    const y = Math.round((frame[1]! + 60 * scale) * 100) / 100;
    expect(text).toContain(`<circle cx="${x}" cy="${y}" r="3.5"`);
  });
});
