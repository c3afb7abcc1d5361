// Sentences about a sheet of copies.
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/layout/lay-out.js';
import { describeLayout } from '../../../src/report/describe-layout.js';
import { DEFAULT_SHEET } from '../../../src/ticket/default-ticket.js';
import { makeRectangle } from '../layout/make-piece.js';

const request = { ...DEFAULT_SHEET, widthMm: 320, heightMm: 200, ups: '2x2' };
const piece = makeRectangle(100, 60);

describe('a layout in words', () => {
  it('tells copies, yield and rows', () => {
    expect(describeLayout(layOut(piece, request, 0).layout!)).toEqual([
      '4 copies on 320 x 200 mm, in rows, 2 x 2',
      'Yield 37.5 %: 60.0 cm² each on 0.0640 m²',
      'Rectangles in plain rows would reach 10 copies, 93.8 % of the sheet',
    ]);
  });

  it('says so where no lines enclose a blank', () => {
    const drawn = layOut({ ...piece, boxIs: 'drawn', rimsMm: [] }, request, 0).layout!;
    expect(describeLayout(drawn)[1]).toBe(
      'No cut lines enclose a blank, so the box of all that is drawn counts as one',
    );
  });
});
