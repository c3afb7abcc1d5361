// Sides of lines against whole numbers of any length: a double is one, times a power of two.
import { describe, expect, it } from 'vitest';
import { orient } from '../../../src/geometry/orient.js';
import { seedChance } from './seed-chance.js';

/** A double times 2^1074: a whole number, nothing lost. IEEE 754-2019, section 3.4. */
function countSmallest(value: number): bigint {
  const bits = new BigUint64Array(Float64Array.of(value).buffer)[0]!;
  const exponent = (bits >> 52n) & 0x7ffn;
  const fraction = bits & 0xfffffffffffffn;
  const size = exponent === 0n ? fraction : (fraction | 0x10000000000000n) << (exponent - 1n);
  return bits >> 63n === 1n ? -size : size;
}

/** The sign of the determinant of b - a and c - a. */
function signOf(corners: readonly number[]): number {
  const [ax, ay, bx, by, cx, cy] = corners.map(countSmallest) as [bigint, bigint, bigint, bigint, bigint, bigint];
  const twice = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  return twice > 0n ? 1 : twice < 0n ? -1 : 0;
}

type Corners = readonly [number, number, number, number, number, number];

/** The corners in all six orders, and whether an order turns the other way. */
function reorder([ax, ay, bx, by, cx, cy]: Corners): readonly (readonly [Corners, boolean])[] {
  return [
    [[ax, ay, bx, by, cx, cy], false],
    [[bx, by, cx, cy, ax, ay], false],
    [[cx, cy, ax, ay, bx, by], false],
    [[ax, ay, cx, cy, bx, by], true],
    [[cx, cy, bx, by, ax, ay], true],
    [[bx, by, ax, ay, cx, cy], true],
  ];
}

describe('orient', () => {
  it('is twice the area of the triangle, above zero on the left with y up', () => {
    // Legs of 3 and 5; base 7 and height 4; |(4, 3) x (-2, 5)| = 26.
    expect(orient(1, -2, 4, -2, 1, 3)).toBe(15);
    expect(orient(-3, 1, 4, 1, 9, -3)).toBe(-28);
    expect(orient(-1, -2, 3, 1, -3, 3)).toBe(26);
    expect(orient(-1, -2, -3, 3, 3, 1)).toBe(-26);
  });

  it('is zero on the line and for corners that coincide', () => {
    expect(orient(1, 2, 4, 8, -5, -10)).toBe(0);
    expect(orient(0.1, 0.3, 0.1, 0.7, 0.1, -5)).toBe(0);
    expect(orient(0.1, 0.3, 7, 0.3, -0.7, 0.3)).toBe(0);
    expect(orient(0.1, 0.3, 0.1, 0.3, 0.7, 0.9)).toBe(0);
    expect(orient(0.7, 0.9, 0.1, 0.3, 0.1, 0.3)).toBe(0);
    expect(orient(0.1, 0.3, 0.7, 0.9, 0.1, 0.3)).toBe(0);
    // On the diagonal whatever was rounded, and on its double: twice a double is one.
    expect(orient(0.1, 0.1, 0.7, 0.7, 1 / 3, 1 / 3)).toBe(0);
    expect(orient(0.1, 0.2, 0.7, 1.4, 1 / 3, 2 / 3)).toBe(0);
  });

  // The grid of Kettner, Mehlhorn, Pion, Schirra and Yap, Classroom examples of robustness problems, 2008 (from memory):
  // against the line through (12, 12) and (24, 24) the double area of (0.5 + i u, 0.5 + j u) is 12 u (j - i).
  it('tells neighbouring doubles on both sides of a diagonal apart', () => {
    const unit = Number.EPSILON / 2;
    const wrong: string[] = [];
    for (let i = 0; i < 64; i += 1) {
      for (let j = 0; j < 64; j += 1) {
        const side = orient(0.5 + i * unit, 0.5 + j * unit, 12, 12, 24, 24);
        // Below 1 the doubles are one unit apart.
        if (Math.sign(side) !== Math.sign(j - i)) wrong.push(`${i}, ${j}: ${side}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it.each([
    { name: 'in the middle', scaleX: 1, scaleY: 1 },
    { name: 'far apart', scaleX: 1e137, scaleY: 1e-137 },
    { name: 'huge', scaleX: 1e137, scaleY: 1e137 },
    { name: 'tiny', scaleX: 1e-137, scaleY: 1e-137 },
  ])('has the exact sign next to the line, $name', ({ scaleX, scaleY }) => {
    const chance = seedChance(7);
    const within = (size: number): number => (2 * chance() - 1) * size;
    const wrong: Corners[] = [];
    let doubted = 0;
    for (let run = 0; run < 300; run += 1) {
      const [ax, ay, bx, by] = [within(900 * scaleX), within(900 * scaleY), within(9 * scaleX), within(700 * scaleY)];
      const share = 3 * chance() - 1;
      const corners: Corners = [ax, ay, bx, by, ax + share * (bx - ax), ay + share * (by - ay)];
      const sign = signOf(corners);
      for (const [order, isTurned] of reorder(corners)) {
        const [px, py, qx, qy, rx, ry] = order;
        if (Math.sign((px - rx) * (qy - ry) - (py - ry) * (qx - rx)) !== signOf(order)) doubted += 1;
        if (Math.sign(orient(...order)) * (isTurned ? -1 : 1) !== sign) wrong.push(order);
      }
    }
    expect(wrong).toEqual([]);
    // The plain formula fails on many of them.
    expect(doubted).toBeGreaterThan(100);
  });

  it('keeps the area as computed where rounding might have turned it', () => {
    // (2^26 + 1)(2^26 - 1) - 2^26 2^26 = -1, each product exact.
    const side = 2 ** 26;
    expect(orient(side + 1, side, side, side - 1, 0, 0)).toBe(-1);
    expect(orient(side, side - 1, side + 1, side, 0, 0)).toBe(1);
    expect(orient(4 * side + 4, 4 * side, side, side - 1, 0, 0)).toBe(-4);
    expect(orient(8 * side, 8 * side - 8, side + 1, side, 0, 0)).toBe(8);
  });

  it('is not zero where the area as computed is', () => {
    // Nearer to the line through (0.1, 0.7) and its double than a sum with them can show: twice the area is 0.1 y - 0.7 x.
    expect(orient(1e-100, 0, 0.1, 0.7, 0.2, 1.4)).toBeLessThan(0);
    expect(orient(-1e-100, 0, 0.1, 0.7, 0.2, 1.4)).toBeGreaterThan(0);
    expect(orient(0, 1e-100, 0.1, 0.7, 0.2, 1.4)).toBeGreaterThan(0);
    expect(orient(0, -1e-100, 0.1, 0.7, 0.2, 1.4)).toBeLessThan(0);
    // (1 + 2u) - (1 + u)(1 + u) = -u u: nothing in the last place of 1.
    const unit = Number.EPSILON;
    expect(orient(1 + 2 * unit, 1 + unit, 1 + unit, 1, 0, 0)).toBeLessThan(0);
    expect(orient(1 + unit, 1, 1 + 2 * unit, 1 + unit, 0, 0)).toBeGreaterThan(0);
  });
});
