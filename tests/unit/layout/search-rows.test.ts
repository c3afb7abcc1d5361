// Tuck-end cartons between each other's flaps: counts from an argument that shares nothing with the search, and the bound by area.
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/layout/lay-out.js';
import { areaOf, makePiece, makeSheet } from './make-piece.js';

/** How far a blank reaches beyond its body along one side: from, to, reach; mm. */
type Flaps = readonly (readonly [number, number, number])[];

interface Carton {
  /** Height of the body. */
  readonly body: number;
  readonly width: number;
  readonly top: Flaps;
  readonly bottom: Flaps;
}

const LONG = 60;
const SHORT = 30;
const TUCK = 45;
const DUST = 30;
/** Flaps are narrower than their panels by this on either side, so that they turn in freely; common practice, no source. */
const EASE = 1;
const PANELS = [0, LONG, LONG + SHORT, 2 * LONG + SHORT, 2 * (LONG + SHORT)] as const;

/** Flaps on the side whose tuck flap hangs on a panel, 0 or 2: nothing on the panel across, dust flaps on the short ones. */
function flapsWith(tuck: 0 | 2): Flaps {
  return PANELS.slice(0, 4).map((from, panel) => {
    const reach = panel === tuck ? TUCK : panel % 2 === 1 ? DUST : 0;
    return [from + EASE, PANELS[panel + 1]! - EASE, reach] as const;
  });
}

/** Common forms of folding cartons: tuck flaps on the same panel, or on panels across from each other. */
const STRAIGHT: Carton = { body: 100, width: PANELS[4], top: flapsWith(0), bottom: flapsWith(0) };
const REVERSE: Carton = { body: 100, width: PANELS[4], top: flapsWith(0), bottom: flapsWith(2) };

function outline({ body, width, top, bottom }: Carton): readonly (readonly [number, number])[] {
  const side = (flaps: Flaps, edge: number, out: -1 | 1): readonly (readonly [number, number])[] => [
    [0, edge],
    ...flaps
      .filter(([, , reach]) => reach > 0)
      .flatMap(([from, to, reach]) => {
        const far = edge + out * reach;
        return [
          [from, edge],
          [from, far],
          [to, far],
          [to, edge],
        ] as const;
      }),
    [width, edge],
  ];
  return [...side(top, TUCK, -1), ...side(bottom, TUCK + body, 1).toReversed()];
}

/** Turned upside down. */
function turn({ body, width, top, bottom }: Carton): Carton {
  const flip = (flaps: Flaps): Flaps => flaps.map(([from, to, reach]) => [width - to, width - from, reach] as const);
  return { body, width, top: flip(bottom), bottom: flip(top) };
}

/** The reach of a row of cartons at a place, each as far as the gutter wider. Between columns it is none. */
function reachAt(flaps: Flaps, x: number, pitch: number, gutter: number): number {
  let reach = 0;
  for (const column of [-1, 0, 1]) {
    const at = (((x % pitch) + pitch) % pitch) + column * pitch;
    for (const [from, to, far] of flaps) if (at > from - gutter && at < to + gutter) reach = Math.max(reach, far);
  }
  return reach;
}

/** Every place at half a millimetre, looked at between the ends of flaps, which all lie on whole millimetres. */
const STEP = 0.5;
/** The search keeps 0.02 mm more between copies for each corner that it leaves out, mm over a whole sheet. */
const SPARE = 0.3;

/**
 * The least distance from one row to the next below it, and the shift at which it is reached, over every shift.
 *
 * Cartons are as high as their body and reach at every place, so that rows are apart when the sum of both reaches is cleared everywhere.
 */
function closest(above: Carton, below: Carton, gutter: number): { readonly distance: number; readonly shift: number } {
  const pitch = above.width + gutter;
  let best = { distance: Infinity, shift: 0 };
  const sums = Array.from({ length: pitch / STEP }, (_, i) => {
    let sum = 0;
    for (let x = STEP / 2; x < pitch; x += STEP)
      sum = Math.max(sum, reachAt(above.bottom, x, pitch, gutter) + reachAt(below.top, x - i * STEP, pitch, 0));
    return sum;
  });
  for (const [i, sum] of sums.entries()) {
    const shift = i * STEP;
    // A fit without any play aside, flap against flap on both sides, is no layout that anybody would run.
    const distance = above.body + gutter + Math.max(sums.at(i - 1)!, sum, sums[(i + 1) % sums.length]!);
    if (distance < best.distance - 1e-9) best = { distance, shift };
  }
  return best;
}

