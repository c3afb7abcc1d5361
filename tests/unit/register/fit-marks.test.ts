// Fits against a published example, a published coordinate operation, closed forms, and a singular value decomposition.
import fc from 'fast-check';
import { SingularValueDecomposition, Matrix as Table } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { PointMm } from '../../../src/model/marks.js';
import type { MarkReading } from '../../../src/model/register.js';
import { fitMarks, listFits, mapPoint } from '../../../src/register/fit-marks.js';

function pair(drawn: readonly PointMm[], measured: readonly PointMm[]): readonly MarkReading[] {
  return drawn.map((drawnMm, i) => ({ name: `m${i}`, drawnMm, measuredMm: measured[i]! }));
}

describe('a fit of the plane', () => {
  // S. Umeyama, IEEE PAMI 13 (1991), the example of section IV: a mirrored set, on which a fit without a guard mirrors.
  const umeyama = pair(
    [
      [0, 0],
      [1, 0],
      [0, 2],
    ],
    [
      [0, 0],
      [-1, 0],
      [0, 2],
    ],
  );

  it('is that of the paper, which does not mirror', () => {
    const fit = fitMarks(umeyama, 'scale')!;
    const [a, b, c, d, e, f] = fit.matrix;
    const scale = Math.sqrt(13) / 5;
    expect(Math.hypot(a, b)).toBeCloseTo(scale, 12);
    expect([a, c, b, d].map((value) => value / scale)).toEqual([
      expect.closeTo(3 / Math.sqrt(13), 12),
      expect.closeTo(2 / Math.sqrt(13), 12),
      expect.closeTo(-2 / Math.sqrt(13), 12),
      expect.closeTo(3 / Math.sqrt(13), 12),
    ]);
    expect([e, f]).toEqual([expect.closeTo(-0.8, 12), expect.closeTo(0.4, 12)]);
    expect(fit.residuals.reduce((sum, { distanceMm }) => sum + distanceMm ** 2, 0)).toBeCloseTo(1.6, 12);
    expect(fit.standardErrorMm).toBeCloseTo(Math.sqrt(1.6 / 2), 12);
  });

  it('finds the parameters of a published coordinate operation again', () => {
    // EPSG method 9621 (IOGP 373-7-2), the operation of PROJ's test: X = X0 + M (x cos + y sin), Y = Y0 + M (-x sin + y cos).
    const M = 1.0000015504;
    const theta = (1.56504 / 3600) * (Math.PI / 180);
    const operate = ([x, y]: PointMm): PointMm => [
      -129.549 + M * (x * Math.cos(theta) + y * Math.sin(theta)),
      -208.185 + M * (-x * Math.sin(theta) + y * Math.cos(theta)),
    ];
    const drawn: readonly PointMm[] = [
      [299000, 4499000],
      [301000, 4499000],
      [299500, 4501000],
      [300700, 4500600],
    ];
    const fit = fitMarks(pair(drawn, drawn.map(operate)), 'scale')!;
    const [x, y] = mapPoint(fit.matrix, [300000, 4500000]);
    expect([x, y]).toEqual([expect.closeTo(299905.06, 3), expect.closeTo(4499796.515, 3)]);
    expect(fit.scale[0]).toBeCloseTo(M, 9);
    // Clockwise with y down is what the operation calls minus theta.
    expect((-fit.angleDeg * 3600).toFixed(2)).toBe('1.57');
  });

  it('says a shift, a turn, a scale and two scales as they are', () => {
    const drawn: readonly PointMm[] = [
      [0, 0],
      [400, 0],
      [0, 300],
      [400, 300],
      [130, 300],
    ];
    const turn = (0.1 * Math.PI) / 180;
    const turned = drawn.map(
      ([x, y]): PointMm => [
        1.002 * (x * Math.cos(turn) - y * Math.sin(turn)) + 1,
        1.002 * (x * Math.sin(turn) + y * Math.cos(turn)) - 2,
      ],
    );
    const scale = fitMarks(pair(drawn, turned), 'scale')!;
    expect(scale.angleDeg).toBeCloseTo(0.1, 9);
    expect(scale.scale).toEqual([expect.closeTo(1.002, 12), expect.closeTo(1.002, 12)]);
    expect(scale.greatestMm).toBeLessThan(1e-10);
    const swollen = drawn.map(([x, y]): PointMm => [1.003 * x, 1.001 * y]);
    const affine = fitMarks(pair(drawn, swollen), 'affine')!;
    expect(affine.scale).toEqual([expect.closeTo(1.003, 12), expect.closeTo(1.001, 12)]);
    expect([affine.shearDeg, affine.angleDeg]).toEqual([expect.closeTo(0, 10), expect.closeTo(0, 10)]);
    // What is left at the corner of a 400 x 300 sheet when a fit must stay rigid: the swelling from the middle.
    const shift = fitMarks(pair(drawn, swollen), 'shift')!;
    expect(shift.shiftMm).toEqual([expect.closeTo(0.003 * 186, 10), expect.closeTo(0.001 * 180, 10)]);
    expect(shift.residuals[1]!.dxMm).toBeCloseTo(0.003 * (400 - 186), 10);
  });

  it('needs marks enough, and marks that stand apart', () => {
    expect(listFits(umeyama.slice(0, 2)).map((fit) => fit.kind)).toEqual(['shift', 'turn', 'scale']);
    expect(fitMarks(umeyama.slice(0, 2), 'scale')!.standardErrorMm).toBeNull();
    expect(fitMarks(umeyama, 'affine')!.standardErrorMm).toBeNull();
    const row: readonly PointMm[] = [
      [0, 0],
      [1, 1],
      [2, 2],
      [3, 3],
    ];
    expect(fitMarks(pair(row, row), 'affine')).toBeNull();
    // Measured on one line they would press the sheet flat.
    const corners: readonly PointMm[] = [
      [0, 0],
      [300, 0],
      [0, 200],
      [300, 200],
    ];
    const kinds = ['shift', 'turn', 'scale'];
    expect(listFits(pair(corners, row)).map((fit) => fit.kind)).toEqual(kinds);
    expect(listFits(pair(corners, corners)).map((fit) => fit.kind)).toEqual([...kinds, 'affine']);
    const spot: readonly PointMm[] = [
      [5, 5],
      [5, 5],
    ];
    expect(listFits(pair(spot, spot)).map((fit) => fit.kind)).toEqual(['shift']);
    // Nearer to each other than the last digits of their coordinates tell.
    const near: readonly PointMm[] = [
      [-499.9999999999963, 0],
      [-499.9999999999765, 0],
    ];
    expect(listFits(pair(near, row)).map((fit) => fit.kind)).toEqual(['shift']);
    // Around the corner itself, where the last digits tell everything, no rule tells them apart.
    const tiny: readonly PointMm[] = [
      [-5e-324, 0],
      [0, 0],
      [2e-323, -2e-162],
    ];
    expect(listFits(pair(tiny, row.slice(1))).map((fit) => fit.kind)).toEqual(['shift']);
  });
});

