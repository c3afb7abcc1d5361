// Boxes of paths and strokes against brute force.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/geometry/box.js';
import type { Matrix } from '../../src/geometry/matrix.js';
import { pathBox } from '../../src/geometry/path-box.js';
import { pathLength } from '../../src/geometry/path-length.js';
import { type StrokeShape, strokeBox } from '../../src/geometry/stroke-box.js';
import { listSegments, readPath } from '../unit/geometry/read-path.js';
import { samplePathBox, sampleStrokeBox } from '../unit/geometry/sample-path.js';
import { coordinate, matrix, pathText, segment } from './geometry-paths.js';

const SIDES = ['x0', 'y0', 'x1', 'y1'] as const;

/** `exact` holds what is sampled and is larger by `slack` at most; sharp bends may need finer steps to show it. */
function expectAround(exact: Box, sample: (steps: number) => Box, slack: number): void {
  let outside: readonly number[] = [];
  for (const steps of [300, 4000, 20_000]) {
    const sampled = sample(steps);
    outside = SIDES.map((side) => {
      if (exact[side] === sampled[side]) return 0;
      return side.endsWith('0') ? sampled[side] - exact[side] : exact[side] - sampled[side];
    });
    if (outside.every((distance) => distance <= slack)) break;
  }
  for (const distance of outside) {
    expect(distance).toBeGreaterThanOrEqual(-1e-6);
    expect(distance).toBeLessThanOrEqual(slack);
  }
}

function expectEqual(first: Box, second: Box, slack: number): void {
  for (const side of SIDES) expect(Math.abs(first[side] - second[side]), side).toBeLessThanOrEqual(slack);
}

/** The same path drawn from its end to its start. */
function reversePath(d: string): string {
  const subpaths: (readonly (string | number)[])[][] = [];
  for (const segmentOf of listSegments(readPath(d))) {
    if (segmentOf[0] === 'M') subpaths.push([]);
    subpaths.at(-1)!.push(segmentOf);
  }
  return subpaths
    .map((segments) => {
      const closed = segments.at(-1)![0] === 'Z';
      const drawn = closed ? segments.slice(0, -1) : segments;
      let text = `M${drawn.at(-1)!.slice(-2).join(' ')}`;
      for (let index = drawn.length - 1; index > 0; index--) {
        const [letter, ...numbers] = drawn[index] as [string, ...number[]];
        const end = drawn[index - 1]!.slice(-2);
        if (letter === 'A') text += `A${numbers.slice(0, 4).join(' ')} ${1 - numbers[4]!} ${end.join(' ')}`;
        else if (letter === 'C') text += `C${[...numbers.slice(2, 4), ...numbers.slice(0, 2), ...end].join(' ')}`;
        else text += `${letter}${[...numbers.slice(0, -2), ...end].join(' ')}`;
      }
      return closed ? `${text}Z` : text;
    })
    .join('');
}

const stroke: fc.Arbitrary<StrokeShape> = fc.record({
  width: fc.integer({ min: 1, max: 4000 }).map((n) => n / 64),
  linecap: fc.constantFrom('butt', 'round', 'square'),
  linejoin: fc.constantFrom('miter', 'round', 'bevel'),
  miterlimit: fc.constantFrom(1, 1.5, 4, 10),
});

describe('path boxes', () => {
  it('hold all points of the path and nothing more', () => {
    fc.assert(
      fc.property(pathText, matrix, (d, m) => {
        const path = readPath(d);
        expectAround(pathBox(path, m), (steps) => samplePathBox(path, m, steps), 1e-3);
      }),
      { numRuns: 300 },
    );
  });

  it('do not depend on the direction', () => {
    fc.assert(
      fc.property(pathText, matrix, (d, m) => {
        expectEqual(pathBox(readPath(d), m), pathBox(readPath(reversePath(d)), m), 1e-4);
      }),
      { numRuns: 300 },
    );
  });
});

describe('stroke boxes', () => {
  it('hold all points of the stroke and nothing more', () => {
    fc.assert(
      fc.property(pathText, matrix, stroke, (d, m, s) => {
        const path = readPath(d);
        expectAround(strokeBox(path, m, s), (steps) => sampleStrokeBox(path, m, s, steps), 0.01);
      }),
      { numRuns: 200 },
    );
  });

  it('hold the inner sides of tight bends', () => {
    const bend = fc.tuple(
      coordinate,
      coordinate,
      segment.filter((text) => !text.startsWith('L')),
    );
    fc.assert(
      fc.property(bend, matrix, fc.integer({ min: 20, max: 400 }), ([x, y, text], m, width) => {
        const path = readPath(`M${x} ${y}${text}`);
        const wide: StrokeShape = { width, linecap: 'butt', linejoin: 'bevel', miterlimit: 4 };
        expectAround(strokeBox(path, m, wide), (steps) => sampleStrokeBox(path, m, wide, steps), 0.01);
      }),
      { numRuns: 100 },
    );
  });

  it('do not depend on the direction', () => {
    fc.assert(
      fc.property(pathText, matrix, stroke, (d, m, s) => {
        expectEqual(strokeBox(readPath(d), m, s), strokeBox(readPath(reversePath(d)), m, s), 1e-4);
      }),
      { numRuns: 300 },
    );
  });

  it('hold the box of the path where the matrix keeps area', () => {
    fc.assert(
      fc.property(pathText, matrix, stroke, (d, m, s) => {
        const path = readPath(d);
        const [fill, outline] = [pathBox(path, m), strokeBox(path, m, s)];
        expect(outline.x0).toBeLessThanOrEqual(fill.x0 + 1e-9);
        expect(outline.y0).toBeLessThanOrEqual(fill.y0 + 1e-9);
        expect(outline.x1).toBeGreaterThanOrEqual(fill.x1 - 1e-9);
        expect(outline.y1).toBeGreaterThanOrEqual(fill.y1 - 1e-9);
      }),
      { numRuns: 300 },
    );
  });
});

describe('path lengths', () => {
  it('scale, and do not depend on turns and direction', () => {
    fc.assert(
      fc.property(pathText, fc.integer({ min: 0, max: 6283 }), (d, milliradians) => {
        const angle = milliradians / 1000;
        const plain = pathLength(readPath(d), [1, 0, 0, 1, 0, 0]);
        const [cos, sin] = [3 * Math.cos(angle), 3 * Math.sin(angle)];
        const turned: Matrix = [cos, sin, -sin, cos, 5, 6];
        expect(Math.abs(pathLength(readPath(d), turned) - 3 * plain)).toBeLessThanOrEqual(1e-8 * plain);
        expect(Math.abs(pathLength(readPath(reversePath(d)), [1, 0, 0, 1, 0, 0]) - plain)).toBeLessThanOrEqual(
          1e-6 * plain,
        );
      }),
      { numRuns: 150 },
    );
  });
});
