// Passes in another order: the same elements in the same groups, and only a way that is no longer.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { joinPieces, readTicket, split } from '../../../src/index.js';
import { sequencePass } from '../../../src/road/sequence-pass.js';

const REQUEST = { passes: [], origin: 'top-left', restartContours: false } as const;

function passOf(body: string, role: 'cutting' | 'creasing' = 'cutting') {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;
  return {
    name: 'art.1-cut.svg',
    pass: { order: 1, name: 'cut', role },
    bytes: new Uint8Array(Buffer.from(text)),
  };
}

function idsOf(bytes: Uint8Array): readonly string[] {
  return [
    ...Buffer.from(bytes)
      .toString('utf8')
      .matchAll(/ id="([^"]*)"/g),
  ].map(([, id]) => id!);
}

const line = (id: string, x: number, more = ''): string =>
  `<path id="${id}" fill="none" stroke="#303" ${more} d="M${x} 10V20"/>`;

describe('a pass in order', () => {
  it('holds the same elements and text between them, and tells what it took', () => {
    const pass = passOf(`\n ${line('c', 60)}\n  <!-- here -->${line('a', 10)}\n ${line('b', 30)}\n`);
    const { bytes, report, findings } = sequencePass(pass, REQUEST, {});
    expect(idsOf(bytes)).toEqual(['a', 'b', 'c']);
    expect(Buffer.from(bytes).toString('utf8')).toContain('\n  <!-- here -->');
    expect(bytes.length).toBe(pass.bytes.length);
    expect(findings).toEqual([]);
    // By hand: 60.828 to the first, then from the foot of each to the head of the next.
    expect(report.travelBeforeMm).toBeCloseTo(Math.hypot(60, 10) + Math.hypot(50, 10) + Math.hypot(20, 10), 9);
    expect(report.travelAfterMm).toBeCloseTo(Math.hypot(10, 10) + Math.hypot(20, 10) + Math.hypot(30, 10), 9);
    expect(report).toMatchObject({ liftsBefore: 3, liftsAfter: 3, moved: 3, pass: 'cut', role: 'cutting' });
    expect(report.lineMm).toBeCloseTo(30, 9);
  });

  it('starts from another corner when told', () => {
    const pass = passOf(line('a', 10) + line('b', 60));
    expect(idsOf(sequencePass(pass, { ...REQUEST, origin: 'top-right' }, {}).bytes)).toEqual(['b', 'a']);
    expect(idsOf(sequencePass(pass, REQUEST, {}).bytes)).toEqual(['a', 'b']);
  });

  it('cuts inner outlines before outer ones, and creases before cuts', () => {
    const outer = '<rect id="outer" fill="none" stroke="#303" x="5" y="5" width="90" height="90"/>';
    const inner = '<circle id="inner" fill="none" stroke="#303" cx="80" cy="80" r="5"/>';
    const fold = `<g id="Crease">${line('fold', 50)}</g>`;
    const { bytes } = sequencePass(passOf(`<g id="Cut">${outer}${inner}</g>${fold}`), REQUEST, {});
    expect(idsOf(bytes)).toEqual(['Crease', 'fold', 'Cut', 'inner', 'outer']);
  });

  it('knows an outline of several lines, and leaves it as it is in a creasing pass', () => {
    const side = (id: string, d: string): string => `<path id="${id}" fill="none" stroke="#303" d="${d}"/>`;
    const sides = side('s1', 'M5 5H95') + side('s2', 'M95 5V95') + side('s3', 'M95 95H5') + side('s4', 'M5 95V5');
    const body = sides + line('slit', 6);
    expect(idsOf(sequencePass(passOf(body), REQUEST, {}).bytes)[0]).toBe('slit');
    expect(idsOf(sequencePass(passOf(body, 'creasing'), REQUEST, {}).bytes).at(-1)).toBe('slit');
  });

  it('counts no lift where a line goes on from the last', () => {
    const body = '<path fill="none" stroke="#303" d="M5 5H9M9 5H20"/><path fill="none" stroke="#303" d="M20 5H30"/>';
    expect(sequencePass(passOf(body), REQUEST, {}).report).toMatchObject({ liftsBefore: 1, liftsAfter: 1 });
  });

  it('leaves what is filled or fades, lets nothing pass it, and says so', () => {
    const body = line('c', 60) + line('f', 40, 'style="fill:#c00"') + line('a', 10) + line('o', 5, 'opacity="0.5"');
    const { bytes, findings, report } = sequencePass(passOf(body), REQUEST, {});
    expect(idsOf(bytes)).toEqual(['c', 'f', 'a', 'o']);
    expect(findings.map(({ code }) => code)).toEqual(['sequence/stayed', 'sequence/stayed']);
    expect(report.stayed.map(({ count }) => count)).toEqual([1, 1]);
  });

  it('stays as it is where style rules look at neighbours', () => {
    const style = '<style>path:first-of-type{stroke:#c00}</style>';
    const pass = passOf(style + line('c', 60) + line('a', 10));
    const { bytes, findings, report } = sequencePass(pass, REQUEST, {});
    expect(bytes).toBe(pass.bytes);
    expect(findings[0]!.message).toContain('neighbours');
    expect(report.moved).toBe(0);
    expect(report.travelAfterMm).toBe(report.travelBeforeMm);
  });

  it('tells lengths as they are on a sheet of scaled copies', () => {
    const pass = passOf(line('b', 60) + line('a', 10));
    const [plain, scaled] = [1, 2].map((scale) => sequencePass({ ...pass, scale }, REQUEST, {}).report);
    for (const key of ['lineMm', 'travelBeforeMm', 'travelAfterMm'] as const)
      expect(scaled![key]).toBeCloseTo(2 * plain![key], 9);
    expect(scaled!.travelAfterMm).toBeGreaterThan(0);
  });

  it('leaves the marks last', () => {
    const marks = `<g id="pinbar-marks">${line('m', 1)}</g>`;
    const { bytes } = sequencePass(passOf(line('b', 60) + line('a', 10) + marks), REQUEST, {});
    expect(idsOf(bytes)).toEqual(['a', 'b', 'pinbar-marks', 'm']);
  });
});

