// A mapped path lies where the path lies under the matrix.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { pathBox } from '../../../src/geometry/path-box.js';
import { createPathReader } from '../../../src/geometry/path-data.js';
import { pathLength } from '../../../src/geometry/path-length.js';
import { encodeUtf8 } from '../../../src/model/platform.js';
import { mapPath } from '../../../src/resolve/map-path.js';

const D = 'M10 20L30 5C1 2 3 4 50 60Q7 8 9 1A30 12 25 0 1 40 40A9 9 0 1 0 41 47ZM3 3H9a5 2 -70 1 0 1 1';
const number = fc.integer({ min: -30, max: 30 }).map((value) => value / 10);
const matrices = fc
  .tuple(number, number, number, number, number, number)
  .filter(([a, b, c, d]) => Math.abs(a * d - b * c) > 0.05) as fc.Arbitrary<Matrix>;

it('has the same box and length, mirrored and skewed too', () => {
  const bytes = encodeUtf8(D);
  const path = createPathReader().read(bytes, 0, bytes.length);
  fc.assert(
    fc.property(matrices, (matrix) => {
      const mapped = mapPath(path, matrix);
      const wanted = pathBox(path, matrix);
      const got = pathBox(mapped, IDENTITY);
      for (const side of ['x0', 'y0', 'x1', 'y1'] as const) expect(got[side]).toBeCloseTo(wanted[side], 6);
      expect(pathLength(mapped, IDENTITY)).toBeCloseTo(pathLength(path, matrix), 5);
    }),
    { numRuns: 200 },
  );
});
