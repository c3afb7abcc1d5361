// Bands along curves and arcs against closed forms: the frame is given as it is left by ends, joins and caps.
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { elevate, includeBands } from '../../../src/geometry/stroke-bands.js';
import { openFrame } from '../../../src/geometry/stroke-frame.js';
import { readPath } from './read-path.js';

type Bounds = readonly [number, number, number, number];

interface Stroke {
  readonly radius?: number;
  readonly matrix?: Matrix;
  readonly noise?: number;
  /** Bounds known before. */
  readonly known?: Bounds;
}

function bandsOf(d: string, { radius = 1, matrix = IDENTITY, noise = 0, known }: Stroke = {}): readonly number[] {
  const frame = openFrame(matrix, radius);
  if (known !== undefined) frame.bounds.set(known);
  includeBands(frame, readPath(d), noise);
  return [...frame.bounds];
}

function expectBounds(found: readonly number[], bounds: Bounds): void {
  for (const [index, bound] of bounds.entries()) expect(found[index], `bound ${index}`).toBeCloseTo(bound, 11);
}

const NOTHING = [Infinity, Infinity, -Infinity, -Infinity];
/** y = 10 - x^2 / 10 from -10 to 10: its curvature at the top is 1/5. */
const PARABOLA = 'M-10 0Q0 20 10 0';
const PARABOLA_AS_CUBIC = 'M-10 0C-3.3333333333333335 13.333333333333334 3.333333333333333 13.333333333333334 10 0';
const QUARTERS: readonly Matrix[] = [IDENTITY, [0, 1, -1, 0, 0, 0], [-1, 0, 0, -1, 0, 0], [0, -1, 1, 0, 0, 0]];

/** Bounds turned by quarter turns. */
function turn([x0, y0, x1, y1]: Bounds, quarters: number): Bounds {
  return quarters === 0 ? [x0, y0, x1, y1] : turn([-y1, x0, -y0, x1], quarters - 1);
}

