// Scale and place of the artboard, by hand.
import { describe, expect, it } from 'vitest';
import { centreView, fitView, listTicks, panView, zoomView } from '../../../src/page/board-view.js';

describe('a view', () => {
  it('shows all of the artboard in the middle, with room around it', () => {
    // 100 x 50 mm on 456 x 456 px: (456 - 56) / 100 = 4 px to the mm.
    expect(fitView({ width: 100, height: 50 }, { width: 456, height: 456 })).toEqual({ scale: 4, x: 28, y: 128 });
  });

  it('keeps the point under the hand when it is zoomed', () => {
    const view = zoomView({ scale: 2, x: 10, y: 20 }, 6, 30, 40);
    // (30 - 10) / 2 = 10 mm lie under the hand before and after.
    expect(view).toEqual({ scale: 6, x: -30, y: -20 });
    expect((30 - view.x) / view.scale).toBe(10);
  });

  it('stays between the least and the greatest scale', () => {
    expect(zoomView({ scale: 1, x: 0, y: 0 }, 1e9, 0, 0).scale).toBe(4000);
    expect(zoomView({ scale: 1, x: 0, y: 0 }, 0, 0, 0).scale).toBe(0.02);
  });

  it('moves, and brings a point into the middle', () => {
    expect(panView({ scale: 2, x: 1, y: 2 }, 10, -5)).toEqual({ scale: 2, x: 11, y: -3 });
    expect(centreView({ scale: 2, x: 0, y: 0 }, { width: 100, height: 60 }, 10, 5)).toEqual({ scale: 2, x: 30, y: 20 });
  });
});

describe('ticks', () => {
  it('stand on whole steps, the numbered ones at least 56 px apart', () => {
    const ticks = listTicks(4, 28, 456);
    const long = ticks.filter((tick) => tick.long);
    expect(long.map(({ mm }) => mm)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(long.map(({ at }) => at)).toEqual([28, 108, 188, 268, 348, 428]);
    expect(ticks[1]!.mm - ticks[0]!.mm).toBe(2);
  });

  it('have no negative zero', () => {
    expect(listTicks(4, 28, 100).every(({ mm }) => !Object.is(mm, -0))).toBe(true);
    expect(listTicks(4, 28, 100).some(({ mm }) => mm === 0)).toBe(true);
  });
});
