// Stroke boxes against closed forms.
import { describe, expect, it } from 'vitest';
import { type Box, EMPTY_BOX, unite } from '../../../src/geometry/box.js';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { type StrokeShape, strokeBox } from '../../../src/geometry/stroke-box.js';
import { readPath } from './read-path.js';

const PLAIN: StrokeShape = { width: 2, linecap: 'butt', linejoin: 'miter', miterlimit: 4 };

function boxOf(d: string, stroke: Partial<StrokeShape> = {}, matrix: Matrix = IDENTITY): Box {
  return strokeBox(readPath(d), matrix, { ...PLAIN, ...stroke });
}

function expectBox(box: Box, [x0, y0, x1, y1]: readonly [number, number, number, number]): void {
  expect(box.x0).toBeCloseTo(x0, 10);
  expect(box.y0).toBeCloseTo(y0, 10);
  expect(box.x1).toBeCloseTo(x1, 10);
  expect(box.y1).toBeCloseTo(y1, 10);
}

/** Two arms of length 10 from the origin to the left, `angle` (radians) between them, the tip to the right. */
function wedge(angle: number): string {
  const [x, y] = [-10 * Math.cos(angle / 2), 10 * Math.sin(angle / 2)];
  return `M${x} ${y}L0 0L${x} ${-y}`;
}

describe('caps', () => {
  it.each([
    ['butt', [0, -1, 10, 1]],
    ['square', [-1, -1, 11, 1]],
    ['round', [-1, -1, 11, 1]],
  ] as const)('%s on a level line', (linecap, bounds) => {
    expectBox(boxOf('M0 0H10', { linecap }), bounds);
  });

  it('on a slanted line', () => {
    const half = Math.SQRT1_2;
    expectBox(boxOf('M0 0L10 10', { linecap: 'butt' }), [-half, -half, 10 + half, 10 + half]);
    expectBox(boxOf('M0 0L10 10', { linecap: 'round' }), [-1, -1, 11, 11]);
    expectBox(boxOf('M0 0L10 10', { linecap: 'square' }), [-2 * half, -2 * half, 10 + 2 * half, 10 + 2 * half]);
  });

  it('are not put on closed subpaths', () => {
    expectBox(boxOf('M0 0H10V10H0Z', { linecap: 'square', linejoin: 'bevel' }), [-1, -1, 11, 11]);
    expect(boxOf('M0 0L10 5L10-5Z', { linecap: 'round', linejoin: 'bevel' }).x0).toBeCloseTo(-1 / Math.sqrt(5), 12);
  });
});

// SVG 2, section 13.5: zero-length subpaths have caps where these are round or square.
describe('subpaths without length', () => {
  const slanted: Matrix = [Math.SQRT1_2, Math.SQRT1_2, -Math.SQRT1_2, Math.SQRT1_2, 0, 0];
  for (const d of ['M5 5Z', 'M5 5L5 5', 'M5 5h0v0z', 'M5 5C5 5 5 5 5 5', 'M5 5A9 9 0 0 1 5 5']) {
    it(d, () => {
      expect(boxOf(d, { linecap: 'butt' })).toEqual(EMPTY_BOX);
      expectBox(boxOf(d, { linecap: 'round' }), [4, 4, 6, 6]);
      expectBox(boxOf(d, { linecap: 'square' }), [4, 4, 6, 6]);
    });
  }
  it('are squares along the axes of the path', () => {
    const reach = Math.SQRT2;
    expectBox(boxOf('M0 0Z', { linecap: 'square' }, slanted), [-reach, -reach, reach, reach]);
    expectBox(boxOf('M0 0Z', { linecap: 'round' }, slanted), [-1, -1, 1, 1]);
  });
  it('do not count for a moveto alone', () => {
    expect(boxOf('M5 5', { linecap: 'round' })).toEqual(EMPTY_BOX);
    expectBox(boxOf('M0 0H10M50 50', { linecap: 'round' }), [-1, -1, 11, 1]);
  });
});