describe('a band along a curve', () => {
  it.each(QUARTERS.map((matrix, quarters) => [quarters, matrix] as const))(
    'takes in its top, turned by %i quarters',
    (quarters, matrix) => {
      expectBounds(bandsOf(PARABOLA, { matrix }), turn([0, 9, 0, 11], quarters));
      expectBounds(bandsOf(PARABOLA_AS_CUBIC, { matrix }), turn([0, 9, 0, 11], quarters));
    },
  );

  it('takes in both tops of a wave', () => {
    const top = 5 * Math.sqrt(3);
    const x = (t: number): number => 90 * t * t - 60 * t * t * t;
    const [first, second] = [x(0.5 - Math.sqrt(3) / 6), x(0.5 + Math.sqrt(3) / 6)];
    expectBounds(bandsOf('M0 0C0 30 30-30 30 0', { radius: 0.1 }), [first, -top - 0.1, second, top + 0.1]);
    expectBounds(bandsOf('M0 0C0-30 30 30 30 0', { radius: 0.1 }), [first, -top - 0.1, second, top + 0.1]);
  });

  // X = x + 2 y is level where x' = -2 y', at t = 5/8: there (2.5, 9.375), along (20, -10).
  it('takes in the places that a matrix makes level, with the disc as the matrix has it', () => {
    const across = 2 / Math.sqrt(5);
    const bounds: Bounds = [18, 9.375 - across, 21.25 + Math.sqrt(5), 11];
    expectBounds(bandsOf(PARABOLA, { matrix: [1, 0, 2, 1, 0, 0] }), bounds);
    expectBounds(bandsOf(PARABOLA, { matrix: [1, 0, 2, 1, 100, -7] }), [118, 2.375 - across, 121.25 + Math.sqrt(5), 4]);
    expectBounds(bandsOf(PARABOLA, { matrix: [2, 0, 0, 3, 5, 7] }), [5, 34, 5, 40]);
  });

  it('takes in nothing at the ends, which joins and caps have', () => {
    expect(bandsOf('M0 0Q10 0 10 10')).toEqual(NOTHING);
    expect(bandsOf('M0 0C5 0 10 5 10 10')).toEqual(NOTHING);
  });

  it('leaves out curves that go no further than noise, in every coordinate', () => {
    expect(bandsOf('M0 0C1 1 2 0 3 1', { noise: 1 })).toEqual(NOTHING);
    expect(bandsOf('M0 0C1 1 2 0 3 1', { noise: 0.99 })).not.toEqual(NOTHING);
    // Steps (1, 1), (1, -1), (0, -3): the last y alone is more than 2, and the curve is level at 1/4.
    expect(bandsOf('M0 0C1 1 2 0 2-3', { noise: 2, radius: 0.01 })[3]).toBeCloseTo(0.375 + 0.01, 12);
    // Steps (3, 0), (-1, 0), (-1, 0): the first x alone.
    expect(bandsOf('M0 0C3 0 2 0 1 0', { noise: 2 })).not.toEqual(NOTHING);
    expect(bandsOf('M0 0C3 0 2 0 1 0', { noise: 3 })).toEqual(NOTHING);
  });

  it('finds its curve after segments of every kind', () => {
    const before = 'M1 0L1 0C1 0 1 0 1 0Q1 0 1 0A1 1 0 0 1 1 0Z';
    expectBounds(bandsOf(before + PARABOLA), [0, 9, 0, 11]);
    expectBounds(bandsOf(before + PARABOLA_AS_CUBIC), [0, 9, 0, 11]);
    expectBounds(bandsOf(`${before}M-3-4A5 5 0 0 0 3 4`), bandsOf('M-3-4A5 5 0 0 0 3 4') as unknown as Bounds);
    expect(bandsOf(`${before}M-3-4A5 5 0 0 0 3 4`)[3]).toBeCloseTo(6, 12);
  });

  // Where a line turns back its speed is nothing: the direction is that of how it changes.
  it('takes in a line there and back as far as it goes, with all its width there', () => {
    const along = bandsOf('M0 0C4 0 4 0 0 0', { radius: 0.5 });
    expect([along[1], along[2], along[3]]).toEqual([-0.5, 3, 0.5]);
    const down = bandsOf('M0 0C0 4 0 4 0 0', { radius: 0.5 });
    expect([down[0], down[2], down[3]]).toEqual([-0.5, 0.5, 3]);
    const slanted = bandsOf('M0 0C12 16 12 16 0 0', { radius: 5 });
    expect([slanted[2], slanted[3]]).toEqual([13, 15]);
  });
});

describe('the inner side of a wide band', () => {
  // The curvature of y = 10 - x^2 / 10 is 1/8 where the slope is m, (1 + m^2)^(3/2) = 8/5.
  const slope = Math.sqrt(Math.cbrt(1.6 * 1.6) - 1);
  const side = 5 * slope + (8 * slope) / Math.sqrt(1 + slope * slope);

  it.each(QUARTERS.map((matrix, quarters) => [quarters, matrix] as const))(
    'is taken in at its cusps, turned by %i quarters',
    (quarters, matrix) => {
      // Places near a cusp are taken in with it: they lie within what the ends cover.
      const look = (known?: Bounds) =>
        turn(
          bandsOf(PARABOLA, known === undefined ? { radius: 8, matrix } : { radius: 8, matrix, known }) as never,
          4 - quarters,
        );
      const [x0, y0, x1, y1] = look();
      expect(x0).toBeLessThan(-side + 1e-9);
      expect(x1).toBeGreaterThan(side - 1e-9);
      expect(Math.max(-x0, x1)).toBeLessThan(10 + 8 * Math.sqrt(0.8));
      expect([y0, y1]).toEqual([2, 18]);
      // Known on all sides but one, which alone asks for them.
      const left = look(turn([0, -99, 99, 99], quarters));
      expect(left[0]).toBeLessThan(-side + 1e-9);
      expect(left.slice(1)).toEqual([-99, 99, 99]);
      const right = look(turn([-99, -99, 0, 99], quarters));
      expect(right[2]).toBeGreaterThan(side - 1e-9);
      expect([right[0], right[1], right[3]]).toEqual([-99, -99, 99]);
    },
  );

  it('has no cusps where the curve bends less', () => {
    expectBounds(bandsOf(PARABOLA, { radius: 4.999 }), [0, 5.001, 0, 14.999]);
  });
});

