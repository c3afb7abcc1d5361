// Random paths and matrices.
import fc from 'fast-check';
import type { Matrix } from '../../src/geometry/matrix.js';

/** Multiples of 1/64 from -100 to 100: exact in decimal and binary. */
export const coordinate: fc.Arbitrary<number> = fc.integer({ min: -6400, max: 6400 }).map((n) => n / 64);
const pair = fc.tuple(coordinate, coordinate).map((p) => p.join(' '));
/** Zero, or not so small against the other that brute force misses the sharp ends. */
const radius = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 128, max: 6400 }).map((n) => n / 64) },
  fc.constant(0),
);

/** One segment in absolute commands. */
export const segment: fc.Arbitrary<string> = fc.oneof(
  pair.map((p) => `L${p}`),
  fc.tuple(pair, pair, pair).map((p) => `C${p.join(' ')}`),
  fc.tuple(pair, pair).map((p) => `Q${p.join(' ')}`),
  fc
    .tuple(radius, radius, fc.integer({ min: -180, max: 180 }), fc.constantFrom(0, 1), fc.constantFrom(0, 1), pair)
    .map((p) => `A${p.join(' ')}`),
);

/** One or two subpaths, closed or open. */
export const pathText: fc.Arbitrary<string> = fc
  .array(fc.tuple(pair, fc.array(segment, { minLength: 1, maxLength: 5 }), fc.constantFrom('', 'Z')), {
    minLength: 1,
    maxLength: 2,
  })
  .map((subpaths) => subpaths.map(([start, segments, close]) => `M${start}${segments.join('')}${close}`).join(''));

const entry = fc.integer({ min: -192, max: 192 }).map((n) => n / 64);

export const matrix: fc.Arbitrary<Matrix> = fc.tuple(entry, entry, entry, entry, coordinate, coordinate);