describe('joins', () => {
  // Closed form: a miter reaches width / (2 sin(angle / 2)) past the corner.
  it.each([30, 45, 60, 90, 120, 179])('miter of %i degrees', (degrees) => {
    const angle = (degrees * Math.PI) / 180;
    expect(boxOf(wedge(angle)).x1).toBeCloseTo(1 / Math.sin(angle / 2), 10);
  });

  // SVG 2, section 13.5.5: a limit of 4 bevels angles below about 28.96 degrees.
  it('falls back to a bevel at the limit', () => {
    const limit = 2 * Math.asin(1 / 4);
    expect((limit * 180) / Math.PI).toBeCloseTo(28.955, 3);
    expect(boxOf(wedge(limit + 1e-6)).x1).toBeCloseTo(4, 4);
    expect(boxOf(wedge(limit - 1e-6)).x1).toBeCloseTo(Math.sin(limit / 2), 4);
    expect(boxOf(wedge(1), { miterlimit: 1 }).x1).toBeCloseTo(Math.sin(0.5), 10);
  });

  it('round reaches half the width, bevel the cut corner', () => {
    expect(boxOf(wedge(1), { linejoin: 'round' }).x1).toBeCloseTo(1, 12);
    expect(boxOf(wedge(1), { linejoin: 'bevel' }).x1).toBeCloseTo(Math.sin(0.5), 12);
  });

  it('round is a sector, not a disc', () => {
    // The disc about the corner would reach 1 to both sides.
    expectBox(boxOf('M-0.1 0L0 0L0.1 0', { linejoin: 'round' }), [-0.1, -1, 0.1, 1]);
    const bent = boxOf('M-0.1 0L0 0L0.1 0.01', { linejoin: 'round' });
    expect(bent.x0).toBe(-0.1);
    // The far end's corner: 0.1 and the share of the normal of (0.1, 0.01).
    expect(bent.x1).toBeCloseTo(0.1 + 0.1 / Math.hypot(1, 0.1), 12);
    expect(bent.x1).toBeLessThan(0.25);
  });

  it('round goes about a reversal', () => {
    expectBox(boxOf('M0 0H10H0', { linejoin: 'round' }), [0, -1, 10 + 1, 1]);
    expectBox(boxOf('M0 0H10H0', { linejoin: 'miter' }), [0, -1, 10, 1]);
  });

  it('closes at the start', () => {
    expectBox(boxOf('M0 0H10V10H0Z'), [-1, -1, 11, 11]);
    expectBox(boxOf('M0 0H10V10H0V0Z'), [-1, -1, 11, 11]);
    expect(boxOf('M0 0L-5 5H5Z').y0).toBeCloseTo(-Math.SQRT2, 12);
    expect(boxOf('M0 0L-5 5H5Z', { linejoin: 'round' }).y0).toBeCloseTo(-1, 12);
    expect(boxOf('M0 0L-5 5H5L0 0').y0).toBeCloseTo(-Math.SQRT1_2, 12);
  });

  it('skips segments without length', () => {
    expect(boxOf('M-5 5L0 0L0 0h0L5 5').y0).toBeCloseTo(-Math.SQRT2, 12);
    expect(boxOf('M-5 5C-5 5 0 0 0 0C0 0 5 5 5 5').y0).toBeCloseTo(-Math.SQRT2, 12);
  });

  it('takes no direction from what rounding leaves before the start', () => {
    const tip = 1 + Math.sqrt(5);
    expect(boxOf('M1 1L-9 6L-9-4Z', { miterlimit: 100 }).x1).toBeCloseTo(tip, 12);
    expect(boxOf('M1 1L-9 6L-9-4L1 1.0000000000000002Z', { miterlimit: 100 }).x1).toBeCloseTo(tip, 12);
  });
});