describe('a band along an arc', () => {
  const SHORT = 'M-3-4A5 5 0 0 0 3 4';

  it('takes in the sides it passes', () => {
    // Half a circle from (-3, -4) by (-4, 3) to (3, 4): its left and its foot.
    const found = bandsOf(SHORT);
    expect(found[0]).toBeCloseTo(-6, 12);
    expect(found[3]).toBeCloseTo(6, 12);
    expect(found[1]).toBeCloseTo(0, 12);
    expect(found[2]).toBeCloseTo(0, 12);
  });

  it.each(QUARTERS.map((matrix, quarters) => [quarters, matrix] as const))(
    'takes in the sides of an ellipse, turned by %i quarters',
    (quarters, matrix) => {
      const half = 'M-20 0A20 10 0 0 0 20 0';
      const found = turn(bandsOf(half, { matrix }) as unknown as Bounds, (4 - quarters) % 4);
      expect(found[3]).toBeCloseTo(11, 12);
    },
  );

  it('takes in the places that a matrix makes level', () => {
    // X = x + 2 y of the circle of radius 5 reaches 5 sqrt(5), and the stroke sqrt(5) more.
    const found = bandsOf('M5 0A5 5 0 0 1-5 0', { matrix: [1, 0, 2, 1, 0, 0] });
    expect(found[2]).toBeCloseTo(6 * Math.sqrt(5), 12);
    const other = bandsOf('M5 0A5 5 0 0 1-5 0', { matrix: [1, 2, 0, 1, 0, 0] });
    expect(other[3]).toBeCloseTo(6 * Math.sqrt(5), 12);
    const back = bandsOf('M5 0A5 5 0 0 0-5 0', { matrix: [1, 0, 2, 1, 0, 0] });
    expect(back[0]).toBeCloseTo(-6 * Math.sqrt(5), 12);
  });

  // An ellipse bends by a b / (a^2 sin^2 + b^2 cos^2)^(3/2) at an angle; that is 1/r at the cusps of its inner offset.
  it('takes in the cusps of its inner offset', () => {
    const [a, b, r] = [20, 5, 4];
    const sine = Math.sqrt((Math.cbrt((r * a * b) ** 2) - b * b) / (a * a - b * b));
    const cosine = Math.sqrt(1 - sine * sine);
    const speed = Math.hypot(a * sine, b * cosine);
    // The inner side at the cusp, on the far side of the axis: y = b sin - r a sin / speed.
    const y = b * sine - (r * a * sine) / speed;
    const x = a * cosine - (r * b * cosine) / speed;
    for (const [sx, sy, d] of [
      [1, 1, `M${a} 0A${a} ${b} 0 0 1 0 ${b}`],
      [1, -1, `M${a} 0A${a} ${b} 0 0 0 0 ${-b}`],
      [-1, 1, `M${-a} 0A${a} ${b} 0 0 0 0 ${b}`],
      [-1, -1, `M${-a} 0A${a} ${b} 0 0 1 0 ${-b}`],
    ] as const) {
      const found = bandsOf(d, { radius: r });
      expect(y).toBeLessThan(0);
      expect(sy > 0 ? found[1] : -found[3]!, d).toBeCloseTo(y, 11);
      expect(sx > 0 ? found[0] : -found[2]!, d).toBeCloseTo(x, 11);
    }
  });

  it('is nothing where the arc is none', () => {
    expect(bandsOf('M0 0A5 5 0 0 1 0 0')).toEqual(NOTHING);
    expect(bandsOf('M0 0A0 5 0 0 1 9 0')).toEqual(NOTHING);
  });
});

it('elevate writes the same curve', () => {
  const out = new Float64Array(8);
  elevate(Float64Array.of(7, 7, 1, 2, 4, 8, 10, 5), 2, out);
  expect([...out]).toEqual([1, 2, 3, 6, 6, 7, 10, 5]);
});
