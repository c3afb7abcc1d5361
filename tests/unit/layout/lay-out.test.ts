// Copies in rows: places, turns, gutters, what is free, and what is said where they do not fit.
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/layout/lay-out.js';
import type { Layout } from '../../../src/model/layout.js';
import { makeRectangle, makeSheet } from './make-piece.js';

const PIECE = makeRectangle(100, 60, 0, 7, 11);

function laid(...args: Parameters<typeof layOut>): Layout {
  const { layout, findings } = layOut(...args);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  return layout!;
}

describe('rows as asked for', () => {
  it('start at the top left of what is free', () => {
    const sheet = makeSheet(500, 400, { ups: '3x2', place: 'origin', gripperMm: 12, gripperSide: 'top', gutterMm: 4 });
    const { matricesMm, boxesMm, columns, rows, method } = laid(PIECE, sheet, 0);
    expect({ columns, rows, method }).toEqual({ columns: 3, rows: 2, method: 'rows' });
    // Row by row, each 100 + 4 across and 60 + 4 down, below a gripper of 12; the blank's corner lies at 7, 11.
    const corners = [0, 1].flatMap((row) => [0, 1, 2].map((column) => [column * 104, 12 + row * 64]));
    expect(boxesMm.map(({ x0, y0 }) => [x0, y0])).toEqual(corners);
    expect(matricesMm[0]).toEqual([1, 0, 0, 1, -7, 1]);
    expect(matricesMm.every(([a, b, c, d]) => [a, b, c, d].join() === '1,0,0,1')).toBe(true);
  });

  it('lie in the middle unless asked otherwise', () => {
    const sheet = makeSheet(500, 400, { ups: '3x2', gripperMm: 12, gutterXMm: 10, gutterYMm: 2 });
    const { boxesMm } = laid(PIECE, sheet, 0);
    // 320 x 122 in 500 x 388: 90 and 133 to either side, gripper below.
    expect(boxesMm[0]).toEqual({ x0: 90, y0: 133, x1: 190, y1: 193 });
    expect(boxesMm[5]).toEqual({ x0: 310, y0: 195, x1: 410, y1: 255 });
  });

  it.each([
    [90, [0, 1, -1, 0], [60, 100]],
    [180, [-1, 0, 0, -1], [100, 60]],
    [270, [0, -1, 1, 0], [60, 100]],
  ] as const)('turn by %i degrees, clockwise', (turn, linear, size) => {
    const sheet = makeSheet(500, 400, { ups: '2x1', turn, place: 'origin' });
    const { matricesMm, boxesMm } = laid(PIECE, sheet, 0);
    expect(matricesMm[1]!.slice(0, 4)).toEqual(linear);
    expect(boxesMm[0]).toEqual({ x0: 0, y0: 0, x1: size[0], y1: size[1] });
    expect(boxesMm[1]!.x0).toBe(size[0]);
  });

  it('lie head to tail: every other row upside down, in the same boxes', () => {
    const sheet = makeSheet(500, 400, { ups: '2x3', turn: 'head-to-tail', place: 'origin' });
    const { matricesMm, boxesMm, method } = laid(PIECE, sheet, 0);
    expect(matricesMm.map(([a]) => a)).toEqual([1, 1, -1, -1, 1, 1]);
    expect(boxesMm.map(({ y0 }) => y0)).toEqual([0, 0, 60, 60, 120, 120]);
    expect(method).toBe('head-to-tail rows');
  });

  it('are scaled where asked, and never in silence', () => {
    const { layout, findings } = layOut(PIECE, makeSheet(500, 400, { ups: '2x1', scale: 0.5, place: 'origin' }), 0);
    expect(layout!.boxesMm[1]).toEqual({ x0: 50, y0: 0, x1: 100, y1: 30 });
    expect(layout!.blankAreaMm2).toBe(1500);
    expect(findings.map(({ code }) => code)).toEqual(['sheet/scaled']);
  });

  it('keep what is drawn beyond the blanks, and the marks, within what is free', () => {
    const bleeding = makeRectangle(100, 60, 3);
    const sheet = makeSheet(300, 200, { ups: '2x1', place: 'origin', marginsMm: 5, gutterMm: 6 });
    const { boxesMm, drawnMm, freeMm } = laid(bleeding, sheet, 12);
    expect(freeMm).toEqual({ x0: 5, y0: 5, x1: 295, y1: 195 });
    expect(boxesMm[0]).toEqual({ x0: 20, y0: 20, x1: 120, y1: 80 });
    expect(drawnMm).toEqual({ x0: 17, y0: 17, x1: 229, y1: 83 });
  });

  it('fill the room to the last: what fits exactly fits', () => {
    expect(laid(PIECE, makeSheet(308, 60, { ups: '3x1', gutterMm: 4 }), 0).copies).toBe(3);
    expect(layOut(PIECE, makeSheet(307.99, 60, { ups: '3x1', gutterMm: 4 }), 0).layout).toBeNull();
  });

  it('are refused where they do not fit, with what is needed, what is there, and how many would', () => {
    const { layout, findings } = layOut(PIECE, makeSheet(320, 200, { ups: '4x3', gripperMm: 10 }), 0);
    expect(layout).toBeNull();
    expect(findings[0]).toMatchObject({
      code: 'sheet/too-small',
      data: {
        measuredWidthMm: 400,
        measuredHeightMm: 180,
        allowedWidthMm: 320,
        allowedHeightMm: 190,
        columns: 3,
        rows: 3,
      },
    });
  });
});

