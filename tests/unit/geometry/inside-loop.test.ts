// Points within loops, counted and named by hand.
import { describe, expect, it } from 'vitest';
import { isInsideLoop } from '../../../src/geometry/inside-loop.js';

type Corner = readonly [number, number];

/** Whether a point lies on a side of a loop of whole numbers: no area with its ends, and between them. */
function isOnRim(corners: readonly Corner[], x: number, y: number): boolean {
  return corners.some(([qx, qy], at) => {
    const [px, py] = corners.at(at - 1)!;
    const isLevel = (qx - px) * (y - py) === (qy - py) * (x - px);
    const isBetween = Math.min(px, qx) <= x && x <= Math.max(px, qx) && Math.min(py, qy) <= y && y <= Math.max(py, qy);
    return isLevel && isBetween;
  });
}

/** The points of the grid within a loop and on its rim. */
function countGrid(corners: readonly Corner[]): { readonly inside: number; readonly rim: number } {
  const loop = Float64Array.from(corners.flat());
  let [inside, rim] = [0, 0];
  for (let y = -12; y <= 12; y += 1) {
    for (let x = -12; x <= 12; x += 1) {
      if (isOnRim(corners, x, y)) rim += 1;
      else if (isInsideLoop(loop, x, y)) inside += 1;
    }
  }
  return { inside, rim };
}

/** The corners in reverse, and from each corner on. */
function redraw(corners: readonly Corner[]): readonly (readonly Corner[])[] {
  const from = (list: readonly Corner[]) => list.map((_, at) => [...list.slice(at), ...list.slice(0, at)]);
  return [...from(corners), ...from([...corners].reverse())];
}

describe('isInsideLoop', () => {
  // Pick, Geometrisches zur Zahlenlehre, 1899: area = points inside + points on the rim / 2 - 1. Areas by hand.
  it.each([
    {
      name: 'triangle',
      area: 60,
      corners: [
        [-7, -5],
        [9, -1],
        [3, 5],
      ],
    },
    {
      name: 'rectangle',
      area: 55,
      corners: [
        [-8, 1],
        [3, 1],
        [3, 6],
        [-8, 6],
      ],
    },
    {
      name: 'diamond with corners level with points inside',
      area: 72,
      corners: [
        [-6, 0],
        [0, -6],
        [6, 0],
        [0, 6],
      ],
    },
    {
      name: 'crown with teeth of several heights',
      area: 60 + 12 + 35,
      corners: [
        [-9, 5],
        [-9, -5],
        [-5, 1],
        [-1, -9],
        [2, 1],
        [6, 1],
        [6, 5],
      ],
    },
    {
      name: 'comb turned on its side',
      area: 2 * (24 + 19.5 + 13.5),
      corners: [
        [-3, -9],
        [6, -6],
        [1, -3],
        [9, 0],
        [1, 3],
        [6, 6],
        [-3, 9],
      ],
    },
  ] as const)('holds as many points of the grid as the area of a $name asks for', ({ area, corners }) => {
    for (const drawn of redraw(corners)) {
      const { inside, rim } = countGrid(drawn);
      expect(inside + rim / 2 - 1).toBe(area);
    }
  });

  it('goes by the odd number of sides: the middle of a star drawn in one stroke is outside', () => {
    const star = Float64Array.from({ length: 10 }, (_, at) => {
      const angle = (4 * Math.PI * (at >> 1)) / 5;
      return at % 2 === 0 ? 3 - 10 * Math.sin(angle) : 7 - 10 * Math.cos(angle);
    });
    expect(isInsideLoop(star, 3, 7)).toBe(false);
    // The sides pass the middle at 10 cos 72 = 3.1; the tip begins there and ends at 10.
    expect(isInsideLoop(star, 3, 7 - 6)).toBe(true);
    expect(isInsideLoop(star, 3, 7 - 11)).toBe(false);
  });

  it('sees on which side of a slanting line a neighbouring double lies', () => {
    // Left of the diagonal from (-12, -12) to (24, 24): a unit off it is inside or out.
    const unit = Number.EPSILON / 2;
    const left = Float64Array.of(-12, -12, 24, 24, -12, 24);
    const right = Float64Array.of(-12, -12, 24, 24, 24, -12);
    for (let step = 1; step < 64; step += 1) {
      expect(isInsideLoop(left, 0.5, 0.5 + step * unit)).toBe(true);
      expect(isInsideLoop(left, 0.5 + step * unit, 0.5)).toBe(false);
      expect(isInsideLoop(right, 0.5, 0.5 + step * unit)).toBe(false);
      expect(isInsideLoop(right, 0.5 + step * unit, 0.5)).toBe(true);
    }
  });

  it('holds nothing without an area', () => {
    expect(isInsideLoop(Float64Array.of(), 1, 2)).toBe(false);
    expect(isInsideLoop(Float64Array.of(3, 4), 1, 2)).toBe(false);
    expect(isInsideLoop(Float64Array.of(3, 1, 9, 5), 1, 2)).toBe(false);
    expect(isInsideLoop(Float64Array.of(3, 1, 9, 5, 3, 1), 1, 4)).toBe(false);
  });
});
