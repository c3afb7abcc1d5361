// Segments cut at exact lengths, held against closed forms and against points counted by another library.
import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { createPathReader, type PathData } from '../../../src/geometry/path-data.js';
import { pathLength } from '../../../src/geometry/path-length.js';
import { lookAt, measureRuns, parameterAt, partSegment, segmentLength } from '../../../src/geometry/path-stretch.js';
import { decimalsFor, partRun, writeStretches } from '../../../src/geometry/write-stretch.js';

function read(d: string): PathData {
  const bytes = new Uint8Array(Buffer.from(d));
  const { ops, opCount, coords, coordCount } = createPathReader().read(bytes, 0, bytes.length);
  return { ops: ops.slice(0, opCount), opCount, coords: coords.slice(0, coordCount), coordCount, errorAt: -1 };
}

function runOf(d: string, matrix: Matrix = IDENTITY) {
  return measureRuns(read(d), matrix)[0]!;
}

/** Length of path data as another library turns it into curves, by many chords. */
function countLength(d: string): number {
  const curves = svgpath(d).abs().unarc().unshort();
  let length = 0;
  curves.iterate((segment, _, x, y) => {
    let numbers = segment.slice(1) as number[];
    if (segment[0] === 'Q') {
      const [cx, cy, ex, ey] = numbers as [number, number, number, number];
      numbers = [
        x + (2 * (cx - x)) / 3,
        y + (2 * (cy - y)) / 3,
        ex + (2 * (cx - ex)) / 3,
        ey + (2 * (cy - ey)) / 3,
        ex,
        ey,
      ];
    }
    if (segment[0] === 'L') length += Math.hypot(numbers[0]! - x, numbers[1]! - y);
    if (segment[0] === 'C' || segment[0] === 'Q') {
      let [px, py] = [x, y];
      for (let i = 1; i <= 4000; i += 1) {
        const t = i / 4000;
        const s = 1 - t;
        const at = (k: number, start: number): number =>
          s * s * s * start +
          3 * s * s * t * numbers[k]! +
          3 * s * t * t * numbers[k + 2]! +
          t * t * t * numbers[k + 4]!;
        const [qx, qy] = [at(0, x), at(1, y)];
        length += Math.hypot(qx - px, qy - py);
        [px, py] = [qx, qy];
      }
    }
  });
  return length;
}

