// Creases that stop short, run over the cut or fold nothing: lengths by hand, at the bound and one past it.
import { describe, expect, it } from 'vitest';
import { checkCreaseEnds } from '../../../src/check/check-crease-ends.js';
import type { CheckSettings } from '../../../src/model/check-settings.js';
import { factsOf } from './carton-facts.js';
import { BLANK, briefly, dieFacts, drawDie } from './die-facts.js';

type Point = readonly [number, number];
type Line = readonly Point[];

async function find(crease: readonly string[], checks: Partial<CheckSettings> = {}): Promise<readonly unknown[]> {
  return briefly(checkCreaseEnds(await dieFacts({ crease, cut: [BLANK] }, checks)));
}

describe('checkCreaseEnds', () => {
  it('allows half a millimetre short of the line ahead and nothing more', async () => {
    expect(await find(['M100 50V110'])).toEqual([]);
    expect(await find(['M100 50.5V110'])).toEqual([]);
    expect(await find(['M100 50.51V110'])).toEqual([['crease-short', 1, 0.51]]);
    expect(await find(['M100 50.6V109.2'])).toEqual([['crease-short', 2, 0.8]]);
    expect(await find(['M100 50.6V109.2'], { creaseShortMm: 0.7 })).toEqual([['crease-short', 1, 0.8]]);
  });

  it('measures along the crease, not across', async () => {
    // A slope of 3 to 4: 0.6 mm off the cut are 0.75 mm along it.
    expect(await find(['M100 50.6L120 77.2667'])).toEqual([
      ['crease-short', 1, 0.75],
      ['crease-idle', 1, expect.any(Number)],
    ]);
  });

  it('looks no further ahead than the reach', async () => {
    expect(await find(['M100 51.99V110'])).toEqual([['crease-short', 1, 1.99]]);
    expect(await find(['M100 52.01V110'])).toEqual([['crease-idle', 1, 57.99]]);
    expect(await find(['M100 52.01V110'], { creaseReachMm: 3 })).toEqual([['crease-short', 1, 2.01]]);
  });

  it('is short too where the last stretch is shorter than the snap, or lies on a copy', async () => {
    const short = async (crease: readonly string[]): Promise<unknown> => (await find(crease))[0];
    expect(await short(['M100 110V51.04V51'])).toEqual(['crease-short', 1, 1]);
    expect(await short(['M100 110V51.04', 'M100 51.04V51'])).toEqual(['crease-short', 1, 1]);
    expect(await short(['M100 110V51', 'M100 51V110'])).toEqual(['crease-short', 2, 1]);
    expect(await short(['M100 110V51', 'M100 80V51'])).toEqual(['crease-short', 2, 1]);
  });

  it('takes the end of a curve by its last direction', async () => {
    expect(await find(['M120 110Q120 60 120 50.8'])).toEqual([['crease-short', 1, 0.8]]);
    // Half a millimetre beside the cut, but not on the way to it.
    expect((await find(['M100 110V60A9.2 9.2 0 0 1 109.2 50.8'])).map((brief) => (brief as string[])[0])).toEqual([
      'crease-idle',
    ]);
  });

  it('allows half a millimetre over the cut and nothing more', async () => {
    expect(await find(['M100 49.5V110'])).toEqual([]);
    expect(await find(['M100 49.49V110'])).toEqual([['crease-over-cut', 1, 0.51]]);
    expect(await find(['M100 49.49V112'])).toEqual([['crease-over-cut', 2, 2]]);
    expect(await find(['M100 49.49V112'], { creaseOverMm: 1 })).toEqual([['crease-over-cut', 1, 2]]);
  });

  it('tells a crease that ends within a panel, longer than the reach', async () => {
    expect(await find(['M100 80V110'])).toEqual([['crease-idle', 1, 30]]);
    expect(await find(['M100 108V110'])).toEqual([]);
    expect(await find(['M100 107.99V110'])).toEqual([['crease-idle', 1, 2.01]]);
  });

  /** The same, all of it turned by an angle, coordinates written to some digits. */
  async function findTurned(lines: readonly Line[], angle: number, digits: number): Promise<readonly unknown[]> {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const place = ([x, y]: Point): string =>
      `${(100 + cos * (x - 100) - sin * (y - 80)).toFixed(digits)} ${(80 + sin * (x - 100) + cos * (y - 80)).toFixed(digits)}`;
    const write = (points: Line): string => `M${points.map(place).join('L')}`;
    const cut = `${write([
      [50, 50],
      [150, 50],
      [150, 110],
      [50, 110],
    ])}Z`;
    return briefly(checkCreaseEnds(await factsOf(drawDie({ perforation: lines.map(write), cut: [cut] }))));
  }
  const ANGLES: readonly number[] = Array.from({ length: 40 }, (_, step) => step * 0.157);

  it('lets be a perforation whose dashes are drawn one by one, however it lies', async () => {
    const dashes = Array.from(
      { length: 11 },
      (_, at): Line => [
        [100, 50 + 5.6 * at],
        [100, 54 + 5.6 * at],
      ],
    );
    for (const digits of [2, 3, 12]) {
      for (const angle of ANGLES) expect(await findTurned(dashes, angle, digits)).toEqual([]);
    }
    expect(await findTurned(dashes.slice(0, 10), 0, 3)).toEqual([['crease-idle', 1, 54.4]]);
    // Dashes that stop short of a line across are short all the same.
    expect(
      await findTurned(
        [
          ...dashes.slice(0, 10),
          [
            [90, 106],
            [110, 106],
          ],
        ],
        0.3,
        6,
      ),
    ).toEqual([
      ['crease-short', 1, 1.6],
      ['crease-idle', 1, expect.any(Number)],
    ]);
  });

  it('measures what runs over the cut along it, whatever rounding says where lines in line cross', async () => {
    for (const angle of ANGLES) {
      const [found, ...more] = await findTurned(
        [
          [
            [70, 50],
            [150.7, 50],
          ],
        ],
        angle,
        13,
      );
      expect([found, more]).toEqual([['crease-over-cut', 1, 0.7], []]);
    }
  });
});
