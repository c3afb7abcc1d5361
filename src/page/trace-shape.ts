// The line of a shape on the screen, and whether it is to be seen there at all.
import type { Matrix } from '../geometry/matrix.js';
import { FACES, type Outlines } from '../road/list-outlines.js';
import type { PaintOrder } from './paint-order.js';

/** What is painted of one copy. */
export interface CopyOrder extends PaintOrder {
  /** From mm on the drawing to px on the screen. */
  readonly toScreen: Matrix;
}

/** What a line is drawn into. */
export interface Pen {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
}

/** Steps shorter than this are left out, px. */
const LEAST_STEP = 0.4;
/** How far a line reaches beyond its box, px. */
const REACH = 4;
/** Shapes smaller than this are not seen, px. */
const LEAST_SIZE = 0.3;

/** Draws a shape's line, without steps that nobody sees; returns how many points were set. */
export function traceShape(pen: Pen, outlines: Outlines, shape: number, { toScreen }: CopyOrder): number {
  const { points, runStarts, runClosed, shapeRuns } = outlines;
  const [a, b, c, d, e, f] = toScreen;
  let count = 0;
  for (let run = shapeRuns[shape]!; run < shapeRuns[shape + 1]!; run += 1) {
    const first = runStarts[run]!;
    const last = runStarts[run + 1]! - 1;
    let lastX = 0;
    let lastY = 0;
    for (let at = first; at <= last; at += 1) {
      const px = points[2 * at]!;
      const py = points[2 * at + 1]!;
      const x = a * px + c * py + e;
      const y = b * px + d * py + f;
      if (at === first) pen.moveTo(x, y);
      else if (at < last && Math.abs(x - lastX) + Math.abs(y - lastY) < LEAST_STEP) continue;
      else pen.lineTo(x, y);
      lastX = x;
      lastY = y;
      count += 1;
    }
    if (runClosed[run] === 1) pen.closePath();
  }
  return count;
}

/** Whether a shape is on the screen and large enough to see. */
export function isSeen({ boxes, faces }: Outlines, shape: number, { toScreen, width, height }: CopyOrder): boolean {
  if (faces[shape] === FACES.nothing) return false;
  const [a, b, c, d, e, f] = toScreen;
  const x = (boxes[4 * shape]! + boxes[4 * shape + 2]!) / 2;
  const y = (boxes[4 * shape + 1]! + boxes[4 * shape + 3]!) / 2;
  const halfX = (boxes[4 * shape + 2]! - boxes[4 * shape]!) / 2;
  const halfY = (boxes[4 * shape + 3]! - boxes[4 * shape + 1]!) / 2;
  const across = Math.abs(a) * halfX + Math.abs(c) * halfY;
  const down = Math.abs(b) * halfX + Math.abs(d) * halfY;
  const midX = a * x + c * y + e;
  const midY = b * x + d * y + f;
  const inWidth = midX + across > -REACH && midX - across < width + REACH;
  const inHeight = midY + down > -REACH && midY - down < height + REACH;
  return inWidth && inHeight && across + down > LEAST_SIZE / 2;
}