describe('lengths of runs', () => {
  it('are those of the closed forms', () => {
    // Circle 2 pi r; quarter ellipse 100 x 50 = 121.10560275684605; parabola y = x^2 from 0 to 1; the arch with length 2.
    expect(runOf('M50 0A50 50 0 0 1 -50 0A50 50 0 0 1 50 0Z').length).toBeCloseTo(100 * Math.PI, 10);
    expect(runOf('M100 0A100 50 0 0 1 0 50').length).toBeCloseTo(121.10560275684605, 10);
    expect(runOf('M0 0Q.5 0 1 1').length).toBeCloseTo(1.478942857544597, 12);
    expect(runOf('M0 0C0 1 1 1 1 0').length).toBeCloseTo(2, 12);
  });

  it('equal the length of the path, run by run', () => {
    const d = 'M0 0L10 0Q15 5 10 10ZM20 20A5 9 30 1 0 30 30C40 40 50 0 60 20';
    const matrix: Matrix = [1.3, 0.2, -0.4, 0.9, 5, 7];
    const runs = measureRuns(read(d), matrix);
    expect(runs.map(({ closed }) => closed)).toEqual([true, false]);
    expect(runs.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(pathLength(read(d), matrix), 9);
  });

  it('leave out what has none', () => {
    expect(measureRuns(read('M5 5M6 6L6 6ZM0 0H1'), IDENTITY).map(({ length }) => length)).toEqual([1]);
  });
});

describe('parameters at a length', () => {
  it('part a circle evenly', () => {
    const [arc] = runOf('M50 0A50 50 0 0 1 0 50').segments;
    for (const share of [0.1, 0.25, 0.5, 0.9])
      expect(parameterAt(arc!, IDENTITY, 25 * Math.PI * share)).toBeCloseTo(share, 12);
  });

  it('are where a parabola has run so far', () => {
    const [curve] = runOf('M0 0Q.5 0 1 1').segments;
    // x = t here; length to x: x sqrt(1 + 4 x^2) / 2 + asinh(2 x) / 4.
    for (const x of [0.125, 0.5, 0.75]) {
      const length = (x * Math.sqrt(1 + 4 * x * x)) / 2 + Math.asinh(2 * x) / 4;
      expect(parameterAt(curve!, IDENTITY, length)).toBeCloseTo(x, 11);
    }
  });

  it('are the ends beyond the ends', () => {
    const [line] = runOf('M0 0H10').segments;
    expect([-1, 0, 10, 11].map((length) => parameterAt(line!, IDENTITY, length))).toEqual([0, 0, 1, 1]);
  });

  it('hold on a curve that stands still and turns back', () => {
    // Published length of the collinear cusp; half of it lies where the parameter says so.
    const [curve] = runOf('M-1 0Q1.03 0 1 0').segments;
    const t = parameterAt(curve!, IDENTITY, 1);
    expect(segmentLength(partSegment(curve!, 0, t), IDENTITY)).toBeCloseTo(1, 10);
  });

  it('give parts whose lengths are what was asked, on any curve under any matrix', () => {
    const number = fc.integer({ min: -50, max: 50 });
    const six = fc.tuple(number, number, number, number, number, number);
    fc.assert(
      fc.property(six, fc.double({ min: 0, max: 1, noNaN: true }), (c, share) => {
        const matrix: Matrix = [1.5, 0.25, -0.5, 0.75, 3, 4];
        const run = runOf(`M0 0C${c.join(' ')}`, matrix);
        if (run === undefined || run.length < 1) return;
        const [curve] = run.segments;
        const t = parameterAt(curve!, matrix, share * run.length);
        expect(segmentLength(partSegment(curve!, 0, t), matrix)).toBeCloseTo(share * run.length, 8);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('what a segment is like', () => {
  it('is the radius of a circle, also mapped, and of a parabola at its foot', () => {
    const [arc] = runOf('M50 0A50 50 0 0 1 0 50').segments;
    expect(lookAt(arc!, IDENTITY, 0.3).radius).toBeCloseTo(50, 9);
    expect(lookAt(arc!, [2, 0, 0, 2, 0, 0], 0.3).radius).toBeCloseTo(100, 9);
    const [parabola] = runOf('M0 0Q.5 0 1 1').segments;
    expect(lookAt(parabola!, IDENTITY, 0).radius).toBeCloseTo(0.5, 12);
    const [line] = runOf('M0 0H10').segments;
    expect(lookAt(line!, IDENTITY, 0.5)).toEqual({ x: 5, y: 0, dx: 10, dy: 0, radius: Infinity });
  });
});

describe('what a segment is like, held against points beside it', () => {
  const TILTED: Matrix = [1.5, 0.7, -0.4, 2, 30, -20];
  it.each([
    ['a cubic', 'M3 4C10 -9 25 30 40 8'],
    ['a quadratic', 'M3 4Q20 -30 40 8'],
    ['an arc of a turned ellipse', 'M3 4A20 11 35 0 1 40 8'],
    ['an arc the other way', 'M3 4A20 11 35 1 0 20 18'],
  ])('%s: where it is, how it runs on, and how it bends', (_, d) => {
    for (const matrix of [IDENTITY, TILTED]) {
      const [segment] = runOf(d, matrix).segments;
      const at = (t: number): readonly [number, number] => {
        const { x, y } = lookAt(segment!, matrix, t);
        return [x, y];
      };
      for (const t of [0.1, 0.35, 0.5, 0.8]) {
        const look = lookAt(segment!, matrix, t);
        // The end of the part up to there, in the frame of the segment, mapped by hand.
        const [px, py] = partSegment(segment!, 0, t).points.slice(-2) as unknown as [number, number];
        const [a, b, c, e, f, g] = matrix;
        expect(look.x).toBeCloseTo(a * px + c * py + f, 9);
        expect(look.y).toBeCloseTo(b * px + e * py + g, 9);
        // Differences over a small step: their error goes with its square.
        const step = 1e-4;
        const [before, here, after] = [at(t - step), at(t), at(t + step)];
        expect(look.dx).toBeCloseTo((after[0] - before[0]) / (2 * step), 3);
        expect(look.dy).toBeCloseTo((after[1] - before[1]) / (2 * step), 3);
        // The circle through three points: product of the sides by four times the area.
        const side = (p: readonly number[], q: readonly number[]): number => Math.hypot(q[0]! - p[0]!, q[1]! - p[1]!);
        const twice = (here[0] - before[0]) * (after[1] - before[1]) - (here[1] - before[1]) * (after[0] - before[0]);
        const radius = (side(before, here) * side(here, after) * side(before, after)) / (2 * Math.abs(twice));
        expect(Math.abs(look.radius / radius - 1), `${t}`).toBeLessThan(1e-3);
      }
    }
  });
});

describe('written stretches', () => {
  it('are lines, curves and arcs like the run they are of', () => {
    const run = runOf('M0 0H10A5 5 0 0 1 10 10Q0 10 0 5C0 3 0 2 1 1');
    expect(writeStretches(run, IDENTITY, [[2, 4]])).toBe('M2 0L4 0');
    const d = writeStretches(run, IDENTITY, [[9, run.length - 0.5]]);
    expect(d.replace(/[^A-Z]/g, '')).toBe('MLAAQC');
  });

  it('go over the start of a closed run', () => {
    const run = runOf('M0 0H10V10H0Z');
    expect(writeStretches(run, IDENTITY, [[35, 45]])).toBe('M0 5L0 0L5 0');
    expect(writeStretches(run, IDENTITY, [[0, 40]])).toBe('M0 0L10 0L10 10L0 10L0 0Z');
  });

  it('add up to the run, each as long as asked, as another library counts them', () => {
    const d = 'M0 0L40 5A30 18 25 1 1 60 40Q80 70 30 80C0 90 -30 40 0 0';
    const run = runOf(d);
    const cuts = [0, 11, 37.5, 90, 141.25, 200, run.length];
    const stretches = cuts.slice(1).map((to, i) => [cuts[i]!, to] as const);
    for (const stretch of stretches) {
      const counted = countLength(writeStretches(run, IDENTITY, [stretch]));
      // The other library makes curves of arcs; 1e-3 of 60 is its own error.
      expect(Math.abs(counted - (stretch[1] - stretch[0]))).toBeLessThan(2e-3);
      expect(pathLength(read(writeStretches(run, IDENTITY, [stretch])), IDENTITY)).toBeCloseTo(
        stretch[1] - stretch[0],
        5,
      );
    }
    expect(partRun(run, IDENTITY, [0, run.length])).toHaveLength(run.segments.length);
  });

  it('keep arcs of half a turn where they are', () => {
    const run = runOf('M0 0A20 20 0 0 1 40 0');
    const again = runOf(writeStretches(run, IDENTITY, [[0.5, run.length - 0.5]]));
    expect(again.length).toBeCloseTo(run.length - 1, 5);
    for (const { arc } of again.segments) {
      expect(arc!.cx).toBeCloseTo(20, 4);
      expect(arc!.cy).toBeCloseTo(0, 4);
    }
  });

  it('have decimals by the size of a unit', () => {
    expect(decimalsFor(IDENTITY)).toBe(6);
    expect(decimalsFor([100, 0, 0, 100, 0, 0])).toBe(8);
    expect(decimalsFor([0.001, 0, 0, 0.001, 0, 0])).toBe(3);
  });
});
