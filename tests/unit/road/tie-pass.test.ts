// Passes with ties: united with their ties they are the plain pass, told by pinbar's own judge and by another library's points.
import { readFileSync } from 'node:fs';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { joinPieces, readTicket, split, type TieRequest } from '../../../src/index.js';
import { resolveSource, scanBytes } from '../../../src/road/read-artwork.js';
import { tiePass } from '../../../src/road/tie-pass.js';

const HOLD: TieRequest = readTicket({ pinbar: 1, ties: [{ pass: 'cut', mode: 'hold', tiesPass: true }] }).ties![0]!;
const PATTERN: TieRequest = readTicket({
  pinbar: 1,
  ties: [{ pass: 'cut', mode: 'pattern', cutMm: 10, tieMm: 1, tiesPass: true }],
}).ties![0]!;
const NO_CREASES = new Float64Array();

function passOf(body: string) {
  const text = `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200">${body}</svg>`;
  return {
    name: 'art.1-cut.svg',
    pass: { order: 1, name: 'cut', role: 'cutting' as const },
    bytes: new Uint8Array(Buffer.from(text)),
  };
}

function textOf(bytes: Uint8Array | null): string {
  return Buffer.from(bytes ?? []).toString('utf8');
}

/** All path data of a text, one after the other. */
function dataOf(text: string): string {
  return [...text.matchAll(/ d="([^"]*)"/g)].map(([, d]) => d).join('');
}

/** Points along path data as another library draws it, and the length of the chords between them. */
function samplePath(d: string): { readonly points: readonly (readonly [number, number])[]; readonly length: number } {
  const points: [number, number][] = [];
  let length = 0;
  let start: readonly [number, number] = [0, 0];
  svgpath(d)
    .abs()
    .unarc()
    .unshort()
    .iterate((segment, _, x, y) => {
      const [command, ...n] = segment as [string, ...number[]];
      if (command === 'M') {
        start = [n[0]!, n[1]!];
        return;
      }
      const end = command === 'Z' ? start : command === 'H' ? [n[0]!, y] : command === 'V' ? [x, n[0]!] : n.slice(-2);
      const [ex, ey] = end as [number, number];
      const controls =
        command === 'C'
          ? n.slice(0, 4)
          : command === 'Q'
            ? [
                x + (2 * (n[0]! - x)) / 3,
                y + (2 * (n[1]! - y)) / 3,
                ex + (2 * (n[0]! - ex)) / 3,
                ey + (2 * (n[1]! - ey)) / 3,
              ]
            : [x + (ex - x) / 3, y + (ey - y) / 3, ex + (x - ex) / 3, ey + (y - ey) / 3];
      let [px, py] = [x, y];
      for (let i = 0; i <= 400; i += 1) {
        const t = i / 400;
        const s = 1 - t;
        const at = (a: number, b: number, c: number, e: number): number =>
          s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * e;
        const [qx, qy] = [at(x, controls[0]!, controls[2]!, ex), at(y, controls[1]!, controls[3]!, ey)];
        points.push([qx, qy]);
        length += Math.hypot(qx - px, qy - py);
        [px, py] = [qx, qy];
      }
    });
  return { points, length };
}

/** The greatest distance of any point of the first from the chords of the second. */
function greatestDistance(one: string, other: string): number {
  const chords = samplePath(other).points;
  let greatest = 0;
  for (const [x, y] of samplePath(one).points.filter((_, i) => i % 40 === 0)) {
    let least = Infinity;
    for (let i = 1; i < chords.length; i += 1) {
      const [ax, ay] = chords[i - 1]!;
      const [dx, dy] = [chords[i]![0] - ax, chords[i]![1] - ay];
      const square = dx * dx + dy * dy;
      // Chords over a jump of the pen are none.
      if (square > 4) continue;
      const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
      least = Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
    }
    greatest = Math.max(greatest, least);
  }
  return greatest;
}

const CURVED =
  'M40 40C60 10 120 10 140 40S200 70 220 40A30 50 20 0 1 240 120Q200 160 140 150T60 150C30 150 20 70 40 40Z';

