// What keeps a bound exactly keeps it under any turn, in any unit, anywhere: rounding makes no fault and hides none.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCreaseDistance } from '../../src/check/check-crease-distance.js';
import { checkCreaseEnds } from '../../src/check/check-crease-ends.js';
import { checkDoubledLines } from '../../src/check/check-doubled-lines.js';
import { checkHairline } from '../../src/check/check-hairline.js';
import { checkNeedlessPoints } from '../../src/check/check-needless-points.js';
import { checkOpenOutline } from '../../src/check/check-open-outline.js';
import { checkTies } from '../../src/check/check-ties.js';
import { checkTurns } from '../../src/check/check-turns.js';
import type { CheckSettings } from '../../src/model/check-settings.js';
import { factsOf } from '../unit/check/carton-facts.js';
import type { DieLine, Point } from './faulty-cartons.js';
import { type Drawing, drawing, drawLines } from './move-lines.js';

const CHECKS = [
  ...[checkOpenOutline, checkDoubledLines, checkCreaseEnds, checkCreaseDistance, checkTurns, checkNeedlessPoints],
  ...[checkTies, checkHairline],
];

/** A blank of 100 x 60 mm, its bottom from left to right along some points. */
const blank = (...bottom: readonly Point[]): DieLine => ({
  kind: 'cut',
  closed: true,
  points: [[100, 0], [0, 0], [0, 60], ...bottom, [100, 60]],
});

/** The same, open between two points of its bottom. */
const openBlank = (from: Point, to: Point): readonly DieLine[] => [
  { kind: 'cut', closed: false, points: [[50, 0], [0, 0], [0, 60], from] },
  { kind: 'cut', closed: false, points: [to, [100, 60], [100, 0], [50, 0]] },
];

const crease = (...points: readonly Point[]): DieLine => ({ kind: 'crease', closed: false, points });

/** A blank on its bounds, the settings, and what is found: nothing where the bound is kept. */
type Case = readonly [string, readonly DieLine[], Partial<CheckSettings>, readonly string[]];

const CASES: readonly Case[] = [
  ['a crease 2 mm from a cut', [blank(), crease([2, 0], [2, 60])], {}, []],
  [
    'creases as far apart as the board needs',
    [blank(), crease([50, 0], [50, 60]), crease([51.3, 0], [51.3, 60])],
    { caliperMm: 0.4 },
    [],
  ],
  ['a crease that stops half a millimetre short', [blank(), crease([50, 0], [50, 59.5])], {}, []],
  ['a crease half a millimetre over the cut', [blank(), crease([50, 0], [50, 60.5])], {}, []],
  ['a crease that stops short by its reach', [blank(), crease([50, 0], [50, 58])], {}, ['crease-short']],
  ['a crease within a panel, as long as its reach', [blank(), crease([50, 30], [52, 30])], {}, []],
  ['an opening as wide as the snap', openBlank([50, 60], [50.05, 60]), {}, []],
  ['an opening as wide as openings may be', openBlank([50, 60], [51, 60]), {}, ['outline-open']],
  ['ties as wide as ties may be', openBlank([50, 60], [50.625, 60]), { tieMm: 0.5, leastTies: 1 }, []],
  ['ties as narrow as ties may be', openBlank([50, 60], [50.375, 60]), { tieMm: 0.5, leastTies: 1 }, []],
  [
    'half a millimetre of a line run twice',
    [
      blank(),
      {
        kind: 'cut',
        closed: false,
        points: [
          [50, 60],
          [50.5, 60],
        ],
      },
    ],
    {},
    ['line-doubled'],
  ],
  [
    'a side as long as the offset of the knife',
    [blank([50, 60], [50, 55], [50.25, 55], [50.25, 60])],
    { knifeOffsetMm: 0.25 },
    [],
  ],
  [
    'a turn of 30 degrees',
    [blank([50, 60], [50 + 0.1 * Math.sqrt(3), 60.1], [90, 60.1], [92, 60])],
    { knifeOffsetMm: 0.25 },
    [],
  ],
  ['a segment as long as a step', [blank([50, 60], [50.01, 60])], {}, []],
];

async function find(
  lines: readonly DieLine[],
  how: Drawing,
  checks: Partial<CheckSettings>,
): Promise<readonly string[]> {
  const facts = await factsOf(drawLines(lines, how), checks);
  return CHECKS.flatMap((check) => check(facts)).map(({ code }) => code.replace('check/', ''));
}

describe('a bound', () => {
  it.each(CASES)('holds: %s', async (_, lines, checks, expected) => {
    await fc.assert(
      fc.asyncProperty(drawing, async (how) => {
        expect(await find(lines, how, checks)).toEqual(expected);
      }),
      { numRuns: 25 },
    );
  });
});
