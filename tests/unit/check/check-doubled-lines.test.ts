// Lines on each other: lengths by hand, at the bound and one past it.
import { describe, expect, it } from 'vitest';
import { checkDoubledLines } from '../../../src/check/check-doubled-lines.js';
import { readTicket } from '../../../src/index.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { gatherFacts } from '../../../src/road/gather-facts.js';
import { prepareJob } from '../../../src/road/prepare-job.js';
import { BLANK, briefly, type DieLayers, dieFacts } from './die-facts.js';

async function find(layers: DieLayers, checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkDoubledLines(await dieFacts(layers, checks)));
}

describe('checkDoubledLines', () => {
  it('lets half a millimetre be, less than that', async () => {
    expect(await find({ cut: [BLANK, 'M49.8 50H50.49'] })).toEqual([]);
    expect(await find({ cut: [BLANK, 'M49.8 50H50.5'] })).toEqual([['line-doubled', 1, 0.5]]);
    expect(await find({ cut: [BLANK, 'M49.8 50H50.9'] }, { overlapMm: 1 })).toEqual([]);
  });

  it('measures what lies on each other, however the lines run', async () => {
    expect(await find({ cut: [BLANK, 'M90 50H70'] })).toEqual([['line-doubled', 1, 20]]);
    expect(await find({ cut: [BLANK, BLANK] })).toEqual([['line-doubled', 1, 320]]);
    expect(await find({ cut: [BLANK, 'M50 110H150V50H50Z'] })).toEqual([['line-doubled', 1, 320]]);
    expect(await find({ cut: ['M60 80H100H70'] })).toEqual([['line-doubled', 1, 30]]);
    expect(await find({ cut: ['M60 80H100', 'M60 80H100', 'M60 80H100'] })).toEqual([['line-doubled', 1, 80]]);
  });

  it('counts places, not lines', async () => {
    expect(await find({ cut: [BLANK, 'M60 50H70M80 50H90'] })).toEqual([['line-doubled', 2, 20]]);
    expect(await find({ cut: ['M60 50H70M80 50H90', BLANK] })).toEqual([['line-doubled', 2, 20]]);
    expect(await find({ cut: [BLANK, 'M60 50H70', 'M70 50H90'] })).toEqual([['line-doubled', 1, 30]]);
    expect(await find({ cut: ['M60 50H70', 'M70 50H90', BLANK] })).toEqual([['line-doubled', 1, 30]]);
    // Around the point where a closed line starts.
    expect(await find({ cut: ['M50 70V50H80', BLANK] })).toEqual([['line-doubled', 1, 50]]);
  });

  it('tells passes apart that share a layer', async () => {
    const lines = (stroke: string, ...paths: readonly string[]): string =>
      paths.map((d) => `<path d="${d}" fill="none" stroke="${stroke}" stroke-width="0.2"/>`).join('');
    const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200"><g id="Die">${
      lines('#d6336c', BLANK, 'M60 50H80', 'M120 110V50') + lines('#1d4ed8', 'M100 50V110', 'M100 60V70', 'M120 60V65')
    }</g></svg>`;
    const ticket = readTicket({
      pinbar: 1,
      rules: [
        { pass: 'cutting', stroke: '#d6336c' },
        { pass: 'creasing', stroke: '#1d4ed8' },
      ],
    });
    const facts = gatherFacts(await prepareJob(new TextEncoder().encode(drawing), ticket, {}), ticket);
    expect(
      checkDoubledLines(facts).map(({ code, message, data }) => [code, message.slice(0, 23), data.measuredMm]),
    ).toEqual([
      ['check/line-doubled', 'Lines of the pass creas', 10],
      ['check/line-doubled', 'Lines of the pass cut l', 20],
      ['check/line-on-line', 'Lines of the pass cut l', 5],
    ]);
  });

  it('takes lines for one within 0.02 mm', async () => {
    expect(await find({ cut: [BLANK, 'M60 50.019H90'] })).toEqual([['line-doubled', 1, 30]]);
    expect(await find({ cut: [BLANK, 'M60 50.021H90'] })).toEqual([]);
    // On at one end only.
    expect(await find({ cut: [BLANK, 'M60 50.01L90 50.03'] })).toEqual([]);
  });

  it('finds arcs on a circle', async () => {
    const found = await find({ cut: ['<circle cx="100" cy="100" r="30"/>', 'M130 100A30 30 0 0 1 100 130'] });
    expect(found).toEqual([['line-doubled', 1, expect.any(Number)]]);
    // A quarter of the circle; a flattened arc is shorter by less than 0.02 mm in 47.
    expect(Math.abs((found[0] as readonly number[])[2]! - 15 * Math.PI)).toBeLessThan(0.02);
  });

  it('lets lines cross and meet end to end', async () => {
    expect(await find({ cut: [BLANK, 'M100 40V60', 'M150 50H170', 'M20 50H50'] })).toEqual([]);
  });

  it('tells lines of two passes on each other', async () => {
    expect(await find({ crease: ['M60 50H100'], cut: [BLANK] })).toEqual([['line-on-line', 1, 40]]);
    expect(await find({ crease: ['M60 49.8V50.49'], cut: ['M60 50V40'] })).toEqual([]);
    expect(await find({ crease: ['M60 50H60.49'], cut: [BLANK] })).toEqual([]);
    expect(await find({ crease: ['M60 50H60.5'], cut: [BLANK] })).toEqual([['line-on-line', 1, 0.5]]);
  });
});