describe('a tied pass', () => {
  it.each([
    ['held', HOLD],
    ['in a pattern', PATTERN],
  ])('%s is, with its ties, the plain line to a thousandth of a mm, as another library sees it', (_, request) => {
    const pass = passOf(`<path fill="none" stroke="#303" d="${CURVED}"/>`);
    const { bytes, ties, report, findings } = tiePass(pass, request, NO_CREASES, {});
    expect(findings.filter(({ code }) => code === 'ties/left-whole')).toEqual([]);
    const both = dataOf(textOf(bytes)) + dataOf(textOf(ties));
    // The other library makes curves of arcs: the written pieces and the plain arc are each off by its error, 3e-4 of the radius at most.
    expect(greatestDistance(both, CURVED)).toBeLessThan(0.02);
    expect(greatestDistance(CURVED, both)).toBeLessThan(0.02);
    const straight = CURVED.replace('A30 50 20 0 1 240 120', 'C250 60 260 100 240 120');
    const tied = tiePass(passOf(`<path fill="none" stroke="#303" d="${straight}"/>`), request, NO_CREASES, {});
    const united = dataOf(textOf(tied.bytes)) + dataOf(textOf(tied.ties));
    expect(greatestDistance(united, straight)).toBeLessThan(0.001);
    expect(greatestDistance(straight, united)).toBeLessThan(0.001);
    expect(samplePath(united).length).toBeCloseTo(samplePath(straight).length, 2);
    expect(samplePath(dataOf(textOf(tied.ties))).length).toBeCloseTo(tied.report.tiesMm, 3);
    expect(report.lineMm - report.tiesMm).toBeGreaterThan(0);
  });

  it('gives ties of the length asked for where copies are scaled on their sheet', () => {
    const square = passOf('<path fill="none" stroke="#303" d="M40 40H140V100H40Z"/>');
    const one = tiePass(square, HOLD, NO_CREASES, {}).report;
    const { report, ties } = tiePass({ ...square, scale: 1.5 }, HOLD, NO_CREASES, {});
    expect(report.lineMm).toBeCloseTo(1.5 * one.lineMm, 9);
    expect(report.tiesMm).toBeCloseTo(report.ties * HOLD.tieMm, 9);
    expect(samplePath(dataOf(textOf(ties))).length).toBeCloseTo(report.tiesMm / 1.5, 6);
    // 480 mm on the sheet: a tie each 120 mm at most, but for their own lengths.
    expect(report.ties).toBe(Math.max(HOLD.leastPerPiece, Math.ceil(480 / (HOLD.freeMm + HOLD.tieMm))));
    expect(report.longestFreeMm).toBeCloseTo((480 - report.tiesMm) / report.ties, 6);
  });

  it('counts ties and lengths as closed forms do', () => {
    // A circle of 2 pi 35 = 219.911 mm: twenty cuts and ties of 11 are 220.
    const { report, bytes, ties } = tiePass(
      passOf('<circle fill="none" stroke="#303" cx="100" cy="100" r="35"/>'),
      PATTERN,
      NO_CREASES,
      {},
    );
    expect(report).toMatchObject({ ties: 20, lines: 1, tiedLines: 1, tiesFile: 'art.1-cut-ties.svg', mode: 'pattern' });
    expect(report.lineMm).toBeCloseTo(70 * Math.PI, 9);
    expect(report.tiesMm).toBeCloseTo((70 * Math.PI) / 11, 9);
    expect(report.longestFreeMm).toBeCloseTo((70 * Math.PI) / 22, 9);
    expect(report.stretch).toBeCloseTo((70 * Math.PI) / 220 - 1, 12);
    expect(textOf(bytes).match(/M/g)).toHaveLength(20);
    expect(textOf(bytes)).toMatch(/<path fill="none" stroke="#303" d="M[^"]*"\/>/);
    expect(textOf(bytes)).not.toContain(' r=');
    expect(textOf(ties).match(/M/g)).toHaveLength(20);
    // A quarter of the ellipse 100 x 50 has 121.10560275684605.
    const ellipse = tiePass(
      passOf('<path fill="none" stroke="#303" d="M110 10A100 50 0 0 1 10 60"/>'),
      PATTERN,
      NO_CREASES,
      {},
    );
    expect(ellipse.report.lineMm).toBeCloseTo(121.10560275684605, 9);
    expect(ellipse.report.tiesMm).toBeCloseTo(121.10560275684605 * (10 / 120), 1);
  });

  it('measures on the artboard, whatever the units of the shape', () => {
    const scaled = '<g transform="matrix(0 -2 4 0 20 180)"><path fill="none" stroke="#303" d="M0 0H50"/></g>';
    const { report, bytes } = tiePass(passOf(scaled), PATTERN, NO_CREASES, {});
    expect(report.lineMm).toBeCloseTo(100, 9);
    expect(report.ties).toBe(8);
    // Nine cuts of 10 and eight ties of 1 make 98: in units of the shape a cut is 5 times 100/98.
    expect(dataOf(textOf(bytes))).toMatch(/^M0 0L5\.102040\d* 0M5\.612244\d* 0/);
  });

  it('writes dashes and round ends as plain stretches, and touches nothing else', () => {
    const dashed =
      '<path id="a" class="tear" style="stroke:#303" stroke-dasharray="2 1" stroke-linecap="round" fill="none" d="M10 10H120"/>';
    const plain = '<path id="b" stroke="#303" fill="none" d="M10 30H12"/>';
    const { bytes } = tiePass(passOf(`<!--x--><g id="Cut">${dashed}${plain}</g>`), PATTERN, NO_CREASES, {});
    expect(textOf(bytes)).toContain(
      'id="a" class="tear" style="stroke:#303;stroke-dasharray:none!important;stroke-linecap:butt!important"',
    );
    expect(textOf(bytes)).toContain(`<!--x--><g id="Cut">`);
    expect(textOf(bytes)).toContain(plain);
    const artwork = resolveSource(scanBytes(bytes, {}), {}, null);
    expect(artwork.shapes.map(({ paint }) => paint.strokeDasharray)).toEqual([[], []]);
  });

  it('keeps clear of the ends of creases', () => {
    const pxPerMm = 96 / 25.4;
    const ends = Float64Array.of(100 * pxPerMm, 40 * pxPerMm);
    const pass = passOf('<path fill="none" stroke="#303" d="M20 40H180V160H20Z"/>');
    const request = { ...HOLD, leastPerPiece: 2, freeMm: 279, creaseEndClearMm: 90 };
    for (const creaseEnds of [NO_CREASES, ends]) {
      const { ties } = tiePass(pass, request, creaseEnds, {});
      const near = samplePath(dataOf(textOf(ties))).points.filter(([x, y]) => Math.hypot(x - 100, y - 40) < 90);
      if (creaseEnds === ends) expect(near).toEqual([]);
      else expect(near.length).toBeGreaterThan(0);
    }
  });

  it('leaves whole what it cannot write, and says why', () => {
    const filled = '<path fill="#eee" stroke="#303" d="M20 40H180V160H20Z"/>';
    const used = '<rect id="r" fill="none" stroke="#303" width="50" height="50"/><use href="#r" x="100"/>';
    const styled = '<style>rect{stroke:#c00;fill:none}</style><rect x="9" y="9" width="80" height="80"/>';
    const whys = [filled, used, styled].map((body) => {
      const { findings, report, bytes, ties } = tiePass(passOf(body), HOLD, NO_CREASES, {});
      expect(report.ties).toBe(0);
      expect(ties).toBeNull();
      expect(textOf(bytes)).toContain(body);
      return findings.filter(({ code }) => code === 'ties/left-whole').map(({ data }) => data);
    });
    expect(whys).toEqual([
      [{ why: 'it is filled', count: 1, ids: [] }],
      [{ why: 'a use draws it', count: 2, ids: ['r', 'r'] }],
      [{ why: 'style rules would see it otherwise once it is written as stretches', count: 1, ids: [] }],
    ]);
  });

  it('ties basic shapes with prefixes, end tags and titles', () => {
    const text = `<s:svg xmlns:s="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200"><s:rect pathLength="9" x="20" y="20" width="80" height="60" fill="none" stroke="#303"><s:title>Box</s:title></s:rect></s:svg>`;
    const { bytes, report } = tiePass(
      { ...passOf(''), bytes: new Uint8Array(Buffer.from(text)) },
      HOLD,
      NO_CREASES,
      {},
    );
    expect(report.ties).toBe(3);
    expect(textOf(bytes)).toMatch(/<s:path fill="none" stroke="#303" d="M[^"]*"><s:title>Box<\/s:title><\/s:path>/);
  });

  it('keeps the marks in both files', () => {
    const marks = '<g id="pinbar-marks"><path stroke="#000" d="M1 1H9"/></g>';
    const { bytes, ties } = tiePass(
      passOf(`<path fill="none" stroke="#303" d="M20 40H180V160H20Z"/>${marks}`),
      HOLD,
      NO_CREASES,
      {},
    );
    expect(textOf(bytes)).toContain(marks);
    expect(textOf(ties)).toContain(marks);
  });
});

