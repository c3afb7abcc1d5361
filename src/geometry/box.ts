// Upright boxes.

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
