// Checks of lines on curves: arcs and cubics with known faults, however they lie, drawn from either end and parted.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCreaseDistance } from '../../src/check/check-crease-distance.js';
import { checkDoubledLines } from '../../src/check/check-doubled-lines.js';
import type { Check } from '../../src/check/check-facts.js';
import { checkLoosePieces } from '../../src/check/check-loose-pieces.js';
import { checkOpenOutline } from '../../src/check/check-open-outline.js';
import { checkSelfCrossing } from '../../src/check/check-self-crossing.js';
import { checkTies } from '../../src/check/check-ties.js';
import { checkTurns } from '../../src/check/check-turns.js';
import { factsOf } from '../unit/check/carton-facts.js';
import { anyPlacing, drawArt, type Placing } from './move-art.js';

const CHECKS: readonly Check[] = [
  ...[checkOpenOutline, checkDoubledLines, checkCreaseDistance, checkSelfCrossing, checkTurns, checkTies],
  checkLoosePieces,
];

const LINE = 'fill="none" stroke="#d6336c" stroke-width=".2"';

type Point = readonly [number, number];

/** A cubic from its first to its last point. */
type Cubic = readonly [Point, Point, Point, Point];

interface Lines {
  readonly crease?: readonly string[];
  readonly cut: readonly string[];
}

type Brief = readonly [code: string, count: number, value: number | null];

async function find({ crease = [], cut }: Lines, how: Placing): Promise<readonly Brief[]> {
  const write = (list: readonly string[]): string =>
    list.map((d) => (d.startsWith('<') ? d : `<path d="${d}" ${LINE}/>`)).join('');
  const svg = drawArt(
    [
      ['Crease', write(crease)],
      ['Cut', write(cut)],
    ],
    [400, 400],
    how,
  );
  const facts = await factsOf(svg, { cutOrder: 'sorted', creaseToCutMm: 2 });
  return CHECKS.flatMap((check) => check(facts)).map(({ code, data }): Brief => {
    const value = data.measuredMm ?? data.areaMm2 ?? data.measured;
    return [code.replace('check/', ''), Number(data.count), value === undefined ? null : Number(value)];
  });
}

/** Holds findings against what was built in. */
function expectFound(found: readonly Brief[], wanted: readonly Brief[], tolerance: number): void {
  expect(found.map(([code, count]) => `${code} ${count}`)).toEqual(wanted.map(([code, count]) => `${code} ${count}`));
  for (const [place, [, , value]] of wanted.entries()) {
    if (value !== null) expect(Math.abs(found[place]![2]! - value)).toBeLessThan(tolerance);
  }
}

const polar = (r: number, angle: number): string => `${r * Math.cos(angle)} ${r * Math.sin(angle)}`;

/** An arc around (0, 0) from one angle to another, at most half a turn on. */
const arc = (r: number, from: number, to: number): string =>
  `M${polar(r, from)}A${r} ${r} 0 0 ${to > from ? 1 : 0} ${polar(r, to)}`;

const ROUND = `<circle r="80" ${LINE}/>`;
const hundredths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(100 * min), max: Math.round(100 * max) }).map((value) => value / 100);

/** Both halves of a cubic, parted at a share of it (de Casteljau). */
function partCubic([a, b, c, d]: Cubic, share: number): readonly [Cubic, Cubic] {
  const mix = (p: Point, q: Point): Point => [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1])];
  const [ab, bc, cd] = [mix(a, b), mix(b, c), mix(c, d)];
  const [abc, bcd] = [mix(ab, bc), mix(bc, cd)];
  const middle = mix(abc, bcd);
  return [
    [a, ab, abc, middle],
    [middle, bcd, cd, d],
  ];
}

const writeCubic = ([a, b, c, d]: Cubic): string => `M${a.join(' ')}C${b.join(' ')} ${c.join(' ')} ${d.join(' ')}`;
const reverseCubic = ([a, b, c, d]: Cubic): Cubic => [d, c, b, a];

