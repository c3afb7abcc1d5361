// What outlines cover, as lines.
import { describe, expect, it } from 'vitest';
import { type AreaPaint, areaOf, extentOfLines } from '../../../src/geometry/area.js';
import { flattenPath } from '../../../src/geometry/flatten-path.js';
import { IDENTITY } from '../../../src/geometry/matrix.js';
import { readPath } from './read-path.js';

const OPEN_AND_CLOSED = flattenPath(readPath('M0 0H4V4M9 9H8V8Z'), IDENTITY, 0.01);

const PLAIN = { miterlimit: 0, isSquare: false };

describe('areaOf', () => {
  it('closes what is filled, after all that is drawn', () => {
    const area = areaOf(OPEN_AND_CLOSED, { ...PLAIN, fillRule: 'nonzero', reach: 0 });
    expect([...area.lines]).toEqual([0, 0, 4, 0, 4, 0, 4, 4, 9, 9, 8, 9, 8, 9, 8, 8, 8, 8, 9, 9, 4, 4, 0, 0]);
    expect([area.drawnCount, area.roundCount]).toEqual([5, 6]);
  });

  it('leaves open what is only drawn', () => {
    const area = areaOf(OPEN_AND_CLOSED, { ...PLAIN, fillRule: null, reach: 2 });
    expect([area.lines.length, area.drawnCount, area.reach]).toEqual([20, 5, 2]);
  });

  it('has the extent of its lines', () => {
    expect(extentOfLines(areaOf(OPEN_AND_CLOSED, { ...PLAIN, fillRule: null, reach: 2 }))).toEqual({
      x0: 0,
      y0: 0,
      x1: 9,
      y1: 9,
    });
  });

  /** Lines to tips, after those that go round. */
  function tipsOf(d: string, paint: Partial<AreaPaint>): readonly number[] {
    const area = areaOf(flattenPath(readPath(d), IDENTITY, 0.01), { ...PLAIN, fillRule: null, reach: 1, ...paint });
    return [...area.lines.subarray(4 * area.roundCount)].map((value) => Number(value.toFixed(6)) + 0);
  }

  it('reaches to the tips of mitred corners within the limit', () => {
    const beyond = Number(((Math.SQRT2 - 1) / Math.SQRT2).toFixed(6));
    expect(tipsOf('M0 0H9V9', { miterlimit: 4 })).toEqual([9, 0, 9 + beyond, -beyond]);
    expect(tipsOf('M0 0H9V9', { miterlimit: 1.4 })).toEqual([]);
    expect(tipsOf('M0 0H9V9', { miterlimit: 2 / Math.SQRT2 })).toHaveLength(4);
    expect(tipsOf('M0 0H9V9', {})).toEqual([]);
    expect(tipsOf('M0 0H9V9H0Z', { miterlimit: 4 })).toHaveLength(16);
    expect(tipsOf('M0 0A9 9 0 0 1 18 0', { miterlimit: 4 })).toEqual([]);
    expect(tipsOf('M0 0H9H0', { miterlimit: 4 })).toEqual([]);
  });

  it('reaches to the tip of a slanted corner, by the width of the band', () => {
    // In along 3/5, 4/5 and out along -4/5, 3/5: the tip lies along their difference, by the root of 2 half widths; the last half width of
    // that is the round end of the line that leads there.
    const share = (2 * (Math.SQRT2 - 1)) / Math.SQRT2;
    const tip = [3 + 1.4 * share, 4 + 0.2 * share].map((value) => Number(value.toFixed(6)));
    expect(tipsOf('M0 0L3 4L-1 7', { miterlimit: 4, reach: 2 })).toEqual([3, 4, ...tip]);
    expect(tipsOf('M-1 7L3 4L0 0', { miterlimit: 4, reach: 2 })).toEqual([3, 4, ...tip]);
  });

  it('passes over points that repeat the one before', () => {
    const [once] = [tipsOf('M0 0H9V9', { miterlimit: 4 })];
    expect(tipsOf('M0 0H9H9V9', { miterlimit: 4 })).toEqual([...once, ...once]);
    expect(tipsOf('M0 0H9H9', { isSquare: true })).toEqual([0, 0, -1, 0, 9, 0, 10, 0]);
  });

  it('reaches on from square ends, each in its own direction', () => {
    expect(tipsOf('M0 0L3 4L-1 7', { isSquare: true, reach: 2 })).toEqual([0, 0, -1.2, -1.6, -1, 7, -2.6, 8.2]);
    expect(tipsOf('M0 0L3 4L-1 7', { isSquare: true, reach: 0 })).toEqual([]);
    expect(tipsOf('M5 5L5 5', { isSquare: true })).toEqual([]);
  });

  it('reaches on from square ends', () => {
    expect(tipsOf('M0 0H9', { isSquare: true })).toEqual([0, 0, -1, 0, 9, 0, 10, 0]);
    expect(tipsOf('M0 0H9V9Z', { isSquare: true })).toEqual([]);
  });
});
