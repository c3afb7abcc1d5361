// The bounds of what the checks of lines look at: at each, and one past it.
import { describe, expect, it } from 'vitest';
import { allowMeetings, areTooMany, isTangled } from '../../../src/check/measure-tangle.js';
import { listToolPieces } from '../../../src/check/tool-pieces.js';
import type { Outline } from '../../../src/geometry/outline.js';
import type { ToolLine } from '../../../src/model/tool-line.js';

function draw(points: readonly number[], closed = false): ToolLine {
  const count = points.length / 2 - (closed ? 0 : 1);
  const outline: Outline = {
    closed,
    points: Float64Array.from(points),
    starts: Uint32Array.from({ length: count }, (_, i) => i),
    curved: new Uint8Array(count),
  };
  return { outline, pass: 0, role: 'cutting', kind: 'cut', shape: null as never };
}

/** Lines across a square: as many along x as along y. */
function weave(count: number): readonly ToolLine[] {
  return Array.from({ length: count }, (_, i) => [draw([0, i, count, i]), draw([i, 0, i, count])]).flat();
}

describe('a bound of pieces', () => {
  it('counts straight pieces, the closing one too', () => {
    const lines = [draw([0, 0, 1, 0, 1, 1], true), draw([5, 5, 6, 6])];
    expect(areTooMany(lines, 4)).toBe(false);
    expect(areTooMany(lines, 3)).toBe(true);
  });
});

describe('a bound of meetings', () => {
  it('is kept by the very number allowed, and broken by one more', () => {
    const pieces = listToolPieces(weave(30));
    expect(isTangled(pieces, 900)).toBe(false);
    expect(isTangled(pieces, 899)).toBe(true);
  });

  it('lets pass what a carton or a sheet of labels draws', () => {
    expect(isTangled(listToolPieces(weave(300)))).toBe(false);
    expect(allowMeetings(1000)).toBe(508_000);
  });

  it('stops a weave of a thousand lines each way', () => {
    expect(isTangled(listToolPieces(weave(1000)))).toBe(true);
  });
});