describe('on curves, however they lie,', () => {
  const run = async (
    values: fc.Arbitrary<readonly [number, number, boolean]>,
    property: (p: number, q: number, flag: boolean, how: Placing) => Promise<void>,
  ): Promise<void> =>
    fc.assert(
      fc.asyncProperty(values, anyPlacing, ([p, q, flag], how) => property(p, q, flag, how)),
      { numRuns: 40 },
    );

  it('a crease beside a round cut is as far away as their radii are apart', async () => {
    await run(fc.tuple(hundredths(0.1, 4), hundredths(0.2, 3), fc.boolean()), async (distance, sweep, flag, how) => {
      const r = 80 + (flag ? distance : -distance);
      const wanted: Brief[] = distance < 2 ? [['crease-near-cut', 1, distance]] : [];
      // Both lines may be flattened by 0.005 mm, towards each other or away.
      if (Math.abs(distance - 2) < 0.012) return;
      expectFound(await find({ crease: [arc(r, 1, 1 + sweep)], cut: [ROUND] }, how), wanted, 0.011);
    });
  });

  it('an arc on a circle is doubled over its length', async () => {
    await run(fc.tuple(hundredths(0.02, 3), hundredths(0, 6), fc.boolean()), async (sweep, from, back, how) => {
      const [start, end] = back ? [from + sweep, from] : [from, from + sweep];
      const wanted: Brief[] = [['line-doubled', 1, 80 * sweep]];
      expectFound(await find({ cut: [ROUND, arc(80, start, end)] }, how), wanted, 0.05);
    });
  });

  it('a round window falls out with its area', async () => {
    await run(fc.tuple(hundredths(2, 40), hundredths(-20, 20), fc.boolean()), async (r, x, parted, how) => {
      const halves = [`M${x - r} 0A${r} ${r} 0 0 1 ${x + r} 0`, `M${x - r} 0A${r} ${r} 0 0 0 ${x + r} 0`];
      const cut = parted ? [...halves, ROUND] : [`<circle cx="${x}" r="${r}" ${LINE}/>`, ROUND];
      // Flattening takes less than 0.005 mm off all around.
      const wanted: Brief[] = [['loose-piece', 1, Math.PI * r * r]];
      expectFound(await find({ cut }, how), wanted, 2 * Math.PI * r * 0.005);
    });
  });

  it('an opening in an arc is as wide as its chord', async () => {
    await run(fc.tuple(hundredths(0.06, 20), hundredths(0, 6), fc.boolean()), async (gap, at, _, how) => {
      const half = Math.asin(gap / 160);
      const round = `M${polar(80, at + half)}A80 80 0 1 1 ${polar(80, at - half)}`;
      expectFound(await find({ cut: [round] }, how), [['outline-open', 1, gap]], 1e-4);
    });
  });

  it('a loop crosses itself once, and a round line not at all', async () => {
    await run(fc.tuple(hundredths(10, 70), hundredths(30, 90), fc.boolean()), async (high, wide, loops, how) => {
      // Handles that pass each other make a loop.
      const x = loops ? wide : -wide / 3;
      const d = `M-20 ${high}C${x} ${-high} ${-x} ${-high} 20 ${high}${loops ? '' : 'Z'}`;
      const closed = loops ? `${d}L0 ${high + 30}Z` : d;
      const found = (await find({ cut: [closed] }, how)).filter(([code]) => code === 'outline-crosses-itself');
      expectFound(found, loops ? [['outline-crosses-itself', 1, null]] : [], 0);
    });
  });

  it('ties of a round outline are counted, and lie on no corner', async () => {
    await run(fc.tuple(hundredths(1, 6), hundredths(0, 500), fc.boolean()), async (count, offset, _, how) => {
      const ties = Math.floor(count);
      const dash = (2 * Math.PI * 80) / ties - 0.5;
      const dashes = `stroke-dasharray="${dash} .5" stroke-dashoffset="${offset}"`;
      const wanted: Brief[] = ties < 2 ? [['ties-few', 1, ties]] : [];
      expectFound(await find({ cut: [`<circle r="80" ${LINE} ${dashes}/>`] }, how), wanted, 1e-9);
    });
  });

  it('a cubic parted in two and drawn backwards lies on the whole one', async () => {
    const coordinate = fc.integer({ min: -60, max: 60 });
    const point: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);
    await fc.assert(
      fc.asyncProperty(point, point, hundredths(0.1, 0.9), fc.boolean(), anyPlacing, async (b, c, share, back, how) => {
        const whole: Cubic = [[-60, 0], b, c, [60, 0]];
        const parts = partCubic(whole, share).map((part) => writeCubic(back ? reverseCubic(part) : part));
        const lone = await find({ cut: [writeCubic(whole), writeCubic(whole)] }, how);
        const parted = await find({ cut: [writeCubic(whole), ...parts] }, how);
        const only = (list: readonly Brief[]): readonly Brief[] => list.filter(([code]) => code === 'line-doubled');
        expect(only(lone)).toHaveLength(1);
        expectFound(only(parted), only(lone), 0.05);
      }),
      { numRuns: 40 },
    );
  });
});
