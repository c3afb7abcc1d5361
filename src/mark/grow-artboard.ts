// The artboard with a margin on every side, or with its size restated in mm.
import { printNumber } from '../geometry/print-number.js';
import { PX_PER_UNIT } from '../geometry/units.js';
import type { Artboard } from '../model/artwork.js';
import type { RootSize } from '../model/sheet.js';

const UNTOUCHED: RootSize = { width: null, height: null, viewBox: null };
const DECIMALS = 10;

/** A stated length with something added on both sides, in its own unit; in mm where the unit is not sure. */
function growLength(
  stated: string,
  sizePx: number,
  board: { readonly marginPx: number; readonly mmPerPx: number; readonly keepUnit: boolean },
): string {
  const match = /^\s*[-+]?[0-9.]+(?:e[-+]?\d+)?\s*(mm|cm|in|pt|pc|px|q)?\s*$/i.exec(stated);
  const grownPx = sizePx + 2 * board.marginPx;
  if (match === null || !board.keepUnit) return `${printNumber(grownPx * board.mmPerPx, DECIMALS)}mm`;
  const written = match[1] ?? '';
  const unit = written.toLowerCase() === 'q' ? 'Q' : (written.toLowerCase() as keyof typeof PX_PER_UNIT);
  return printNumber(grownPx / (written === '' ? 1 : PX_PER_UNIT[unit]), DECIMALS) + written;
}

/**
 * New width, height and viewBox for the root.
 *
 * The drawing keeps its scale: the viewBox grows by the same length as the viewport, so every alignment of
 * preserveAspectRatio still holds (SVG 2, section 8.2).
 *
 * @param marginMm - Added on every side, mm.
 * @param restate - Write the size in mm, because the file's own is not sure and the caller said what it is.
 */
export function growArtboard(artboard: Artboard, marginMm: number, restate: boolean): RootSize {
  if (marginMm === 0 && !restate) return UNTOUCHED;
  const marginPx = marginMm / artboard.mmPerPx;
  const board = { marginPx, mmPerPx: artboard.mmPerPx, keepUnit: !restate };
  const [x, y, width, height] = artboard.viewBox ?? [0, 0, artboard.width, artboard.height];
  const dx = marginPx / artboard.matrix[0];
  const dy = marginPx / artboard.matrix[3];
  const box = [x - dx, y - dy, width + 2 * dx, height + 2 * dy];
  return {
    width: growLength(artboard.statedWidth, artboard.width, board),
    height: growLength(artboard.statedHeight, artboard.height, board),
    viewBox: box.map((value) => printNumber(value, DECIMALS)).join(' '),
  };
}
