// Crosses of copies stand clear of all blanks and print.
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/layout/lay-out.js';
import { COPY_MARK_MM, placeCopyMarks } from '../../../src/layout/place-copy-marks.js';
import { makePiece, makeRectangle, makeSheet } from './make-piece.js';

const HALF = COPY_MARK_MM / 2;

describe('crosses of copies', () => {
  it('stand in the gutter, near the top left of their copy', () => {
    const piece = makeRectangle(40, 30);
    const { layout } = layOut(piece, makeSheet(200, 150, { ups: '3x2', gutterMm: 6 }), 0);
    const places = placeCopyMarks(layout!, piece);
    expect(places).toHaveLength(6);
    places.forEach((place, copy) => {
      const [x, y] = place!;
      const own = layout!.boxesMm[copy]!;
      expect(Math.abs(x - own.x0) + Math.abs(y - own.y0)).toBeLessThan(8);
      for (const box of layout!.boxesMm) {
        const clear = x + HALF < box.x0 || x - HALF > box.x1 || y + HALF < box.y0 || y - HALF > box.y1;
        expect(clear).toBe(true);
      }
    });
  });

  it('use a notch of the outline where there is no gutter', () => {
    const piece = makePiece([
      [0, 0],
      [40, 0],
      [40, 20],
      [20, 20],
      [20, 40],
      [0, 40],
    ]);
    const { layout } = layOut(piece, makeSheet(160, 160, { ups: '3x3' }), 0);
    const places = placeCopyMarks(layout!, piece);
    const middle = layout!.boxesMm[4]!;
    const [x, y] = places[4]!;
    expect([x - HALF > middle.x0 + 20, x + HALF < middle.x1, y - HALF > middle.y0 + 20, y + HALF < middle.y1]).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it('are left out where nothing is free, and keep off the print', () => {
    const tight = makeRectangle(40, 30);
    const { layout } = layOut(tight, makeSheet(120, 90, { ups: '3x3' }), 0);
    expect(placeCopyMarks(layout!, tight)).toEqual(Array.from({ length: 9 }, () => null));
    const printed = makeRectangle(40, 30, 3);
    const bled = layOut(printed, makeSheet(200, 150, { ups: '2x2', gutterMm: 6 }), 0).layout!;
    for (const place of placeCopyMarks(bled, printed)) {
      const inside = bled.boxesMm.some(
        (box) => place![0] > box.x0 - 3 && place![0] < box.x1 + 3 && place![1] > box.y0 - 3 && place![1] < box.y1 + 3,
      );
      expect(inside).toBe(false);
    }
  });
});
