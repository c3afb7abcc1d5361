// Roots of polynomials in Bernstein form.

/** Interval halvings before a crowd of roots is taken as one (2^-40 of the whole). */
const DEEPEST = 40;

/** A stretch of [0, 1] with the polynomial's coefficients on it. */
interface Stretch {
  readonly coefficients: Float64Array;
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

/**
 * Where a polynomial changes sign inside (0, 1), in no particular order. Roots it only touches may be listed or not; roots at 0 and
 * at 1 are not.
 *
 * @param coefficients - Bernstein coefficients (without binomials) over [0, 1].
 * @throws Never.
 * @accuracy Half a unit in the last place of 1 for a simple root, as far as the coefficients carry it.
 */
export function findRoots(coefficients: Float64Array): readonly number[] {
  const roots: number[] = [];
  const open: Stretch[] = [{ coefficients, from: 0, to: 1, depth: 0 }];
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    const variations = countVariations(stretch.coefficients);
    if (variations === 0) continue;
    const middle = (stretch.from + stretch.to) / 2;
    const [left, right] = halve(stretch.coefficients);
    if (stretch.depth === DEEPEST) {
      roots.push(middle);
    } else if (variations === 1) {
      roots.push(stretch.from + (stretch.to - stretch.from) * bisect(stretch.coefficients));
    } else {
      // A root on the cut itself is in neither half.
      if (right[0] === 0) roots.push(middle);
      open.push({ coefficients: left, from: stretch.from, to: middle, depth: stretch.depth + 1 });
      open.push({ coefficients: right, from: middle, to: stretch.to, depth: stretch.depth + 1 });
    }
  }
  return roots;
}

/** Changes of sign along the coefficients: by Descartes' rule at least as many as there are roots. */
function countVariations(coefficients: Float64Array): number {
  let variations = 0;
  let last = 0;
  for (const coefficient of coefficients) {
    const sign = Math.sign(coefficient);
    if (sign === 0 || Number.isNaN(sign)) continue;
    if (last !== 0 && sign !== last) variations++;
    last = sign;
  }
  return variations;
}

/** De Casteljau's scheme at one half. */
function halve(coefficients: Float64Array): readonly [Float64Array, Float64Array] {
  const right = Float64Array.from(coefficients);
  const left = new Float64Array(right.length);
  for (let level = 0; level < right.length; level++) {
    left[level] = right[0]!;
    for (let at = 0; at < right.length - 1 - level; at++) right[at] = (right[at]! + right[at + 1]!) / 2;
  }
  return [left, right];
}

/** The one root of a polynomial with one change of sign. */
function bisect(coefficients: Float64Array): number {
  const scratch = new Float64Array(coefficients.length);
  const rising = coefficients.find((coefficient) => coefficient !== 0)! < 0;
  let low = 0;
  let high = 1;
  for (let round = 0; round < 53; round++) {
    const middle = (low + high) / 2;
    const value = evaluate(coefficients, middle, scratch);
    if (value === 0) return middle;
    if (value < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function evaluate(coefficients: Float64Array, t: number, scratch: Float64Array): number {
  scratch.set(coefficients);
  for (let last = scratch.length - 1; last > 0; last--) {
    for (let at = 0; at < last; at++) scratch[at] = scratch[at]! + t * (scratch[at + 1]! - scratch[at]!);
  }
  return scratch[0]!;
}

/**
 * The product of two polynomials whose Bernstein coefficients carry their binomials.
 *
 * @throws Never.
 */
export function multiplyScaled(first: Float64Array, second: Float64Array): Float64Array {
  const product = new Float64Array(first.length + second.length - 1);
  for (let i = 0; i < first.length; i++) {
    for (let j = 0; j < second.length; j++) product[i + j] = product[i + j]! + first[i]! * second[j]!;
  }
  return product;
}

/**
 * The binomial coefficients of one degree.
 *
 * @throws Never.
 */
export function binomials(degree: number): Float64Array {
  const row = new Float64Array(degree + 1);
  row[0] = 1;
  for (let at = 1; at <= degree; at++) row[at] = (row[at - 1]! * (degree - at + 1)) / at;
  return row;
}
