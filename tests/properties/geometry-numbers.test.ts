// Numbers and path data against other readers.
import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { listSegments, readPath } from '../unit/geometry/read-path.js';

const digits = (max: number): fc.Arbitrary<string> =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: max }).map((list) => list.join(''));

const spelling: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', '+', '-'),
    fc.oneof(
      digits(25),
      digits(12).map((fraction) => `.${fraction}`),
      fc.tuple(digits(12), digits(25)).map((parts) => parts.join('.')),
    ),
    fc.oneof(
      { weight: 3, arbitrary: fc.constant('') },
      fc
        .tuple(fc.constantFrom('e', 'E'), fc.constantFrom('', '+', '-'), fc.integer({ min: 0, max: 320 }))
        .map((p) => p.join('')),
      fc
        .tuple(fc.constantFrom('e', 'E'), fc.constantFrom('', '+', '-'), fc.integer({ min: 0, max: 30 }))
        .map((p) => p.join('')),
    ),
  )
  .map((parts) => parts.join(''));

describe('numbers', () => {
  it('equal Number() to the bit', () => {
    fc.assert(
      fc.property(spelling, (text) => {
        const path = readPath(`M${text} 7`);
        const value = Number(text);
        if (Number.isFinite(value)) expect(path.coords[0]).toBe(value);
        else expect(path.errorAt).toBe(1);
      }),
      { numRuns: 5000 },
    );
  });

  it('equal Number() for every double as printed', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(readPath(`M7 ${value}`).coords[1]).toBe(Number(String(value)));
      }),
      { numRuns: 5000 },
    );
  });
});

const number = fc.oneof(
  fc.integer({ min: -999, max: 999 }).map(String),
  fc.integer({ min: -99999, max: 99999 }).map((n) => String(n / 100)),
  fc.integer({ min: 1, max: 999 }).map((n) => `.${n}`),
  fc.integer({ min: 1, max: 99 }).map((n) => `${n}e-1`),
);
const flag = fc.constantFrom('0', '1');
const COUNTS = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2 } as const;

/** Joins numbers as tightly or as loosely as the grammar allows. */
function joinNumbers(numbers: readonly string[], gaps: readonly string[]): string {
  return numbers.reduce((text, next, index) => {
    if (index === 0) return next;
    const gap = gaps[index % gaps.length]!;
    const last = numbers[index - 1]!;
    const tight = next.startsWith('-') || (next.startsWith('.') && (last.includes('.') || last.includes('e')));
    return text + (gap === '' && !tight ? ' ' : gap) + next;
  }, '');
}

const gaps = fc.array(fc.constantFrom('', ' ', ',', ' , ', '\n', '  '), { minLength: 1, maxLength: 5 });

const command: fc.Arbitrary<string> = fc.oneof(
  fc
    .tuple(fc.constantFrom('M', 'L', 'H', 'V', 'C', 'S', 'Q', 'T'), fc.boolean(), fc.integer({ min: 1, max: 3 }), gaps)
    .chain(([letter, relative, repeats, between]) => {
      const count = COUNTS[letter as keyof typeof COUNTS] * repeats;
      return fc
        .array(number, { minLength: count, maxLength: count })
        .map((list) => (relative ? letter.toLowerCase() : letter) + joinNumbers(list, between));
    }),
  fc
    .tuple(fc.constantFrom('A', 'a'), number, number, number, flag, flag, fc.constantFrom('', ' ', ','), number, number)
    .map(([letter, rx, ry, turn, large, sweep, gap, x, y]) => {
      return `${letter}${rx} ${ry} ${turn} ${large}${gap}${sweep}${gap}${x},${y}`;
    }),
  fc.constantFrom('Z', 'z'),
);

describe('path data', () => {
  it('is read as another reader does', () => {
    fc.assert(
      fc.property(fc.array(command, { maxLength: 8 }), (commands) => {
        const d = `M1 2${commands.join('')}`;
        const ours = readPath(d);
        expect(ours.errorAt).toBe(-1);
        expect(normalise(listSegments(ours))).toEqual(normalise(readElsewhere(d)));
      }),
      { numRuns: 2000 },
    );
  });
});

type Segments = readonly (readonly (string | number)[])[];

/** Absolute, without H, V, S and T: what is left to do after svgpath's own steps. */
function readElsewhere(d: string): Segments {
  const segments: (string | number)[][] = [];
  let afterClose = false;
  svgpath(d)
    .abs()
    .unshort()
    .iterate((segment, _index, x, y) => {
      const [letter, ...numbers] = segment as unknown as [string, ...number[]];
      if (letter === 'Z' && afterClose) return;
      if (afterClose && letter !== 'M') segments.push(['M', x, y]);
      afterClose = letter === 'Z';
      if (letter === 'H') segments.push(['L', numbers[0]!, y]);
      else if (letter === 'V') segments.push(['L', x, numbers[0]!]);
      else if (letter === 'A') segments.push(['A', Math.abs(numbers[0]!), Math.abs(numbers[1]!), ...numbers.slice(2)]);
      else segments.push([letter, ...numbers]);
    });
  return segments;
}

function normalise(segments: Segments): Segments {
  return segments.map((segment) =>
    segment.map((part) => (typeof part === 'number' ? Number(part.toFixed(6)) + 0 : part)),
  );
}
