// Lines as edges between nodes; points that lie together are one node.
import { createNumberMap, type NumberMap } from '../geometry/number-map.js';
import type { Outline } from '../geometry/outline.js';
import { lengthOf } from '../geometry/segment.js';
import type { LineKind } from '../model/faces.js';

/** Bits of an edge's kinds. */
export const CUT = 1;
export const CREASE = 2;
export const PERFORATION = 4;

/** A line that goes into the arrangement. */
export interface FaceLine {
  readonly outline: Outline;
  readonly kind: LineKind;
  /** The shape that draws it. */
  readonly shape: { readonly index: number };
}

/** Points, each at its place once. */
export interface NodeTable {
  readonly x: number[];
  readonly y: number[];
  /** Nodes nearer than this are one. */
  readonly weld: number;
  readonly heads: NumberMap;
  readonly next: number[];
}

/** Edges between nodes; the lists run side by side. */
export interface EdgeTable {
  readonly nodes: NodeTable;
  a: number[];
  b: number[];
  /** Bits of `CUT`, `CREASE` and `PERFORATION`: more than one where lines lie on each other. */
  kinds: number[];
  /** Position of the line that draws each edge; the first where several lie on each other. */
  lines: number[];
}

/** The bit of a kind. */
export function bitOf(kind: LineKind): number {
  return kind === 'cut' ? CUT : kind === 'crease' ? CREASE : PERFORATION;
}

/** The kind that wins where lines lie on each other: what parts the board parts it. */
export function kindOf(bits: number): LineKind {
  return (bits & CUT) !== 0 ? 'cut' : (bits & CREASE) !== 0 ? 'crease' : 'perforation';
}

/** An empty table. */
export function createEdgeTable(weld: number): EdgeTable {
  const nodes: NodeTable = { x: [], y: [], weld, heads: createNumberMap(), next: [] };
  return { nodes, a: [], b: [], kinds: [], lines: [] };
}

/** The length of an edge. @unit px */
export function edgeLength(table: EdgeTable, edge: number): number {
  const { nodes, a, b } = table;
  return lengthOf(nodes.x[b[edge]!]! - nodes.x[a[edge]!]!, nodes.y[b[edge]!]! - nodes.y[a[edge]!]!);
}

/** Whether an edge parts the board. */
export function isCut(table: EdgeTable, edge: number): boolean {
  return (table.kinds[edge]! & CUT) !== 0;
}

const STRIDE = 67108864;

/** Width of a cell of points: most points are farther from the next cell than the weld, and look at their own alone. */
const CELL_WELDS = 8;

/** The node at a point: one that is there already, the nearest first, or a new one. */
export function nodeAt(nodes: NodeTable, x: number, y: number): number {
  const { weld, heads, next } = nodes;
  const cell = CELL_WELDS * weld;
  const column = Math.floor(x / cell);
  const row = Math.floor(y / cell);
  const [fromColumn, toColumn] = [Math.floor((x - weld) / cell), Math.floor((x + weld) / cell)];
  const [fromRow, toRow] = [Math.floor((y - weld) / cell), Math.floor((y + weld) / cell)];
  let best = -1;
  let least = weld;
  for (let i = fromColumn; i <= toColumn; i += 1) {
    for (let j = fromRow; j <= toRow; j += 1) {
      for (let node = heads.get(i * STRIDE + j); node >= 0; node = next[node]!) {
        const distance = lengthOf(nodes.x[node]! - x, nodes.y[node]! - y);
        if (distance <= least) {
          least = distance;
          best = node;
        }
      }
    }
  }
  if (best >= 0) return best;
  const node = nodes.x.length;
  nodes.x.push(x);
  nodes.y.push(y);
  const key = column * STRIDE + row;
  next.push(heads.get(key));
  heads.set(key, node);
  return node;
}

/** Adds an edge; one of no length is none. */
export function addEdge(table: EdgeTable, a: number, b: number, kinds: number, line: number): void {
  if (a === b) return;
  table.a.push(a);
  table.b.push(b);
  table.kinds.push(kinds);
  table.lines.push(line);
}

/** Beyond this no carton lies. @unit px */
const FARTHEST = 1e8;

/** Adds the pieces of a line that stands at a position of the list. */
export function addLine(table: EdgeTable, line: FaceLine, position: number): void {
  const { points, closed } = line.outline;
  const kinds = bitOf(line.kind);
  let first = -1;
  let last = -1;
  for (let at = 0; at < points.length; at += 2) {
    if (!(Math.abs(points[at]!) < FARTHEST && Math.abs(points[at + 1]!) < FARTHEST)) return;
  }
  for (let at = 0; at < points.length; at += 2) {
    const node = nodeAt(table.nodes, points[at]!, points[at + 1]!);
    if (last >= 0) addEdge(table, last, node, kinds, position);
    else first = node;
    last = node;
  }
  if (closed && last >= 0) addEdge(table, last, first, kinds, position);
}