const RESTART = { ...REQUEST, restartContours: true };

describe('other starts', () => {
  it('run a row of lines to and fro', () => {
    const pass = passOf(line('a', 10) + line('b', 20) + line('c', 30, 'stroke-linecap="round"'));
    const { bytes, report } = sequencePass(pass, RESTART, {});
    expect(Buffer.from(bytes).toString('utf8')).toContain('id="b" fill="none" stroke="#303"  d="M20 20L20 10"');
    expect(Buffer.from(bytes).toString('utf8')).toContain(
      'id="c" fill="none" stroke="#303" stroke-linecap="round" d="M30 10V20"',
    );
    expect(report.travelAfterMm).toBeCloseTo(Math.hypot(10, 10) + 10 + 10, 9);
    expect(report).toMatchObject({ moved: 0, restarted: 1 });
  });

  it('start a closed line where it is nearest, but not at a corner, and basic shapes as paths', () => {
    const pass = passOf('<rect class="k" x="50" y="50" width="40" height="40" fill="none" stroke="#303"/>');
    // The corner at the top left is the nearest place; it is the start as drawn, and stays.
    expect(sequencePass(pass, RESTART, {}).bytes).toBe(pass.bytes);
    const right = sequencePass(pass, { ...RESTART, origin: 'bottom-right' }, {});
    const text = Buffer.from(right.bytes).toString('utf8');
    const [, x, y] = /<path class="k" fill="none" stroke="#303" d="M([\d.]+) ([\d.]+)L[^"]*Z"\/>/.exec(text)!;
    // A forty-eighth of the outline is 3.33 mm: the nearest of the places tried is that far from the corner at 90, 90.
    expect(Math.hypot(90 - Number(x), 90 - Number(y))).toBeCloseTo(40 / 12, 5);
    expect(right.report.restarted).toBe(1);
    expect(right.report.travelAfterMm).toBeLessThan(right.report.travelBeforeMm);
  });

  it('leave what goes by its start: dashes, markers, uses, fills, and what a style rule would lose', () => {
    const dashed = line('d', 20, 'stroke-dasharray="3 1"');
    const marked = `<marker id="m"/>${line('m1', 20, 'marker-start="url(#m)"')}`;
    const used = `<defs>${line('u', 20)}</defs><use href="#u"/>`;
    const styled = '<style>line{stroke:#303}</style><line x1="20" y1="10" x2="20" y2="20"/>';
    for (const body of [dashed, marked, used, styled]) {
      const pass = passOf(line('a', 10) + body);
      const { bytes, report } = sequencePass(pass, RESTART, {});
      expect(Buffer.from(bytes).toString('utf8')).toContain(body);
      expect(report.restarted).toBeLessThan(2);
    }
  });

  it('never lengthen the way of the samples', async () => {
    for (const name of ['tuck-carton', 'counters']) {
      const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
      const options = { fileName: `${name}.svg`, skipChecks: true };
      const [ordered, restarted] = await Promise.all([
        split(bytes, readTicket({ pinbar: 1, sequence: {} }), options),
        split(bytes, readTicket({ pinbar: 1, sequence: { restartContours: true } }), options),
      ]);
      ordered.sequence.forEach((report, i) => {
        const other = restarted.sequence[i]!;
        expect(other.travelAfterMm).toBeLessThanOrEqual(report.travelAfterMm);
        expect(other.lineMm).toBeCloseTo(report.lineMm, 6);
        expect(other.travelBeforeMm).toBe(report.travelBeforeMm);
      });
      expect(restarted.sequence.some(({ restarted: count }) => count > 0)).toBe(true);
    }
  });
});

describe.each(['tuck-carton', 'counters', 'sleeve'])('the sample %s', (name) => {
  it('holds the same bytes in another order, takes no longer way, and leaves the print alone', async () => {
    const bytes = new Uint8Array(readFileSync(`samples/${name}.svg`));
    const rules = name === 'sleeve' ? JSON.parse(readFileSync('samples/sleeve.ticket.json', 'utf8')) : { pinbar: 1 };
    const plain = await split(bytes, readTicket(rules), { fileName: `${name}.svg`, skipChecks: true });
    const job = await split(bytes, readTicket({ ...rules, sequence: {} }), {
      fileName: `${name}.svg`,
      skipChecks: true,
    });
    expect(job.sequence.length).toBeGreaterThan(1);
    expect(plain.sequence).toEqual([]);
    for (const report of job.sequence) expect(report.travelAfterMm).toBeLessThanOrEqual(report.travelBeforeMm);
    for (const [index, file] of job.files.entries()) {
      const [one, other] = [joinPieces(plain.files[index]!.pieces), joinPieces(file.pieces)];
      expect([...other].sort((a, b) => a - b)).toEqual([...one].sort((a, b) => a - b));
      if (job.assignment.passes[index]!.role === 'print') expect(file).toEqual(plain.files[index]);
    }
  });
});
