// Boxes and lengths of seeded paths against brute force: the same paths on every run.
import { describe, expect, it } from 'vitest';
import type { Box } from '../../src/geometry/box.js';
import type { Matrix } from '../../src/geometry/matrix.js';
import { pathBox } from '../../src/geometry/path-box.js';
import { pathLength } from '../../src/geometry/path-length.js';
import { type StrokeShape, strokeBox } from '../../src/geometry/stroke-box.js';
import { readPath } from '../unit/geometry/read-path.js';
import { sampleLength, samplePathBox, sampleStrokeBox } from '../unit/geometry/sample-path.js';
import { seedChance } from '../unit/geometry/seed-chance.js';

const SIDES = ['x0', 'y0', 'x1', 'y1'] as const;

interface Drawn {
  readonly d: string;
  readonly matrix: Matrix;
  readonly stroke: StrokeShape;
}

/** A path of one to three pieces of any kind, a matrix that turns, skews and mirrors, and a stroke. */
function drawPath(seed: number): Drawn {
  const next = seedChance(seed);
  const number = (from: number, to: number): number => Math.round((from + next() * (to - from)) * 100) / 100;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const point = (): string => `${number(-50, 50)} ${number(-50, 50)}`;
  const pieces = [
    () => `L${point()}`,
    () => `C${point()} ${point()} ${point()}`,
    () => `Q${point()} ${point()}`,
    () => `A${number(5, 60)} ${number(5, 60)} ${number(0, 180)} ${pick(['0', '1'])} ${pick(['0', '1'])} ${point()}`,
  ];
  const count = 1 + Math.floor(next() * 3);
  const d = `M${point()}${Array.from({ length: count }, () => pick(pieces)()).join('')}${pick(['', '', 'Z'])}`;
  const matrix: Matrix = [number(-2, 2), number(-2, 2), number(-2, 2), number(-2, 2), number(-9, 9), number(-9, 9)];
  const stroke: StrokeShape = {
    width: number(0.5, 40),
    linecap: pick(['butt', 'round', 'square'] as const),
    linejoin: pick(['miter', 'round', 'bevel'] as const),
    miterlimit: pick([1, 1.5, 4, 10]),
  };
  return { d, matrix, stroke };
}

/** `exact` holds what is sampled, and is larger by `slack` at most. */
function expectAround(exact: Box, sampled: Box, slack: number, what: string): void {
  for (const side of SIDES) {
    const outside = side.endsWith('0') ? sampled[side] - exact[side] : exact[side] - sampled[side];
    expect(outside, `${side} of ${what}`).toBeGreaterThanOrEqual(-1e-6);
    expect(outside, `${side} of ${what}`).toBeLessThanOrEqual(slack);
  }
}

const SEEDS = Array.from({ length: 60 }, (_, seed) => seed);

describe('seeded paths', () => {
  it('have the box of their points', () => {
    for (const seed of SEEDS) {
      const { d, matrix } = drawPath(seed);
      const path = readPath(d);
      expectAround(pathBox(path, matrix), samplePathBox(path, matrix, 800), 2e-3, d);
    }
  });

  it('have the length of their chords', () => {
    for (const seed of SEEDS) {
      const { d, matrix } = drawPath(seed);
      const path = readPath(d);
      const length = pathLength(path, matrix);
      expect(Math.abs(sampleLength(path, matrix, 2000) - length) / length, d).toBeLessThan(2e-6);
    }
  });

  it('have the box of the points of their stroke', () => {
    for (const seed of SEEDS) {
      const { d, matrix, stroke } = drawPath(seed);
      const path = readPath(d);
      expectAround(strokeBox(path, matrix, stroke), sampleStrokeBox(path, matrix, stroke, 1500), 0.02, d);
    }
  });

  it('have the box of both sides of a wide band about a tight bend', () => {
    const wide = { linecap: 'butt', linejoin: 'bevel', miterlimit: 4 } as const;
    for (const seed of Array.from({ length: 120 }, (_, at) => at)) {
      const next = seedChance(1000 + seed);
      const number = (from: number, to: number): number => Math.round((from + next() * (to - from)) * 100) / 100;
      const point = (): string => `${number(-50, 50)} ${number(-50, 50)}`;
      const arc = `A${number(30, 90)} ${number(4, 30)} ${number(0, 180)} ${seed & 1} ${(seed >> 1) & 1} ${point()}`;
      const bends = [`C${point()} ${point()} ${point()}`, `Q${point()} ${point()}`, arc];
      const d = `M${point()}${bends[seed % 3]}`;
      const matrix: Matrix = [number(-2, 2), number(-2, 2), number(-2, 2), number(-2, 2), 3, -4];
      const stroke = { ...wide, width: number(20, 300) };
      const path = readPath(d);
      expectAround(strokeBox(path, matrix, stroke), sampleStrokeBox(path, matrix, stroke, 2000), 0.02, `${seed} ${d}`);
    }
  });
});
