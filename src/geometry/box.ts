// Upright boxes.
import type { Matrix } from './matrix.js';

/** An upright box; empty where `x0 > x1`. User units, y down. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The box of nothing: the neutral element of `unite`. */
export const EMPTY_BOX: Box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };

/** Whether a box holds no point. */
export function isEmptyBox(box: Box): boolean {
  return !(box.x0 <= box.x1 && box.y0 <= box.y1);
}

/** The smallest box around both. */
export function unite(a: Box, b: Box): Box {
  if (isEmptyBox(a)) return b;
  if (isEmptyBox(b)) return a;
  return {
    x0: Math.min(a.x0, b.x0),
    y0: Math.min(a.y0, b.y0),
    x1: Math.max(a.x1, b.x1),
    y1: Math.max(a.y1, b.y1),
  };
}

/** What two boxes share; empty where they do not meet. */
export function intersect(a: Box, b: Box): Box {
  const box = {
    x0: Math.max(a.x0, b.x0),
    y0: Math.max(a.y0, b.y0),
    x1: Math.min(a.x1, b.x1),
    y1: Math.min(a.y1, b.y1),
  };
  return isEmptyBox(box) ? EMPTY_BOX : box;
}

/** The box with each side moved out by `d` (in, where negative); an empty box stays empty. */
export function grow(box: Box, d: number): Box {
  if (isEmptyBox(box)) return EMPTY_BOX;
  const grown = { x0: box.x0 - d, y0: box.y0 - d, x1: box.x1 + d, y1: box.y1 + d };
  return isEmptyBox(grown) ? EMPTY_BOX : grown;
}

/** The smallest upright box around the four mapped corners; an empty box stays empty. */
export function transformBox(matrix: Matrix, box: Box): Box {
  if (isEmptyBox(box)) return EMPTY_BOX;
  const [a, b, c, d, e, f] = matrix;
  const cx0 = a * box.x0;
  const cx1 = a * box.x1;
  const dx0 = c * box.y0;
  const dx1 = c * box.y1;
  const cy0 = b * box.x0;
  const cy1 = b * box.x1;
  const dy0 = d * box.y0;
  const dy1 = d * box.y1;
  return {
    x0: Math.min(cx0, cx1) + Math.min(dx0, dx1) + e,
    y0: Math.min(cy0, cy1) + Math.min(dy0, dy1) + f,
    x1: Math.max(cx0, cx1) + Math.max(dx0, dx1) + e,
    y1: Math.max(cy0, cy1) + Math.max(dy0, dy1) + f,
  };
}

/** Whether `inner` lies within `outer`, edges included; an empty box lies within every box. */
export function containsBox(outer: Box, inner: Box): boolean {
  if (isEmptyBox(inner)) return true;
  return inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 && inner.y1 <= outer.y1;
}