/** The sum of squares that Kabsch and Umeyama leave, by singular value decomposition, with the guard against mirroring. */
function restByDecomposition(readings: readonly MarkReading[], isScaled: boolean): number {
  const middle = (points: readonly PointMm[]): PointMm => [
    points.reduce((sum, [x]) => sum + x, 0) / points.length,
    points.reduce((sum, [, y]) => sum + y, 0) / points.length,
  ];
  const p = middle(readings.map((reading) => reading.drawnMm));
  const q = middle(readings.map((reading) => reading.measuredMm));
  const rows = (points: readonly PointMm[], at: PointMm): Table =>
    new Table(points.map(([x, y]) => [x - at[0], y - at[1]]));
  const P = rows(
    readings.map((reading) => reading.drawnMm),
    p,
  );
  const Q = rows(
    readings.map((reading) => reading.measuredMm),
    q,
  );
  const {
    leftSingularVectors: U,
    rightSingularVectors: V,
    diagonal,
  } = new SingularValueDecomposition(Q.transpose().mmul(P));
  const sign = Math.sign(
    (U.get(0, 0) * U.get(1, 1) - U.get(0, 1) * U.get(1, 0)) * (V.get(0, 0) * V.get(1, 1) - V.get(0, 1) * V.get(1, 0)),
  );
  const R = U.mmul(Table.diag([1, sign])).mmul(V.transpose());
  const spread = P.to1DArray().reduce((sum, value) => sum + value * value, 0);
  const scale = isScaled ? (diagonal[0]! + sign * diagonal[1]!) / spread : 1;
  const left = Q.transpose().sub(R.mul(scale).mmul(P.transpose()));
  return left.to1DArray().reduce((sum, value) => sum + value * value, 0);
}

describe('a thousand random fits', () => {
  // To a picometre: on numbers without a full mantissa the decomposition itself loses its way.
  const coordinate = fc.double({ min: -500, max: 500, noNaN: true }).map((value) => Math.round(value * 1e9) / 1e9);
  const point = fc.tuple(coordinate, coordinate);
  const marks = fc.array(fc.tuple(point, point), { minLength: 3, maxLength: 8 });

  it.each([
    ['turn', false],
    ['scale', true],
  ] as const)('are those of a singular value decomposition: %s', (kind, isScaled) => {
    fc.assert(
      fc.property(marks, (points) => {
        const readings = points.map(([drawnMm, measuredMm], i) => ({ name: `m${i}`, drawnMm, measuredMm }));
        const fit = fitMarks(readings, kind);
        fc.pre(fit !== null);
        const { residuals } = fit!;
        const rest = restByDecomposition(readings, isScaled);
        const own = residuals.reduce((sum, { distanceMm }) => sum + distanceMm ** 2, 0);
        // The least sum of squares is one number, also where several turns reach it.
        expect(own).toBeLessThanOrEqual(rest * (1 + 1e-9) + 1e-9);
        expect(rest).toBeLessThanOrEqual(own * (1 + 1e-9) + 1e-9);
      }),
      { numRuns: 1000 },
    );
  });

  it('are those of the normal equations: affine', () => {
    fc.assert(
      fc.property(marks, (points) => {
        const readings = points.map(([drawnMm, measuredMm], i) => ({ name: `m${i}`, drawnMm, measuredMm }));
        const fit = fitMarks(readings, 'affine');
        fc.pre(fit !== null);
        // A least-squares residual stands at right angles to all that the fit can do.
        const { residuals } = fit!;
        const dot = (by: (reading: MarkReading) => number, of: 'dxMm' | 'dyMm'): number =>
          residuals.reduce((sum, residual, i) => sum + by(readings[i]!) * residual[of], 0);
        for (const of of ['dxMm', 'dyMm'] as const) {
          expect(Math.abs(dot(() => 1, of))).toBeLessThan(1e-5);
          expect(Math.abs(dot(({ drawnMm }) => drawnMm[0], of))).toBeLessThan(1e-2);
          expect(Math.abs(dot(({ drawnMm }) => drawnMm[1], of))).toBeLessThan(1e-2);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