describe('curves', () => {
  it('a circle and an ellipse under a matrix', () => {
    const circle = 'M10 0A10 10 0 0 1-10 0A10 10 0 0 1 10 0Z';
    expectBox(boxOf(circle), [-11, -11, 11, 11]);
    expectBox(boxOf(circle, {}, [3, 0, 0, 0.5, 1, 2]), [-32, -3.5, 34, 7.5]);
  });

  it('a bend tighter than half the width, by its inner side', () => {
    // The half circle of radius 1 with a stroke of half width 3: lines across it reach 2 past the centre, on the open side.
    expectBox(boxOf('M1 0A1 1 0 0 1-1 0', { width: 6 }), [-4, -2, 4, 4]);
  });

  // Closed form: the parabola y = x^2 has radius of curvature (1 + 4 x^2)^1.5 / 2 and there the centre (-4 x^3, 3 x^2 + 1/2).
  // A radius of 4 is met at x^2 = 3/4; seen along the direction of the tangent there, the centre is the extreme of its offset.
  it('the cusps of an inner offset', () => {
    const x = Math.sqrt(3 / 4);
    const centre = [-4 * x * x * x, 3 * x * x + 0.5] as const;
    // The piece from x = 0.8 to 0.95 about the cusp, turned so that the tangent at the cusp points along x.
    const slope = 2 * x;
    const size = Math.hypot(1, slope);
    const turned: Matrix = [1 / size, -slope / size, slope / size, 1 / size, 0, 0];
    const [from, to] = [0.8, 0.95];
    const piece = `M${from} ${from * from}Q${(from + to) / 2} ${from * to} ${to} ${to * to}`;
    const found = boxOf(piece, { width: 8 }, turned);
    const along = (px: number, py: number): number => turned[0] * px + turned[2] * py;
    const endOf = (t: number, side: number): number => {
      const length = Math.hypot(1, 2 * t);
      return along(t - (side * 4 * 2 * t) / length, t * t + (side * 4) / length);
    };
    const ends = [endOf(from, 1), endOf(from, -1), endOf(to, 1), endOf(to, -1)];
    expect(found.x0).toBeCloseTo(Math.min(...ends, along(...centre)), 12);
    expect(found.x1).toBeCloseTo(Math.max(...ends, along(...centre)), 12);
  });

  it('a collinear reversal inside a curve', () => {
    // SVG path of the published collinear cusp: it turns at 2.030... / 2.06 of the way; no bend, so no cap.
    const turn = -1 + 2 * 2.03 * 0.9854368932038835 - 2.06 * 0.9854368932038835 * 0.9854368932038835;
    expectBox(boxOf('M-1 0Q1.03 0 1 0'), [-1, -1, turn, 1]);
    // The same along (3, 4).
    expectBox(boxOf('M-3-4Q3.09 4.12 3 4'), [-3.8, -4.6, 3 * turn + 0.8, 4 * turn + 0.6]);
  });

  it('no stroke without width', () => {
    expect(boxOf('M0 0H10', { width: 0 })).toEqual(EMPTY_BOX);
    expect(boxOf('M0 0H10', { width: -1 })).toEqual(EMPTY_BOX);
    expect(boxOf('', {})).toEqual(EMPTY_BOX);
  });
});

const QUARTERS: readonly Matrix[] = [IDENTITY, [0, 1, -1, 0, 0, 0], [-1, 0, 0, -1, 0, 0], [0, -1, 1, 0, 0, 0]];

/** A box turned by quarter turns. */
function turn([x0, y0, x1, y1]: readonly [number, number, number, number], quarters: number): typeof bounds {
  const bounds: readonly [number, number, number, number] = [x0, y0, x1, y1];
  return quarters === 0 ? bounds : turn([-y1, x0, -y0, x1], quarters - 1);
}

