// Finds the boxes that meet a box, among those that come before a number, until enough is found.
import type { Box } from './box.js';

/** Boxes that can be searched. */
export interface BoxTree {
  /**
   * Shows boxes that meet a box, in no order, until the caller has seen enough.
   *
   * @param below - Only boxes with a smaller number are shown.
   * @param look - Told the number of a box; true ends the search.
   * @returns Whether the caller ended it.
   */
  search(box: Box, below: number, look: (item: number) => boolean): boolean;
}

/** Children of a node. */
const WIDTH = 8;
/** Steps of the curve on either axis. */
const GRID = 1 << 12;

/** Puts a zero between all bits of a number below 4096. */
function spreadBits(value: number): number {
  let bits = value;
  bits = (bits | (bits << 8)) & 0x00ff00ff;
  bits = (bits | (bits << 4)) & 0x0f0f0f0f;
  bits = (bits | (bits << 2)) & 0x33333333;
  return (bits | (bits << 1)) & 0x55555555;
}

function isEmptyAt(boxes: Float64Array, i: number): boolean {
  return !(boxes[4 * i]! <= boxes[4 * i + 2]! && boxes[4 * i + 1]! <= boxes[4 * i + 3]!);
}

/** Numbers of the boxes in the order of a curve that keeps neighbours together; empty boxes are left out. */
function orderAlongCurve(boxes: Float64Array, count: number): Int32Array {
  let x0 = Infinity;
  let y0 = Infinity;
  let x1 = -Infinity;
  let y1 = -Infinity;
  let full = 0;
  for (let i = 0; i < count; i += 1) {
    if (isEmptyAt(boxes, i)) continue;
    full += 1;
    x0 = Math.min(x0, boxes[4 * i]!);
    y0 = Math.min(y0, boxes[4 * i + 1]!);
    x1 = Math.max(x1, boxes[4 * i + 2]!);
    y1 = Math.max(y1, boxes[4 * i + 3]!);
  }
  const keys = new Float64Array(full);
  const step = (middle: number, from: number, to: number): number =>
    to > from ? Math.min(GRID - 1, Math.floor(((middle - from) / (to - from)) * GRID)) : 0;
  let at = 0;
  for (let i = 0; i < count; i += 1) {
    if (isEmptyAt(boxes, i)) continue;
    const across = step((boxes[4 * i]! + boxes[4 * i + 2]!) / 2, x0, x1);
    const down = step((boxes[4 * i + 1]! + boxes[4 * i + 3]!) / 2, y0, y1);
    const place = spreadBits(across) + 2 * spreadBits(down);
    keys[at++] = place * count + i;
  }
  keys.sort();
  return Int32Array.from(keys, (key) => key % count);
}

interface Tree {
  /** Boxes of all nodes, four numbers each: the leaves along the curve, then level by level up to the root. */
  readonly boxes: Float64Array;
  /** Least number of a box within a node. */
  readonly least: Int32Array;
  /** First node of each level, and the count of all. */
  readonly levels: readonly number[];
}

function placeLevels(leaves: number): readonly number[] {
  const levels = [0];
  let size = leaves;
  let total = leaves;
  while (size > 1) {
    levels.push(total);
    size = Math.ceil(size / WIDTH);
    total += size;
  }
  return [...levels, total];
}

function growTree(boxes: Float64Array, order: Int32Array): Tree {
  const levels = placeLevels(order.length);
  const total = levels.at(-1)!;
  const tree = { boxes: new Float64Array(4 * total), least: new Int32Array(total), levels };
  order.forEach((item, leaf) => {
    for (let side = 0; side < 4; side += 1) tree.boxes[4 * leaf + side] = boxes[4 * item + side]!;
    tree.least[leaf] = item;
  });
  for (let level = 1; level < levels.length - 1; level += 1) {
    for (let node = levels[level]!; node < levels[level + 1]!; node += 1) {
      const first = levels[level - 1]! + (node - levels[level]!) * WIDTH;
      uniteChildren(tree, node, first, Math.min(first + WIDTH, levels[level]!));
    }
  }
  return tree;
}

function uniteChildren({ boxes, least }: Tree, node: number, first: number, end: number): void {
  let x0 = Infinity;
  let y0 = Infinity;
  let x1 = -Infinity;
  let y1 = -Infinity;
  let low = Infinity;
  for (let child = first; child < end; child += 1) {
    x0 = Math.min(x0, boxes[4 * child]!);
    y0 = Math.min(y0, boxes[4 * child + 1]!);
    x1 = Math.max(x1, boxes[4 * child + 2]!);
    y1 = Math.max(y1, boxes[4 * child + 3]!);
    low = Math.min(low, least[child]!);
  }
  boxes[4 * node] = x0;
  boxes[4 * node + 1] = y0;
  boxes[4 * node + 2] = x1;
  boxes[4 * node + 3] = y1;
  least[node] = low;
}

/** Level and place of a node, for the way down. */
function childrenOf({ levels }: Tree, node: number): readonly [number, number] {
  let level = 1;
  while (levels[level + 1]! <= node) level += 1;
  const first = levels[level - 1]! + (node - levels[level]!) * WIDTH;
  return [first, Math.min(first + WIDTH, levels[level]!)];
}

/**
 * A tree of boxes, numbered from 0; empty ones meet nothing, and edges that touch do meet.
 *
 * @param boxes - x0, y0, x1, y1, four numbers each.
 */
export function createBoxTree(boxes: Float64Array): BoxTree {
  const order = orderAlongCurve(boxes, boxes.length / 4);
  const tree = growTree(boxes, order);
  const total = tree.levels.at(-1)!;
  const meets = (node: number, box: Box): boolean =>
    tree.boxes[4 * node]! <= box.x1 &&
    tree.boxes[4 * node + 2]! >= box.x0 &&
    tree.boxes[4 * node + 1]! <= box.y1 &&
    tree.boxes[4 * node + 3]! >= box.y0;
  return {
    search(box, below, look) {
      const pending = total === 0 ? [] : [total - 1];
      for (let node = pending.pop(); node !== undefined; node = pending.pop()) {
        if (tree.least[node]! >= below || !meets(node, box)) continue;
        if (node < order.length) {
          if (look(order[node]!)) return true;
          continue;
        }
        const [first, end] = childrenOf(tree, node);
        for (let child = first; child < end; child += 1) pending.push(child);
      }
      return false;
    },
  };
}
