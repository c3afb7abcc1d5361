// Loops around the faces that edges enclose.
import { orient } from '../geometry/orient.js';
import { lengthOf } from '../geometry/segment.js';
import { sortFew } from '../geometry/sort-few.js';
import type { EdgeTable } from './edge-table.js';

/** A half edge 2e runs from a to b of edge e, 2e + 1 back. What it has on its left with y up is its face. */
export interface Loops {
  /** Loop of each half edge; -1 for edges that hang loose. */
  readonly loopOf: Int32Array;
  /** Next half edge around the same face. */
  readonly next: Int32Array;
  /** A half edge of each loop. */
  readonly first: readonly number[];
  /** Above zero for the rim of a face, else the rim of a hole in what lies around. @unit px2 */
  readonly area: readonly number[];
  /** @unit px */
  readonly length: readonly number[];
}

/** The node where a half edge starts. */
export function originOf(table: EdgeTable, half: number): number {
  return (half & 1) === 0 ? table.a[half >> 1]! : table.b[half >> 1]!;
}

/** Which edges are left when loose ones are taken away, from their ends on. */
function pruneLoose(table: EdgeTable): Uint8Array {
  const { nodes, a, b } = table;
  const count = a.length;
  const degree = new Uint32Array(nodes.x.length);
  // The sum of a node's edges: where one is left, it is that edge.
  const sum = new Float64Array(nodes.x.length);
  const add = (node: number, edge: number, by: 1 | -1): void => {
    degree[node]! += by;
    sum[node]! += by * edge;
  };
  for (let edge = 0; edge < count; edge += 1) {
    add(a[edge]!, edge, 1);
    add(b[edge]!, edge, 1);
  }
  const kept = new Uint8Array(count).fill(1);
  const open: number[] = [];
  for (let node = 0; node < degree.length; node += 1) if (degree[node] === 1) open.push(node);
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (degree[node] !== 1) continue;
    const edge = sum[node]!;
    kept[edge] = 0;
    for (const end of [a[edge]!, b[edge]!]) {
      add(end, edge, -1);
      if (degree[end] === 1) open.push(end);
    }
  }
  return kept;
}

/** Half edges by the node they start from, turning left around it. */
function sortAround(table: EdgeTable, kept: Uint8Array): { readonly starts: Uint32Array; readonly order: Uint32Array } {
  const { nodes, a, b } = table;
  const starts = new Uint32Array(nodes.x.length + 1);
  for (let edge = 0; edge < a.length; edge += 1) {
    if (kept[edge] === 0) continue;
    starts[a[edge]! + 1]! += 1;
    starts[b[edge]! + 1]! += 1;
  }
  for (let node = 0; node < nodes.x.length; node += 1) starts[node + 1]! += starts[node]!;
  const order = new Uint32Array(starts[nodes.x.length]!);
  const fill = starts.slice();
  for (let half = 0; half < 2 * a.length; half += 1) {
    if (kept[half >> 1] !== 0) order[fill[originOf(table, half)]!++] = half;
  }
  for (let node = 0; node < nodes.x.length; node += 1) {
    const [x, y] = [nodes.x[node]!, nodes.y[node]!];
    const isLower = (at: number): boolean => nodes.y[at]! < y || (nodes.y[at]! === y && nodes.x[at]! < x);
    const compare = (p: number, q: number): number => {
      const [to, other] = [originOf(table, p ^ 1), originOf(table, q ^ 1)];
      const [low, lower] = [isLower(to), isLower(other)];
      if (low !== lower) return low ? 1 : -1;
      return -orient(x, y, nodes.x[to]!, nodes.y[to]!, nodes.x[other]!, nodes.y[other]!);
    };
    sortFew(order, starts[node]!, starts[node + 1]!, compare);
  }
  return { starts, order };
}

/** Links each half edge to the next one around its face. */
function linkHalves(table: EdgeTable, kept: Uint8Array): Int32Array {
  const { starts, order } = sortAround(table, kept);
  const next = new Int32Array(2 * table.a.length).fill(-1);
  for (let node = 0; node + 1 < starts.length; node += 1) {
    const from = starts[node]!;
    const past = starts[node + 1]!;
    for (let at = from; at < past; at += 1) {
      const before = order[at === from ? past - 1 : at - 1]!;
      next[order[at]! ^ 1] = before;
    }
  }
  return next;
}

/** The loops of all faces; edges that hang loose bound none. */
export function traceLoops(table: EdgeTable): Loops {
  const { nodes } = table;
  const next = linkHalves(table, pruneLoose(table));
  const loopOf = new Int32Array(next.length).fill(-1);
  const first: number[] = [];
  const area: number[] = [];
  const length: number[] = [];
  for (let start = 0; start < next.length; start += 1) {
    if (next[start]! < 0 || loopOf[start]! >= 0) continue;
    const origin = originOf(table, start);
    const [x0, y0] = [nodes.x[origin]!, nodes.y[origin]!];
    let twice = 0;
    let around = 0;
    let half = start;
    do {
      loopOf[half] = first.length;
      const [p, q] = [originOf(table, half), originOf(table, half ^ 1)];
      const [px, py, qx, qy] = [nodes.x[p]! - x0, nodes.y[p]! - y0, nodes.x[q]! - x0, nodes.y[q]! - y0];
      twice += px * qy - qx * py;
      around += lengthOf(qx - px, qy - py);
      half = next[half]!;
    } while (half !== start);
    first.push(start);
    area.push(twice / 2);
    length.push(around);
  }
  return { loopOf, next, first, area, length };
}
