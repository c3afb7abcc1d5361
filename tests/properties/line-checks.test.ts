// Checks of lines find what was built in, however the drawing lies, in whatever units and order, however lines are parted and run.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCreaseDistance } from '../../src/check/check-crease-distance.js';
import { checkCreaseEnds } from '../../src/check/check-crease-ends.js';
import { checkDoubledLines } from '../../src/check/check-doubled-lines.js';
import { checkLineUnderArt } from '../../src/check/check-line-under-art.js';
import { checkLoosePieces } from '../../src/check/check-loose-pieces.js';
import { checkNeedlessPoints } from '../../src/check/check-needless-points.js';
import { checkNotALine } from '../../src/check/check-not-a-line.js';
import { checkOpenOutline } from '../../src/check/check-open-outline.js';
import { checkRunOrder } from '../../src/check/check-run-order.js';
import { checkSelfCrossing } from '../../src/check/check-self-crossing.js';
import { checkTangle } from '../../src/check/check-tangle.js';
import { checkTies } from '../../src/check/check-ties.js';
import { checkTurns } from '../../src/check/check-turns.js';
import type { Finding } from '../../src/model/finding.js';
import { factsOf } from '../unit/check/carton-facts.js';
import { type DieLine, type Expected, FAULT_SETTINGS, faultyCarton, SINGLE_FAULTS } from './faulty-cartons.js';
import {
  type Drawing,
  dice,
  drawing,
  drawLines,
  partLines,
  reverseLines,
  shiftMm,
  shuffleLines,
  turn,
  UPRIGHT,
  unit,
} from './move-lines.js';

const CHECKS = [
  ...[checkTangle, checkNotALine, checkLineUnderArt, checkOpenOutline, checkDoubledLines, checkCreaseEnds],
  ...[checkCreaseDistance, checkSelfCrossing, checkTurns, checkNeedlessPoints, checkTies, checkRunOrder],
  checkLoosePieces,
];

/** Coordinates are written to a millionth of a mm or finer: what is measured keeps four digits. @unit mm, mm2 for areas */
const TOLERANCE = 1e-4;

function measured({ data }: Finding): number | null {
  const { measuredMm, measured: count, areaMm2, left } = data as Readonly<Record<string, number | undefined>>;
  return measuredMm ?? count ?? areaMm2 ?? left ?? null;
}

/** What all checks of lines find in a drawing, by code. */
async function find(lines: readonly DieLine[], how: Drawing): Promise<readonly Expected[]> {
  const facts = await factsOf(drawLines(lines, how), FAULT_SETTINGS);
  return CHECKS.flatMap((check) => check(facts))
    .map((finding) => ({
      code: finding.code.replace('check/', ''),
      count: Number(finding.data.count),
      value: measured(finding),
    }))
    .sort((p, q) => (p.code < q.code ? -1 : 1));
}

function expectSame(found: readonly Expected[], expected: readonly Expected[], tolerance: number = TOLERANCE): void {
  const brief = (list: readonly Expected[]): readonly string[] => list.map(({ code, count }) => `${code} ${count}`);
  expect(brief(found)).toEqual(brief(expected));
  for (const [place, { value }] of expected.entries()) {
    if (value === null) expect(found[place]!.value).toBeNull();
    else expect(Math.abs(found[place]!.value! - value)).toBeLessThan(tolerance);
  }
}

describe('a fault that was built in', () => {
  it.each(Object.entries(SINGLE_FAULTS))('is found with its value, and nothing else: %s', async (_, carton) => {
    await fc.assert(
      fc.asyncProperty(carton, async ({ lines, expected }) => {
        expectSame(await find(lines, UPRIGHT), expected);
      }),
      { numRuns: 12 },
    );
  });

  it('is one of sixteen, and all but the clean one are something to find', () => {
    expect(Object.keys(SINGLE_FAULTS)).toHaveLength(16);
    const lists = Object.entries(SINGLE_FAULTS).map(([name, carton]) => [
      name,
      fc.sample(carton, 1)[0]!.expected.length,
    ]);
    expect(lists.filter(([, count]) => count === 0)).toEqual([['clean', 0]]);
  });
});

describe('faults of a carton are found the same', () => {
  const run = async (
    how: fc.Arbitrary<Partial<Drawing>>,
    change: (lines: readonly DieLine[], keys: readonly number[]) => readonly DieLine[] = (lines) => lines,
    numRuns: number = 60,
  ): Promise<void> =>
    fc.assert(
      fc.asyncProperty(faultyCarton, how, dice, async ({ lines, expected }, more, keys) => {
        expectSame(await find(change(lines, keys), { ...UPRIGHT, ...more }), expected);
      }),
      { numRuns },
    );

  it('turned by any angle, mirrored or not', async () => {
    await run(fc.record({ turn, mirrored: fc.boolean() }));
  });

  it('up to ten metres away', async () => {
    await run(fc.record({ shiftMm }));
  });

  it('in any unit', async () => {
    await run(fc.record({ unit }));
  });

  it('in any order', async () => {
    await run(fc.constant({}), shuffleLines);
  });

  it('drawn from either end', async () => {
    await run(fc.constant({}), reverseLines);
  });

  it('with lines parted in two', async () => {
    await run(fc.constant({}), partLines);
  });

  it('written to a thousandth of a millimetre', async () => {
    await fc.assert(
      fc.asyncProperty(faultyCarton, turn, fc.boolean(), async ({ lines, expected }, angle, mirrored) => {
        const found = await find(lines, { ...UPRIGHT, turn: angle, mirrored, digits: 3 });
        // Half a thousandth each way for each end; an area by its rim, of at most 60 mm.
        expectSame(found, expected, 0.06);
      }),
      { numRuns: 60 },
    );
  });

  it('with all of that at once', async () => {
    await run(
      drawing,
      (lines, keys) => shuffleLines(reverseLines(partLines(lines, keys), keys.toReversed()), keys),
      100,
    );
  });
});