describe('a number of copies', () => {
  it('takes full rows and leaves the last one short', () => {
    const { copies, columns, rows } = laid(PIECE, makeSheet(320, 400, { ups: 5, turn: 0 }), 0);
    expect({ copies, columns, rows }).toEqual({ copies: 5, columns: 3, rows: 2 });
  });

  it('is refused above what fits', () => {
    const one = layOut(PIECE, makeSheet(80, 50, { ups: 1 }), 0).findings[0]!.message;
    expect(one).toContain('One copy needs 100 x 60 mm; the sheet of 80 x 50 mm');
    expect(layOut(PIECE, makeSheet(80, 50, { ups: '1x1' }), 0).findings[0]!.message).toContain('1 x 1 copy needs 100');
    expect(layOut(PIECE, makeSheet(320, 200, { ups: 10, turn: 0 }), 0).findings[0]!.code).toBe('sheet/too-small');
    expect(laid(PIECE, makeSheet(320, 200, { ups: 9, turn: 0 }), 0).copies).toBe(9);
  });
});

describe('a number of copies of which no turn is said', () => {
  it('lie as drawn, also where more would fit turned', () => {
    const { matricesMm, columns } = laid(PIECE, makeSheet(320, 200, { ups: 8 }), 0);
    expect(matricesMm.map(([a, b]) => [a, b])).toEqual(Array(8).fill([1, 0]));
    expect(columns).toBe(3);
    expect(layOut(PIECE, makeSheet(320, 200, { ups: 10 }), 0).findings[0]!.code).toBe('sheet/too-small');
  });
});

describe('yield', () => {
  it('is held against rows of the turns that are open', () => {
    const along = (turn: 0 | 90) => laid(PIECE, makeSheet(320, 200, { ups: 'max', turn }), 0);
    expect([along(0).copies, along(0).rectangle.copies]).toEqual([9, 9]);
    expect([along(90).copies, along(90).rectangle.copies]).toEqual([10, 10]);
  });

  it('is the area of the blanks against that of the sheet, with that of plain rows beside it', () => {
    const { copies, yieldShare, sheetAreaMm2, rectangle } = laid(PIECE, makeSheet(320, 200, { ups: '2x2' }), 0);
    expect(copies).toBe(4);
    expect(sheetAreaMm2).toBe(64_000);
    expect(yieldShare).toBeCloseTo((4 * 6000) / 64_000, 12);
    // 3 x 3 lying, 5 x 2 standing.
    expect(rectangle.copies).toBe(10);
    expect(rectangle.yieldShare).toBeCloseTo(60_000 / 64_000, 12);
  });
});

describe('bleed', () => {
  const bleeding = makeRectangle(100, 60, 3);

  it('stays out of the neighbours where the gutter is as wide', () => {
    expect(layOut(bleeding, makeSheet(500, 400, { ups: '2x2', gutterMm: 3 }), 0).findings).toEqual([]);
  });

  it('that would print on a neighbour is told, with the gutter it takes', () => {
    const { findings } = layOut(bleeding, makeSheet(500, 400, { ups: '2x2', gutterMm: 1.5 }), 0);
    expect(findings[0]).toMatchObject({ code: 'sheet/bleed-into-neighbour', data: { gutterMm: 3, count: 4 } });
    expect(findings[0]!.data.measuredMm).toBeCloseTo(1.5, 9);
  });

  it('that a narrow gutter lets meet is kept apart where the most copies are looked for', () => {
    const { layout, findings } = layOut(bleeding, makeSheet(320, 200, { ups: 'max', gutterMm: 1, turn: 0 }), 0);
    expect(findings).toEqual([]);
    // 6 mm for the bleed at the rims, 3 mm between: 3 x 100 + 2 x 3 of 314, 3 x 60 + 2 x 3 of 194.
    expect([layout!.copies, layout!.rectangle.copies]).toEqual([9, 9]);
    // A wider gutter one way stays as asked.
    const wide = layOut(bleeding, makeSheet(320, 200, { ups: 'max', gutterXMm: 30, gutterYMm: 1, turn: 0 }), 0);
    expect([wide.findings, wide.layout!.copies, wide.layout!.rectangle.copies]).toEqual([[], 6, 6]);
  });

  it('over the corner of a notch meets no board', () => {
    // An L whose notch is where the neighbour's print reaches in: box meets box, print meets no blank.
    const notched = {
      ...makeRectangle(40, 40),
      rimsMm: [
        [
          [0, 0],
          [40, 0],
          [40, 20],
          [20, 20],
          [20, 40],
          [0, 40],
        ] as const,
      ],
      printedMm: { x0: -4, y0: 25, x1: 10, y1: 38 },
      drawnMm: { x0: -4, y0: 0, x1: 40, y1: 40 },
    };
    expect(layOut(notched, makeSheet(200, 100, { ups: '3x1', gutterMm: 1 }), 0).findings).toEqual([]);
    const low = { ...notched, printedMm: { x0: -4, y0: 5, x1: 10, y1: 18 } };
    expect(layOut(low, makeSheet(200, 100, { ups: '3x1', gutterMm: 1 }), 0).findings).toHaveLength(1);
  });
});
