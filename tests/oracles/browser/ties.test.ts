// Lengths of passes with ties as a browser measures them: cuts and ties together are the plain lines.
import { readFileSync } from 'node:fs';
import svgpath from 'svgpath';
import { expect, it } from 'vitest';
import { joinPieces, type OutputFile, readTicket, split } from '../../../src/index.js';
import { describeWith } from '../../house/witnesses.js';
import { openBrowser } from './ask-browser.js';

/** The browser makes chords of curves, no finer for small ones (a circle of 3 units comes out 2.5 % short): it is asked about larger ones. */
const MAGNIFIED = 500;
/** Its curves for arcs are 3e-4 of the radius off, and it keeps lengths in single precision: share of the length. */
const SHARE = 5e-5;

/** Path data of all lines of a file, circles and the one rounded rectangle by hand, magnified by another library. */
function listPaths(text: string): readonly string[] {
  return [...text.matchAll(/<(path|circle|rect) class="(?:cut|tear)"[^>]*>/g)].map(([tag, kind]) => {
    const read = (name: string): number => Number(new RegExp(` ${name}="([^"]*)"`).exec(tag!)![1]);
    let d = / d="([^"]*)"/.exec(tag!)?.[1] ?? '';
    if (kind === 'circle') {
      const [x, y, r] = ['cx', 'cy', 'r'].map(read) as [number, number, number];
      d = `M${x - r} ${y}a${r} ${r} 0 0 1 ${2 * r} 0a${r} ${r} 0 0 1 ${-2 * r} 0z`;
    }
    if (kind === 'rect') {
      const [x, y, w, h, r] = ['x', 'y', 'width', 'height', 'rx'].map(read) as [number, number, number, number, number];
      const turn = (dx: number, dy: number): string => `a${r} ${r} 0 0 1 ${dx} ${dy}`;
      d = `M${x + r} ${y}h${w - 2 * r}${turn(r, r)}v${h - 2 * r}${turn(-r, r)}h${2 * r - w}${turn(-r, -r)}v${2 * r - h}${turn(r, -r)}z`;
    }
    return svgpath(d).scale(MAGNIFIED).toString();
  });
}

function textOf(file: OutputFile): string {
  return Buffer.from(joinPieces(file.pieces)).toString('utf8');
}

describeWith('chromium', 'the lengths of a browser', () => {
  it('of cuts and ties add up to the plain pass, and the ties to what is told', { timeout: 120_000 }, async () => {
    const bytes = new Uint8Array(readFileSync('samples/counters.svg'));
    const options = { fileName: 'counters.svg', skipChecks: true };
    const ticket = (ties: unknown) => readTicket({ pinbar: 1, marks: { wanted: false }, ...(ties as object) });
    const plain = await split(bytes, ticket({}), options);
    const job = await split(
      bytes,
      ticket({
        ties: [
          { pass: 'perforate', mode: 'pattern', tiesPass: true },
          { pass: 'cut', mode: 'hold', tiesPass: true },
        ],
      }),
      options,
    );
    const { browser, page } = await openBrowser();
    try {
      const measure = (text: string): Promise<number> =>
        page.evaluate<number>(
          `${JSON.stringify(listPaths(text))}.reduce((sum, d) => {
            const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
            path.setAttribute('d', d);
            return sum + path.getTotalLength() / ${MAGNIFIED};
          }, 0)`,
        );
      for (const [at, index] of [2, 3].entries()) {
        const [before, cuts, ties] = [plain.files[index]!, job.files[index]!, job.tieFiles[at]!];
        const [whole, cut, tie] = [
          await measure(textOf(before)),
          await measure(textOf(cuts)),
          await measure(textOf(ties)),
        ];
        const report = job.ties[at]!;
        expect(Math.abs(cut + tie - whole)).toBeLessThan(whole * SHARE);
        expect(Math.abs(tie - report.tiesMm)).toBeLessThan(report.tiesMm * SHARE);
        expect(Math.abs(whole - report.lineMm)).toBeLessThan(whole * SHARE);
      }
    } finally {
      await browser.close();
    }
  });
});