interface Case {
  readonly carton: Carton;
  readonly turned: boolean;
  readonly columns: number;
  readonly rows: number;
  readonly gutter: number;
}

/** The smallest sheet on which rows as near as they come hold the columns, every other one shifted. */
function sheetOf({ carton, turned, columns, rows, gutter }: Case): { width: number; height: number; distance: number } {
  const other = turned ? turn(carton) : carton;
  const { distance, shift } = closest(carton, other, gutter);
  // Back again: with a turned row the same faces meet, so the next row lies under the first one but one.
  const back = closest(other, carton, gutter);
  expect(back.distance).toBeCloseTo(distance, 9);
  const aside = Math.min(shift, carton.width + gutter - shift);
  const width = columns * (carton.width + gutter) - gutter + aside;
  return { width, height: carton.body + 2 * TUCK + (rows - 1) * distance, distance };
}

const CASES: readonly (readonly [string, Case])[] = [
  ['reverse tuck, two rows', { carton: REVERSE, turned: false, columns: 2, rows: 2, gutter: 0 }],
  ['reverse tuck, three rows', { carton: REVERSE, turned: false, columns: 2, rows: 3, gutter: 0 }],
  ['straight tuck, two rows', { carton: STRAIGHT, turned: true, columns: 2, rows: 2, gutter: 0 }],
  ['straight tuck, four rows', { carton: STRAIGHT, turned: true, columns: 3, rows: 4, gutter: 0 }],
  ['reverse tuck with a gutter', { carton: REVERSE, turned: false, columns: 2, rows: 3, gutter: 0.5 }],
  ['straight tuck with a gutter, two rows', { carton: STRAIGHT, turned: true, columns: 2, rows: 2, gutter: 0.5 }],
  ['straight tuck, three rows', { carton: STRAIGHT, turned: true, columns: 2, rows: 3, gutter: 0 }],
  ['straight tuck with a gutter, three rows', { carton: STRAIGHT, turned: true, columns: 2, rows: 3, gutter: 0.5 }],
];

describe('tuck-end cartons', () => {
  it.each(CASES)('lie between each other: %s', (_, one) => {
    const { carton, columns, rows, gutter, turned } = one;
    const { width, height, distance } = sheetOf(one);
    // Flaps do reach between flaps: less than the boxes take.
    expect(distance).toBeLessThan(carton.body + 2 * TUCK + gutter);
    const piece = makePiece(outline(carton));
    const sheet = makeSheet(width + SPARE, height + SPARE, { gutterMm: gutter, turn: turned ? 'head-to-tail' : 0 });
    const { layout } = layOut(piece, sheet, 0);
    expect(layout!.copies).toBeGreaterThanOrEqual(columns * rows);
    expect(layout!.copies).toBeGreaterThan(layout!.rectangle.copies);
    expect(layout!.method).toBe('interlocked');
    if (turned) expect(new Set(layout!.matricesMm.map(([a]) => Math.sign(a)))).toEqual(new Set([1, -1]));
  });

  it('reach the most that the area of the sheet allows: six, where boxes in rows reach four', () => {
    const one: Case = { carton: REVERSE, turned: false, columns: 2, rows: 3, gutter: 0 };
    const { width, height } = sheetOf(one);
    const area = areaOf(outline(REVERSE));
    // Body, two tuck flaps, four dust flaps.
    expect(area).toBe(180 * 100 + 2 * (LONG - 2 * EASE) * TUCK + 4 * (SHORT - 2 * EASE) * DUST);
    const most = Math.floor(((width + SPARE) * (height + SPARE)) / area);
    expect(most).toBe(6);
    const { layout } = layOut(makePiece(outline(REVERSE)), makeSheet(width + SPARE, height + SPARE), 0);
    expect([layout!.copies, layout!.rectangle.copies]).toEqual([most, 4]);
  });
});
