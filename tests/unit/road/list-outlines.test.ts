// Lines as flat arrays, by hand.
import { describe, expect, it } from 'vitest';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { findShape } from '../../../src/page/find-shape.js';
import { FACES, listOutlines, type Outlines } from '../../../src/road/list-outlines.js';
import { surveyArtwork } from '../../../src/road/survey-artwork.js';

const ART = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 200 100">
<g id="A"><path d="M20 20H60V40" fill="none" stroke="#c2185b" stroke-width="1"/></g>
<rect x="100" y="20" width="40" height="40" fill="#2f6f5e" stroke="#1d4ed8" stroke-width="2"/>
<circle cx="160" cy="80" r="10" fill="url(#none) #123456"/>
<rect width="5" height="5" fill="none"/>
</svg>`;

async function list(): Promise<Outlines> {
  const { source, artwork } = await surveyArtwork(encodeUtf8(ART), {}, null);
  return listOutlines(source, artwork);
}

describe('outlines', () => {
  it('hold every line in mm', async () => {
    const { points, runStarts, runClosed, shapeRuns } = await list();
    expect([...shapeRuns]).toEqual([0, 1, 2, 3, 3]);
    expect([...runClosed]).toEqual([0, 1, 1]);
    const run = (i: number): readonly number[] => [...points.slice(2 * runStarts[i]!, 2 * runStarts[i + 1]!)];
    const near = (actual: readonly number[], wanted: readonly number[]): void => {
      expect(actual).toHaveLength(wanted.length);
      for (const [i, value] of wanted.entries()) expect(actual[i]).toBeCloseTo(value, 4);
    };
    near(run(0), [10, 10, 30, 10, 30, 20]);
    near(run(1), [50, 10, 70, 10, 70, 30, 50, 30]);
    expect(run(2).length).toBeGreaterThan(20);
  });

  it('hold faces, colours, widths, layers and boxes', async () => {
    const outlines = await list();
    expect([...outlines.faces]).toEqual([FACES.line, FACES.outlinedArea, FACES.area, FACES.nothing]);
    expect([...outlines.fills].slice(0, 3)).toEqual([-1, 0x2f6f5e, 0x123456]);
    expect([...outlines.strokes].slice(0, 3)).toEqual([0xc2185b, 0x1d4ed8, -1]);
    expect(outlines.widthsMm[1]).toBeCloseTo(1, 5);
    expect([...outlines.layers]).toEqual([0, -1, -1, -1]);
    expect(outlines.strokeKeys).toEqual(['#c2185b', '#1d4ed8']);
    expect([...outlines.strokeKey]).toEqual([0, 1, -1, -1]);
    // A bound: at least the box with its stroke, and not far from it.
    expect(outlines.boxes[4]).toBeLessThanOrEqual(49.5);
    expect(outlines.boxes[4]).toBeGreaterThan(45);
  });
});

describe('curves', () => {
  /** The circle of a drawing that a comment makes as long as that. */
  async function listCircle(
    bytes: number,
  ): Promise<{ readonly radii: readonly number[]; readonly chordMm: number; readonly widest: number }> {
    const art = ART.replace('</svg>', `<!--${'.'.repeat(bytes - ART.length - 7)}--></svg>`);
    expect(art).toHaveLength(bytes);
    const { source, artwork } = await surveyArtwork(encodeUtf8(art), {}, null);
    const { points, runStarts, chordMm } = listOutlines(source, artwork);
    const own = points.slice(2 * runStarts[2]!, 2 * runStarts[3]!);
    const pairs = Array.from({ length: own.length / 2 }, (_, i) => [own[2 * i]! - 80, own[2 * i + 1]! - 40] as const);
    const radii = pairs.map(([x, y]) => Math.hypot(x, y));
    const middles = pairs.map(([x, y], i) => {
      const [nextX, nextY] = pairs[(i + 1) % pairs.length]!;
      return 5 - Math.hypot((x + nextX) / 2, (y + nextY) / 2);
    });
    return { radii, chordMm, widest: Math.max(...middles) };
  }

  it.each([
    [1_000, 0.005],
    [500_000, 0.005],
    [2_000_000, 0.02],
    [5_000_000, 0.05],
  ])('of a drawing of %i bytes leave the circle by no more than %f mm', async (bytes, allowed) => {
    const { radii, chordMm, widest } = await listCircle(bytes);
    expect(chordMm).toBeCloseTo(allowed, 9);
    for (const radius of radii) expect(radius).toBeCloseTo(5, 4);
    expect(widest).toBeLessThanOrEqual(allowed + 1e-5);
    // And not finer than that by much: that is what takes the time.
    expect(widest).toBeGreaterThan(allowed / 4);
  });
});

describe('a shape under a point', () => {
  it.each([
    [20, 10.2, 0],
    [20, 12, -1],
    [60, 20, 1],
    [50.1, 20, 1],
    [80, 40, 2],
    [84.5, 44.5, -1],
    [20, 15, -1],
  ])('%f, %f mm: %i', async (xMm, yMm, shape) => {
    expect(findShape(await list(), null, { xMm, yMm, withinMm: 0.5 })).toBe(shape);
  });

  it('is none that is left out', async () => {
    const passes = new Int16Array([0, -2, 0, 0]);
    const sorted = { passes, fillPasses: new Int16Array(4).fill(-3), reasons: new Int32Array(4) };
    expect(findShape(await list(), sorted, { xMm: 60, yMm: 20, withinMm: 0.5 })).toBe(-1);
  });
});
