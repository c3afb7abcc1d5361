// Boxes against published values and closed forms.
import { describe, expect, it } from 'vitest';
import { EMPTY_BOX } from '../../../src/geometry/box.js';
import { IDENTITY, type Matrix } from '../../../src/geometry/matrix.js';
import { pathBox } from '../../../src/geometry/path-box.js';
import published from '../../oracles/geometry/published.json' with { type: 'json' };
import { readPath } from './read-path.js';

describe('published boxes', () => {
  for (const entry of published.bbox) {
    it(`${entry.src}: ${entry.d}`, () => {
      const box = pathBox(readPath(entry.d), IDENTITY);
      const [x = 0, y = 0, width = 0, height = 0] = entry.xywh ?? [];
      const [x0, y0, x1, y1] = entry.minmax ?? [x, y, x + width, y + height];
      // The printed numbers have nine places; whole ones are exact.
      expect(box.x0).toBeCloseTo(x0!, 8);
      expect(box.y0).toBeCloseTo(y0!, 8);
      expect(box.x1).toBeCloseTo(x1!, 8);
      expect(box.y1).toBeCloseTo(y1!, 8);
    });
  }
});

describe('a path box', () => {
  const box = (d: string, matrix: Matrix = IDENTITY) => pathBox(readPath(d), matrix);

  it('is empty without segments', () => {
    expect(box('')).toEqual(EMPTY_BOX);
    expect(box('M5 5')).toEqual(EMPTY_BOX);
  });

  // SVG 2, section 8.10.
  it('leaves out a moveto without a segment', () => {
    expect(box('M0 0 M5 5 L6 7 M99 99')).toEqual({ x0: 5, y0: 5, x1: 6, y1: 7 });
  });

  it('counts a subpath that is only closed', () => {
    expect(box('M1 1L2 2M9 5Z')).toEqual({ x0: 1, y0: 1, x1: 9, y1: 5 });
    expect(box('M3 4z')).toEqual({ x0: 3, y0: 4, x1: 3, y1: 4 });
  });

  it('goes on from the start after a closepath', () => {
    expect(box('M1 1L2 2L2 1Zl-5 0')).toEqual({ x0: -4, y0: 1, x1: 2, y1: 2 });
    expect(box('M1 1L2 2L2 1Za1 1 0 0 1 2 0')).toEqual({ x0: 1, y0: 0, x1: 3, y1: 2 });
  });

  // Closed form: the ellipse x = rx cos t, y = ry sin t turned by p reaches sqrt(rx^2 cos^2 p + ry^2 sin^2 p).
  it('measures a turned ellipse exactly', () => {
    const reachX = Math.hypot(100 * Math.cos(0.5), 50 * Math.sin(0.5));
    const reachY = Math.hypot(100 * Math.sin(0.5), 50 * Math.cos(0.5));
    const turned: Matrix = [Math.cos(0.5), Math.sin(0.5), -Math.sin(0.5), Math.cos(0.5), 7, 8];
    const found = box('M100 0A100 50 0 0 1 -100 0A100 50 0 0 1 100 0Z', turned);
    expect(found.x0).toBeCloseTo(7 - reachX, 12);
    expect(found.x1).toBeCloseTo(7 + reachX, 12);
    expect(found.y0).toBeCloseTo(8 - reachY, 12);
    expect(found.y1).toBeCloseTo(8 + reachY, 12);
  });

  // The cubic of a quarter circle with the factor 4/3 tan(pi/8) strays from it by 2.7253e-4 of the radius, outwards, at two places.
  it('sees how far the cubic of a quarter circle strays', () => {
    const { kappa90: k, max_radial_error: stray } = published.circle_cubic;
    expect((4 / 3) * Math.tan(Math.PI / 8)).toBeCloseTo(k, 15);
    const quarter = `M1 0C1 ${k} ${k} 1 0 1`;
    // Turned so that each direction between its ends comes to lie along x.
    const reaches = Array.from({ length: 901 }, (_, step) => {
      const angle = (step / 900) * (Math.PI / 2);
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return box(quarter, [cos, -sin, sin, cos, 0, 0]).x1;
    });
    expect(Math.max(...reaches)).toBeCloseTo(1 + stray, 8);
    expect(Math.min(...reaches)).toBeCloseTo(1, 12);
    expect(reaches[450]).toBeCloseTo(1, 12);
  });

  // SVG 2, section 9.5.1: a zero radius draws a line, equal ends draw nothing.
  it('draws degenerate arcs as lines or not at all', () => {
    expect(box('M0 0A0 5 0 1 1 10 4')).toEqual({ x0: 0, y0: 0, x1: 10, y1: 4 });
    expect(box('M2 3A5 5 0 1 1 2 3')).toEqual({ x0: 2, y0: 3, x1: 2, y1: 3 });
  });

  it('holds no negative zero', () => {
    const found = box('M-0 -0L-0 -0', [-1, 0, 0, -1, -0, -0]);
    expect(Object.values(found).some((value) => Object.is(value, -0))).toBe(false);
  });

  it('solves a cubic whose square term vanishes', () => {
    // x(t) = 3t(1-t) * 10 with a linear derivative.
    const found = box('M0 0C10 0 10 1 0 1');
    expect(found).toEqual({ x0: 0, y0: 0, x1: 7.5, y1: 1 });
  });
});
