// On which side of a line a point lies, never wrong.

/** Half a unit in the last place of 1. */
const EPSILON = 1.1102230246251565e-16;
const BOUND = (3 + 16 * EPSILON) * EPSILON;
const SPLITTER = 134217729;

/** Sum of two numbers and what rounding took from it. */
function addExactly(a: number, b: number): readonly [number, number] {
  const sum = a + b;
  const virtual = sum - a;
  return [sum, a - (sum - virtual) + (b - virtual)];
}

/** Product of two numbers and what rounding took from it. */
function multiplyExactly(a: number, b: number): readonly [number, number] {
  const product = a * b;
  const bigA = SPLITTER * a;
  const highA = bigA - (bigA - a);
  const lowA = a - highA;
  const bigB = SPLITTER * b;
  const highB = bigB - (bigB - b);
  const lowB = b - highB;
  return [product, lowA * lowB - (product - highA * highB - lowA * highB - highA * lowB)];
}

/** The sign of a sum of products, worked out without rounding. */
function signOfSum(products: readonly (readonly [number, number])[]): number {
  // A sum of parts that do not overlap, smallest first: its sign is that of the last one that is not zero.
  let parts: number[] = [];
  for (const [a, b] of products) {
    for (const term of multiplyExactly(a, b)) {
      const next: number[] = [];
      let carry = term;
      for (const part of parts) {
        const [sum, rest] = addExactly(carry, part);
        if (rest !== 0) next.push(rest);
        carry = sum;
      }
      if (carry !== 0) next.push(carry);
      parts = next;
    }
  }
  return parts.length === 0 ? 0 : Math.sign(parts[parts.length - 1]!);
}

/**
 * Twice the area of the triangle a, b, c as computed, its sign exact: above zero where c lies on the left of a to b with y up (right
 * with y down), zero only where the three lie on one line.
 *
 * @throws Never.
 * @accuracy The sign is exact for coordinates between 1e-140 and 1e140.
 * @source J. R. Shewchuk, Adaptive precision floating-point arithmetic and fast robust geometric predicates, 1997
 */
export function orient(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  const left = (ax - cx) * (by - cy);
  const right = (ay - cy) * (bx - cx);
  const area = left - right;
  if (Math.abs(area) >= BOUND * (Math.abs(left) + Math.abs(right)) && area !== 0) return area;
  if (left === 0 && right === 0 && (ax === cx || by === cy) && (ay === cy || bx === cx)) return 0;
  const sign = signOfSum([
    [ax, by],
    [-ax, cy],
    [-cx, by],
    [-ay, bx],
    [ay, cx],
    [cy, bx],
  ]);
  return sign === 0 ? 0 : sign * Math.max(Math.abs(area), Number.MIN_VALUE);
}