describe('a job with ties', () => {
  it('has them in its files, its manifest and a pass of their own, and no byte changes where none are asked for', async () => {
    const bytes = new Uint8Array(readFileSync('samples/counters.svg'));
    const options = { fileName: 'counters.svg', skipChecks: true };
    const plain = await split(bytes, readTicket({ pinbar: 1 }), options);
    expect([plain.ties, plain.tieFiles]).toEqual([[], []]);
    const ticket = {
      pinbar: 1,
      ties: [
        { pass: 'cutting', mode: 'hold', tiesPass: true },
        { pass: 'perforate', mode: 'pattern' },
      ],
    };
    const job = await split(bytes, readTicket(ticket), options);
    expect(job.ties.map(({ pass, mode }) => [pass, mode])).toEqual([
      ['perforate', 'pattern'],
      ['cut', 'hold'],
    ]);
    expect(job.tieFiles.map(({ name }) => name)).toEqual(['counters.4-cut-ties.svg']);
    expect(job.outcome).toBe('in-register');
    const same = job.files.map((file, i) => file.sha256 === plain.files[i]!.sha256);
    expect(same).toEqual([true, true, false, false]);
    for (const { ties, placesMm } of job.ties) expect(placesMm).toHaveLength(2 * ties);
    const manifest = JSON.parse(Buffer.from(joinPieces(job.manifest!.pieces)).toString('utf8'));
    expect(manifest.ties[1]).not.toHaveProperty('placesMm');
    expect(manifest.ties[1]).toMatchObject({ tiesSha256: job.tieFiles[0]!.sha256, ties: job.ties[1]!.ties });
    expect(manifest.ticket.ties[1]).toMatchObject({ cutMm: 6, tieMm: 1, tiesPass: false });
  });

  it('says where each tie stands: in the gap, halfway', () => {
    const line = '<path d="M20 30H120" fill="none" stroke="#d00" stroke-width="0.25"/>';
    const moved = `<g transform="translate(5 10)">${line}</g>`;
    for (const [body, dy] of [
      [line, 0],
      [moved, 10],
    ] as const) {
      const { bytes, report } = tiePass({ ...passOf(body), scale: 1 }, PATTERN, NO_CREASES, {});
      const cuts = [...dataOf(textOf(bytes)).matchAll(/M([\d.]+)[ ,][\d.]+[HL]([\d.]+)/g)].map((cut) =>
        cut.slice(1).map(Number),
      );
      const dx = dy === 0 ? 0 : 5;
      const middles = cuts.slice(1).map(([start], i) => (cuts[i]![1]! + start!) / 2 + dx);
      expect(middles.length).toBeGreaterThan(5);
      expect(report.placesMm.filter((_, at) => at % 2 === 0).map((x) => x.toFixed(3))).toEqual(
        middles.map((x) => x.toFixed(3)),
      );
      expect(new Set(report.placesMm.filter((_, at) => at % 2 === 1).map((y) => y.toFixed(3)))).toEqual(
        new Set([(30 + dy).toFixed(3)]),
      );
    }
  });
});