describe.each(QUARTERS.map((matrix, quarters) => ({ matrix, quarters })))(
  'ends and corners, turned by $quarters quarters',
  ({ matrix, quarters }) => {
    it.each([
      // An arc starts and ends along its tangent, whichever way it goes.
      ['M10 0A10 10 0 0 1-10 0', 'square', [-11, -1, 11, 11]],
      ['M10 0A10 10 0 0 1-10 0', 'round', [-11, -1, 11, 11]],
      ['M10 0A10 10 0 0 1-10 0', 'butt', [-11, 0, 11, 11]],
      ['M10 0A10 10 0 0 0-10 0', 'square', [-11, -11, 11, 1]],
      ['M0 10A10 10 0 0 1 10 0', 'square', [-1, -1, 11, 11]],
      // A curve looks at the first control that is not where it starts, and back from the last that is not where it ends.
      ['M0 0C0 5 5 10 10 10', 'square', [-1, -1, 11, 11]],
      ['M0 0C0 5 5 10 10 10', 'butt', [-1, 0, 10, 11]],
      ['M0 0C10 0 10 10 10 10', 'square', [-1, -1, 11, 11]],
      ['M0 0C0 0 0 0 10 0', 'square', [-1, -1, 11, 1]],
      ['M0 0C10 0 10 0 10 0', 'square', [-1, -1, 11, 1]],
      ['M0 0Q0 10 10 10', 'square', [-1, -1, 11, 11]],
      ['M0 0Q0 10 10 10', 'butt', [-1, 0, 10, 11]],
    ] as const)('%s with caps that are %s', (d, linecap, bounds) => {
      expectBox(boxOf(d, { linecap }, matrix), turn(bounds, quarters));
    });

    it('round a corner on its outer side, to whichever side it turns', () => {
      const near = 5 * Math.SQRT1_2;
      const reach = Math.SQRT1_2;
      for (const side of [1, -1]) {
        const corner = `M-10 0H0L${-near} ${side * near}`;
        const far = near + reach;
        const upright: readonly [number, number, number, number] = side > 0 ? [-10, -1, 1, far] : [-10, -far, 1, 1];
        expectBox(boxOf(corner, { linejoin: 'round' }, matrix), turn(upright, quarters));
        const [x0, y0, , y1] = upright;
        expectBox(boxOf(corner, { linejoin: 'bevel' }, matrix), turn([x0, y0, reach, y1], quarters));
      }
    });

    it('miter where an arc meets a line', () => {
      // Down along (0, 1), then away along (-2, -1): the tip lies against the sum of both, 1 / sin(half the angle) off.
      const [outX, outY] = [-2 / Math.sqrt(5), -1 / Math.sqrt(5)];
      const size = Math.hypot(outX, outY - 1);
      const reach = 1 / Math.sqrt((1 - 1 / Math.sqrt(5)) / 2);
      const tip = [10 - (reach * outX) / size, (-reach * (outY - 1)) / size] as const;
      const butt: readonly [number, number, number, number] = [0 - 1 / Math.sqrt(5), -11, tip[0], tip[1]];
      const found = boxOf('M0-10A10 10 0 0 1 10 0L0-5', {}, matrix);
      expectBox(found, turn(butt, quarters));
    });
  },
);

describe('a path of several subpaths', () => {
  const PARTS = [
    'M3 4h5l2 7',
    'M30-20c1 5 9 5 10 0',
    'M-40 30q5 9 10 0',
    'M60 60a5 3 20 0 1 6 2',
    'M-9-9h4v4z',
    'M80-80zM90 0',
  ];

  it.each(['butt', 'round', 'square'] as const)('reaches what each of them does, with caps that are %s', (linecap) => {
    const apart = PARTS.map((d) => boxOf(d, { linecap })).reduce(unite, EMPTY_BOX);
    for (const parts of [PARTS, [...PARTS].reverse()]) {
      const together = boxOf(parts.join(''), { linecap });
      expectBox(together, [apart.x0, apart.y0, apart.x1, apart.y1]);
    }
    for (const d of PARTS.slice(0, 4)) {
      const alone = boxOf(d, { linecap });
      expectBox(boxOf(`M${alone.x0 + 2} ${alone.y0 + 2}z${d}`, { linecap: 'butt' }), [
        ...Object.values(boxOf(d, { linecap: 'butt' })),
      ] as unknown as [number, number, number, number]);
    }
  });
});

describe('what rounding leaves behind', () => {
  it('is no segment, against the coordinates', () => {
    for (const d of ['M5 5l1e-13 0', 'M1e6 0l1e-6 0', 'M0 1e6l0 1e-6', 'M-1e6 0l1e-6 0', 'M0-1e6l1e-6 0']) {
      expect(boxOf(d), d).toEqual(EMPTY_BOX);
      expect(boxOf(d, { linecap: 'round' }).x1, d).toBeGreaterThan(0.9 - 1e6);
    }
    for (const d of ['M5 5l1e-9 0', 'M1e6 0l1e-4 0', 'M0 1e6l1e-4 0']) expect(boxOf(d), d).not.toEqual(EMPTY_BOX);
  });

  it('turns no cap', () => {
    expectBox(boxOf('M0 0L1e6 0l1e-6 1e-6', { linecap: 'square' }), [-1, -1, 1e6 + 1, 1]);
    expectBox(boxOf('M1e6 0l-1e-6 1e-6L0 0', { linecap: 'square' }), [-1, -1, 1e6 + 1, 1]);
  });
});
