// Finds boxes that meet a box.
import Flatbush from 'flatbush';
import type { Box } from './box.js';

/** An index of upright boxes. */
export interface BoxIndex {
  /** The boxes that meet or touch this one, by their place in the list, in no particular order. */
  readonly search: (x0: number, y0: number, x1: number, y1: number) => readonly number[];
  /** Whether any box that suits meets or touches this one. Ends at the first: what never suits is a way to look at each without a list. */
  readonly meets: (x0: number, y0: number, x1: number, y1: number, suits?: (place: number) => boolean) => boolean;
}

/** Whether the four numbers of a box, from a place in the list on, are finite. */
function isFiniteBox(boxes: Float64Array, at: number): boolean {
  return (
    Number.isFinite(boxes[at]) &&
    Number.isFinite(boxes[at + 1]) &&
    Number.isFinite(boxes[at + 2]) &&
    Number.isFinite(boxes[at + 3])
  );
}

/**
 * Indexes boxes: x0, y0, x1, y1 each.
 *
 * @throws Never. A box with a number that is not finite is found by nothing.
 */
export function indexBoxes(boxes: Float64Array): BoxIndex {
  // What is not finite stays out: a search that covers all others would bring it along unseen.
  const places: number[] = [];
  for (let at = 0; at < boxes.length; at += 4) if (isFiniteBox(boxes, at)) places.push(at / 4);
  if (places.length === 0) return { search: () => [], meets: () => false };
  const index = new Flatbush(places.length);
  for (const place of places) {
    const at = 4 * place;
    index.add(boxes[at]!, boxes[at + 1]!, boxes[at + 2]!, boxes[at + 3]!);
  }
  index.finish();
  if (4 * places.length === boxes.length) {
    return {
      search: (x0, y0, x1, y1) => index.search(x0, y0, x1, y1),
      meets: (x0, y0, x1, y1, suits) => index.collides(x0, y0, x1, y1, suits),
    };
  }
  return {
    search: (x0, y0, x1, y1) => index.search(x0, y0, x1, y1).map((found) => places[found]!),
    meets: (x0, y0, x1, y1, suits) =>
      index.collides(x0, y0, x1, y1, suits === undefined ? suits : (found) => suits(places[found]!)),
  };
}

/** The same of boxes that are objects. */
export function indexBoxList(boxes: readonly Box[]): BoxIndex {
  const corners = new Float64Array(4 * boxes.length);
  for (const [at, { x0, y0, x1, y1 }] of boxes.entries()) corners.set([x0, y0, x1, y1], 4 * at);
  return indexBoxes(corners);
}
