// What outlines cover, as lines.
import { describe, expect, it } from 'vitest';
import { areaOf, extentOfLines } from '../../../src/geometry/area.js';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { readPath } from './read-path.js';

const OPEN_AND_CLOSED = flattenPath(readPath('M0 0H4V4M9 9H8V8Z'), IDENTITY, 0.01);

describe('areaOf', () => {
  it('closes what is filled, after all that is drawn', () => {
    const area = areaOf(OPEN_AND_CLOSED, { fillRule: 'nonzero', reach: 0 });
    expect([...area.lines]).toEqual([0, 0, 4, 0, 4, 0, 4, 4, 9, 9, 8, 9, 8, 9, 8, 8, 8, 8, 9, 9, 4, 4, 0, 0]);
    expect(area.drawnCount).toBe(5);
  });

  it('leaves open what is only drawn', () => {
    const area = areaOf(OPEN_AND_CLOSED, { fillRule: null, reach: 2 });
    expect([area.lines.length, area.drawnCount, area.reach]).toEqual([20, 5, 2]);
  });

  it('has the extent of its lines', () => {
    expect(extentOfLines(areaOf(OPEN_AND_CLOSED, { fillRule: null, reach: 2 }))).toEqual({
      x0: 0,
      y0: 0,
      x1: 9,
      y1: 9,
    });
  });
});
