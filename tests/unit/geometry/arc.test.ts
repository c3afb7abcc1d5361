// Arcs against published centres, radii and factors, and their end points.
import { describe, expect, it } from 'vitest';
import { type Arc, arcPeak, mapArc, passesAngle, readArc } from '../../../src/geometry/arc.js';
import published from '../../oracles/geometry/published.json' with { type: 'json' };
import { readPath } from './read-path.js';

/** The first arc of a path, with what its data say. */
function firstArc(d: string): {
  readonly arc: Arc;
  readonly radii: readonly [number, number];
  readonly ends: readonly number[];
} {
  const path = readPath(d);
  const sizes: Readonly<Record<number, number>> = { 0: 2, 1: 2, 2: 4, 3: 6, 4: 7, 5: 0 };
  let at = 0;
  for (let index = 0; path.ops[index] !== 4; index += 1) at += sizes[path.ops[index]!]!;
  const [fromX, fromY] = [path.coords[at - 2]!, path.coords[at - 1]!];
  const arc = readArc(path.coords, at, fromX, fromY)!;
  return {
    arc,
    radii: [path.coords[at]!, path.coords[at + 1]!],
    ends: [fromX, fromY, path.coords[at + 5]!, path.coords[at + 6]!],
  };
}

function pointAt({ cx, cy, ux, uy, vx, vy }: Arc, angle: number): readonly [number, number] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [cx + cos * ux + sin * vx, cy + cos * uy + sin * vy];
}

describe('published arcs', () => {
  const arcs = published.bbox.filter((entry) => entry.centre !== undefined);

  it('are those of arcs01 and arcs02', () => {
    expect(arcs.map(({ src }) => src)).toEqual([...Array(4).fill('svg2-arcs02'), ...Array(6).fill('svg2-arcs01')]);
  });

  for (const { src, d, centre, scaledR, lambda } of arcs) {
    it(`${src}: ${d}`, () => {
      const { arc, radii, ends } = firstArc(d);
      expect(arc.cx).toBeCloseTo(centre![0]!, 9);
      expect(arc.cy).toBeCloseTo(centre![1]!, 9);
      const [rx, ry] = [Math.hypot(arc.ux, arc.uy), Math.hypot(arc.vx, arc.vy)];
      const expected = scaledR ?? radii;
      expect(rx).toBeCloseTo(expected[0]!, 8);
      expect(ry).toBeCloseTo(expected[1]!, 8);
      // Equation 6.2: the square of the factor by which the radii were made to reach.
      expect((rx / radii[0]) ** 2).toBeCloseTo(lambda ?? 1, 8);
      const drawn = [...pointAt(arc, arc.start), ...pointAt(arc, arc.start + arc.sweep)];
      for (const [place, value] of ends.entries()) expect(drawn[place]).toBeCloseTo(value, 9);
    });
  }
});

describe('an arc', () => {
  it('sweeps as its flags say', () => {
    const sweeps = ['0 0', '0 1', '1 0', '1 1'].map((flags) => firstArc(`M10 0A10 10 0 ${flags} 0 10`).arc.sweep);
    const quarter = Math.PI / 2;
    expect(sweeps.map((sweep) => Math.round((sweep / quarter) * 1e9) / 1e9)).toEqual([-1, 1, -3, 3]);
  });

  it('is none without a radius or without a way to go', () => {
    const read = (rx: number, x: number): Arc | null => readArc(Float64Array.of(rx, 5, 0, 0, 1, x, 0), 0, 0, 0);
    expect(read(0, 9)).toBeNull();
    expect(read(5, 0)).toBeNull();
    expect(read(5, 9)).not.toBeNull();
  });

  it('is mapped point by point', () => {
    const { arc } = firstArc('M125,75 a100,50 20 1,1 100,50');
    const mapped = mapArc(arc, [2, 3, -1, 4, 50, 60]);
    const [x, y] = pointAt(arc, 1);
    const [mappedX, mappedY] = pointAt(mapped, 1);
    expect(mappedX).toBeCloseTo(2 * x - y + 50, 9);
    expect(mappedY).toBeCloseTo(3 * x + 4 * y + 60, 9);
    expect([mapped.start, mapped.sweep]).toEqual([arc.start, arc.sweep]);
  });

  it('passes the angles between its ends, not the ends', () => {
    const { arc } = firstArc('M10 0A10 10 0 0 1 0 10');
    expect([0.1, 1.5, 2 * Math.PI + 1, -2 * Math.PI + 1].map((angle) => passesAngle(arc, angle))).toEqual(
      Array(4).fill(true),
    );
    expect([0, Math.PI / 2, 2, -0.1].map((angle) => passesAngle(arc, angle))).toEqual(Array(4).fill(false));
    const back = firstArc('M10 0A10 10 0 0 0 0-10').arc;
    expect([-0.1, 0.1].map((angle) => passesAngle(back, angle))).toEqual([true, false]);
  });

  it('has its peak where it passes it', () => {
    const { arc } = firstArc('M10 0A10 10 0 0 1 0 10');
    expect(arcPeak(arc, 3, 4)).toBe(5);
    expect(arcPeak(arc, -3, 4)).toBe(-Infinity);
  });
});
