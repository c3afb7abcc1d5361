// How wide a line is on the artboard.
import type { Shape } from './artwork.js';

/** Line width on the artboard, mm: the mean scale of the shape's matrix times its stroke width. */
export function strokeWidthMm(shape: Shape, mmPerPx: number): number {
  const [a, b, c, d] = shape.matrix;
  const scale = shape.paint.nonScalingStroke ? 1 : Math.sqrt(Math.abs(a * d - b * c));
  return shape.paint.strokeWidth * scale * mmPerPx;
}
