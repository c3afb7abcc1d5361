// Parts edges where they cross, touch or lie on each other, so that they meet in nodes alone.
import { indexBoxes } from '../geometry/box-index.js';
import { createNumberMap } from '../geometry/number-map.js';
import { orient } from '../geometry/orient.js';
import { crossingParameter, distanceToPiece } from '../geometry/segment.js';
import { addEdge, type EdgeTable, nodeAt } from './edge-table.js';

/** A bend within the weld can cross a neighbour anew; that many rounds settle it. */
const ROUNDS = 8;

const STRIDE = 67108864;

/** The bit of the strongest of some kinds. */
function strongest(kinds: number): number {
  return kinds & -kinds;
}

/** Edges between the same nodes are one, with the kinds of all and the shape of the first; fresh where any of them is. */
function mergeEqual(table: EdgeTable, fresh: number[]): void {
  const { a, b, kinds, lines } = table;
  const seen = createNumberMap();
  let count = 0;
  for (let edge = 0; edge < a.length; edge += 1) {
    const key = Math.min(a[edge]!, b[edge]!) * STRIDE + Math.max(a[edge]!, b[edge]!);
    const first = seen.get(key);
    if (first >= 0) {
      // The line that counts where they lie on each other is the one of the stronger kind.
      if (strongest(kinds[edge]!) < strongest(kinds[first]!)) lines[first] = lines[edge]!;
      kinds[first]! |= kinds[edge]!;
      fresh[first]! |= fresh[edge]!;
      continue;
    }
    seen.set(key, count);
    a[count] = a[edge]!;
    b[count] = b[edge]!;
    kinds[count] = kinds[edge]!;
    lines[count] = lines[edge]!;
    fresh[count] = fresh[edge]!;
    count += 1;
  }
  for (const list of [a, b, kinds, lines, fresh]) list.length = count;
}

/** Boxes of all edges, grown by the weld. */
function boxEdges(table: EdgeTable): Float64Array {
  const { nodes, a, b } = table;
  const boxes = new Float64Array(4 * a.length);
  for (let edge = 0; edge < a.length; edge += 1) {
    const [ax, ay, bx, by] = [nodes.x[a[edge]!]!, nodes.y[a[edge]!]!, nodes.x[b[edge]!]!, nodes.y[b[edge]!]!];
    boxes[4 * edge] = Math.min(ax, bx) - nodes.weld;
    boxes[4 * edge + 1] = Math.min(ay, by) - nodes.weld;
    boxes[4 * edge + 2] = Math.max(ax, bx) + nodes.weld;
    boxes[4 * edge + 3] = Math.max(ay, by) + nodes.weld;
  }
  return boxes;
}

type Cuts = Map<number, number[]>;

function addCut(cuts: Cuts, edge: number, node: number): void {
  const list = cuts.get(edge);
  if (list === undefined) cuts.set(edge, [node]);
  else if (!list.includes(node)) list.push(node);
}

/** Notes a node on an edge that passes it by less than the weld; false where it does not. */
function cutAtNode(table: EdgeTable, cuts: Cuts, edge: number, node: number): boolean {
  const { nodes } = table;
  const a = table.a[edge]!;
  const b = table.b[edge]!;
  if (node === a || node === b) return true;
  const { x, y } = nodes;
  if (distanceToPiece(x[a]!, y[a]!, x[b]!, y[b]!, x[node]!, y[node]!) > nodes.weld) return false;
  addCut(cuts, edge, node);
  return true;
}

function cutPair(table: EdgeTable, cuts: Cuts, p: number, q: number): void {
  const { nodes } = table;
  const [a, b, c, d] = [table.a[p]!, table.b[p]!, table.a[q]!, table.b[q]!];
  let touches = cutAtNode(table, cuts, p, c);
  touches = cutAtNode(table, cuts, p, d) || touches;
  touches = cutAtNode(table, cuts, q, a) || touches;
  touches = cutAtNode(table, cuts, q, b) || touches;
  if (touches) return;
  const [ax, ay, bx, by] = [nodes.x[a]!, nodes.y[a]!, nodes.x[b]!, nodes.y[b]!];
  const [cx, cy, dx, dy] = [nodes.x[c]!, nodes.y[c]!, nodes.x[d]!, nodes.y[d]!];
  if (orient(ax, ay, bx, by, cx, cy) > 0 === orient(ax, ay, bx, by, dx, dy) > 0) return;
  if (orient(cx, cy, dx, dy, ax, ay) > 0 === orient(cx, cy, dx, dy, bx, by) > 0) return;
  const t = crossingParameter([ax, ay, bx, by], [cx, cy, dx, dy]);
  if (t === null) return;
  const node = nodeAt(nodes, ax + t * (bx - ax), ay + t * (by - ay));
  if (node !== a && node !== b) addCut(cuts, p, node);
  if (node !== c && node !== d) addCut(cuts, q, node);
}

/** Where edges must be parted, by edge. Two edges that were there in the round before have been held against each other. */
function findCuts(table: EdgeTable, fresh: readonly number[]): Cuts {
  const boxes = boxEdges(table);
  const index = indexBoxes(boxes);
  const cuts: Cuts = new Map();
  let edge = 0;
  const cut = (other: number): boolean => {
    if (other > edge) cutPair(table, cuts, edge, other);
    else if (fresh[other] === 0) cutPair(table, cuts, other, edge);
    return false;
  };
  for (; edge < table.a.length; edge += 1) {
    if (fresh[edge] === 0) continue;
    const at = 4 * edge;
    index.meets(boxes[at]!, boxes[at + 1]!, boxes[at + 2]!, boxes[at + 3]!, cut);
  }
  return cuts;
}

/** Puts parts in the place of edges that are cut; returns which edges are such parts. */
function applyCuts(table: EdgeTable, cuts: Cuts): number[] {
  const { nodes, a, b, kinds, lines } = table;
  const before: EdgeTable = { nodes, a, b, kinds, lines };
  table.a = [];
  table.b = [];
  table.kinds = [];
  table.lines = [];
  const fresh: number[] = [];
  for (let edge = 0; edge < before.a.length; edge += 1) {
    const from = before.a[edge]!;
    const to = before.b[edge]!;
    const found = cuts.get(edge);
    if (found === undefined) {
      addEdge(table, from, to, before.kinds[edge]!, before.lines[edge]!);
      fresh.push(0);
      continue;
    }
    const [dx, dy] = [nodes.x[to]! - nodes.x[from]!, nodes.y[to]! - nodes.y[from]!];
    const along = (node: number): number =>
      (nodes.x[node]! - nodes.x[from]!) * dx + (nodes.y[node]! - nodes.y[from]!) * dy;
    let last = from;
    for (const node of [...found.sort((p, q) => along(p) - along(q)), to]) {
      addEdge(table, last, node, before.kinds[edge]!, before.lines[edge]!);
      last = node;
    }
    while (fresh.length < table.a.length) fresh.push(1);
  }
  return fresh;
}

/**
 * Parts edges until they meet in nodes alone.
 *
 * A node nearer to an edge than the weld is on it; edges that cross get a node there; edges between the same nodes become one.
 */
export function splitEdges(table: EdgeTable): void {
  let fresh = table.a.map(() => 1);
  mergeEqual(table, fresh);
  for (let round = 0; round < ROUNDS; round += 1) {
    const cuts = findCuts(table, fresh);
    if (cuts.size === 0) return;
    fresh = applyCuts(table, cuts);
    mergeEqual(table, fresh);
  }
}
