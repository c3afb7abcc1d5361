// Lines on the screen, by hand.
import { describe, expect, it } from 'vitest';
import { type CopyOrder, isSeen, traceShape } from '../../../src/page/trace-shape.js';
import type { Outlines } from '../../../src/road/list-outlines.js';

function outline(points: readonly number[], box: readonly number[]): Outlines {
  return {
    points: Float32Array.from(points),
    runStarts: Uint32Array.from([0, points.length / 2]),
    runClosed: Uint8Array.from([1]),
    shapeRuns: Uint32Array.from([0, 1]),
    boxes: Float32Array.from(box),
    faces: Uint8Array.from([1]),
    fills: Int32Array.from([-1]),
    strokes: Int32Array.from([0]),
    widthsMm: Float32Array.from([0.25]),
    layers: Int32Array.from([-1]),
    strokeKey: Int32Array.from([0]),
    strokeKeys: ['#000000'],
    chordMm: 0.005,
  };
}

function order(toScreen: CopyOrder['toScreen']): CopyOrder {
  return { toScreen, width: 100, height: 80 } as CopyOrder;
}

function trace(points: readonly number[], toScreen: CopyOrder['toScreen']): { count: number; path: string } {
  let path = '';
  const add = (text: string): void => {
    path += text;
  };
  const pen = {
    moveTo: (x: number, y: number) => add(`M${x} ${y}`),
    lineTo: (x: number, y: number) => add(`L${x} ${y}`),
    closePath: () => add('Z'),
  };
  const count = traceShape(pen, outline(points, [0, 0, 0, 0]), 0, order(toScreen));
  return { count, path };
}

describe('a traced line', () => {
  it('goes where the copy lies', () => {
    // Turned by a quarter, twice as large, moved: (x, y) to (10 - 2y, 20 + 2x).
    expect(trace([0, 0, 4, 0, 4, 8], [0, 2, -2, 0, 10, 20])).toEqual({ count: 3, path: 'M10 20L10 28L-6 28Z' });
  });

  it('leaves out steps that nobody sees, but never its end', () => {
    const steps = Array.from({ length: 1001 }, (_, i) => [i / 1000, 0]).flat();
    const { count, path } = trace(steps, [10, 0, 0, 10, 0, 0]);
    expect(count).toBeLessThan(30);
    expect(path).toMatch(/L10 0Z$/);
  });
});

describe('a shape is seen', () => {
  const box = [10, 10, 20, 20];
  const at = (toScreen: CopyOrder['toScreen']): boolean => isSeen(outline([0, 0], box), 0, order(toScreen));

  it.each([
    ['on the screen', [1, 0, 0, 1, 0, 0], true],
    ['left of it', [1, 0, 0, 1, -30, 0], false],
    ['right of it', [1, 0, 0, 1, 100, 0], false],
    ['above it', [1, 0, 0, 1, 0, -30], false],
    ['below it', [1, 0, 0, 1, 0, 80], false],
    ['upside down on it', [-1, 0, 0, -1, 30, 30], true],
    ['too small', [0.001, 0, 0, 0.001, 10, 10], false],
  ] as const)('%s: %j', (_, toScreen, seen) => {
    expect(at(toScreen)).toBe(seen);
  });
});
