// Roots in Bernstein form.
import { describe, expect, it } from 'vitest';
import { binomials, findRoots, multiplyScaled } from '../../../src/geometry/bernstein.js';

/** The polynomial with these roots. */
function fromRoots(roots: readonly number[]): Float64Array {
  const scaled = roots.reduce<Float64Array>(
    (product, root) => multiplyScaled(product, Float64Array.of(-root, 1 - root)),
    Float64Array.of(1),
  );
  const weights = binomials(roots.length);
  return scaled.map((value, index) => value / weights[index]!);
}

function sorted(roots: readonly number[]): readonly number[] {
  return [...roots].sort((a, b) => a - b);
}

describe('roots', () => {
  it.each([
    [[0.25]],
    [[0.5]],
    [[0.25, 0.75]],
    [[0.125, 0.5, 0.9]],
    [[0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]],
    [[0.001, 0.002, 0.999]],
  ])('%j', (roots) => {
    const found = sorted(findRoots(fromRoots(roots)));
    expect(found).toHaveLength(roots.length);
    for (const [index, root] of roots.entries()) expect(found[index]).toBeCloseTo(root, 11);
  });

  it('outside are left out', () => {
    expect(findRoots(fromRoots([-0.5, 1.5]))).toEqual([]);
    expect(findRoots(fromRoots([-0.5, 0.25, 3]))).toHaveLength(1);
    expect(findRoots(Float64Array.of(1, 2, 3))).toEqual([]);
    expect(findRoots(Float64Array.of(0, 0, 0))).toEqual([]);
  });

  it('of high order end', () => {
    for (const root of findRoots(fromRoots([0.3, 0.3, 0.3, 0.3]))) expect(root).toBeCloseTo(0.3, 2);
    expect(findRoots(Float64Array.of(Number.NaN, Number.NaN, Number.NaN))).toEqual([]);
  });
});

it('binomials of a degree', () => {
  expect([...binomials(0)]).toEqual([1]);
  expect([...binomials(4)]).toEqual([1, 4, 6, 4, 1]);
  expect(binomials(12)[6]).toBe(924);
});
