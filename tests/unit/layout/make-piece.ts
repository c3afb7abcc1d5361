// Blanks and sheets for the tests of layouts, in mm.
import type { Box } from '../../../src/geometry/box.js';
import type { LayoutPiece, SheetRequest } from '../../../src/model/layout.js';
import { DEFAULT_SHEET } from '../../../src/ticket/default-ticket.js';

type Ring = readonly (readonly [number, number])[];

/** Area of a ring by the shoelace formula. */
export function areaOf(ring: Ring): number {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

function boxOf(ring: Ring): Box {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

/** A blank of one ring, printed `bleed` beyond its box (0: not printed). */
export function makePiece(ring: Ring, bleed = 0): LayoutPiece {
  const boxMm = boxOf(ring);
  const grown = { x0: boxMm.x0 - bleed, y0: boxMm.y0 - bleed, x1: boxMm.x1 + bleed, y1: boxMm.y1 + bleed };
  const nothing = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  return {
    boxMm,
    boxIs: 'blank',
    areaMm2: areaOf(ring),
    rimsMm: [ring],
    drawnMm: grown,
    printedMm: bleed === 0 ? nothing : grown,
  };
}

/** A rectangle. */
export function makeRectangle(width: number, height: number, bleed = 0, x = 0, y = 0): LayoutPiece {
  const ring: Ring = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return makePiece(ring, bleed);
}

/** A sheet, with what a ticket may say of it. */
export function makeSheet(widthMm: number, heightMm: number, more: Partial<SheetRequest> = {}): SheetRequest {
  return { ...DEFAULT_SHEET, widthMm, heightMm, ...more };
}
