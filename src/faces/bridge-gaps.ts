// Bridges small openings: cut ends that almost meet, creases that stop short of the line they run to.
import { indexBoxes } from '../geometry/box-index.js';
import { meetAhead, nearestParameter } from '../geometry/segment.js';
import { addEdge, CREASE, CUT, type EdgeTable, nodeAt, PERFORATION } from './edge-table.js';

/** A node with one edge. */
export interface EdgeEnd {
  readonly node: number;
  /** Until edges are split again. */
  readonly edge: number;
  /** The line that the edge is part of. */
  readonly line: number;
  readonly x: number;
  readonly y: number;
  /** Unit vector in which the edge runs when it ends. */
  readonly dx: number;
  readonly dy: number;
}

/** How far openings are bridged, px. */
export interface Reach {
  /** Ends nearer to a line than this lie on it. */
  readonly snap: number;
  /** Cut ends nearer to each other than this are joined. */
  readonly gap: number;
  /** A crease that stops this short of a line folds up to it. */
  readonly crease: number;
}

/** An opening between two cut ends. */
export interface Bridge {
  readonly from: EdgeEnd;
  readonly to: EdgeEnd;
  readonly gap: number;
}

/**
 * Ends of edges that meet no other edge.
 *
 * @param kinds - Bits of the kinds that are looked at.
 */
export function listEnds(table: EdgeTable, kinds: number): readonly EdgeEnd[] {
  const { nodes, a, b } = table;
  const degree = new Uint32Array(nodes.x.length);
  for (let edge = 0; edge < a.length; edge += 1) {
    if ((table.kinds[edge]! & kinds) === 0) continue;
    degree[a[edge]!]! += 1;
    degree[b[edge]!]! += 1;
  }
  const ends: EdgeEnd[] = [];
  const add = (node: number, other: number, edge: number): void => {
    if (degree[node] !== 1) return;
    const [x, y] = [nodes.x[node]!, nodes.y[node]!];
    const [dx, dy] = [x - nodes.x[other]!, y - nodes.y[other]!];
    const length = Math.hypot(dx, dy);
    ends.push({ node, edge, line: table.lines[edge]!, x, y, dx: dx / length, dy: dy / length });
  };
  for (let edge = 0; edge < a.length; edge += 1) {
    if ((table.kinds[edge]! & kinds) === 0) continue;
    add(a[edge]!, b[edge]!, edge);
    add(b[edge]!, a[edge]!, edge);
  }
  return ends;
}

/** Joins cut ends that lie near each other, the nearest first, each end once. */
function bridgeCuts(table: EdgeTable, gap: number): readonly Bridge[] {
  // A crease that ends in the opening does not close it.
  const cuts = listEnds(table, CUT);
  const boxes = new Float64Array(cuts.flatMap(({ x, y }) => [x, y, x, y]));
  const index = indexBoxes(boxes);
  const pairs: Bridge[] = [];
  for (const [place, from] of cuts.entries()) {
    for (const other of index.search(from.x - gap, from.y - gap, from.x + gap, from.y + gap)) {
      if (other <= place) continue;
      const to = cuts[other]!;
      const distance = Math.hypot(to.x - from.x, to.y - from.y);
      // The two ends of a lone short piece are no opening.
      if (distance <= gap && to.edge !== from.edge) pairs.push({ from, to, gap: distance });
    }
  }
  const joined = new Set<number>();
  const bridges: Bridge[] = [];
  for (const pair of pairs.sort((p, q) => p.gap - q.gap)) {
    if (joined.has(pair.from.node) || joined.has(pair.to.node)) continue;
    joined.add(pair.from.node).add(pair.to.node);
    addEdge(table, pair.from.node, pair.to.node, CUT, pair.from.line);
    bridges.push(pair);
  }
  return bridges;
}

/** Gives the edges with which a line ends, from its last one back over a distance, as far as they hang together in one row. */
function createTails({ nodes, a, b, lines }: EdgeTable, distance: number): (end: EdgeEnd) => ReadonlySet<number> {
  // Halves of edges by the node at which they begin: the newest of each node, and the one before it.
  const newest = new Int32Array(nodes.x.length).fill(-1);
  const before = new Int32Array(2 * a.length);
  const originOf = (half: number): number => (half % 2 === 0 ? a : b)[half >> 1]!;
  for (let half = 0; half < before.length; half += 1) {
    before[half] = newest[originOf(half)]!;
    newest[originOf(half)] = half;
  }
  return (end) => {
    const tail = new Set<number>();
    // The half that leads back from the end.
    let half = a[end.edge] === end.node ? 2 * end.edge : 2 * end.edge + 1;
    for (let away = 0; away <= distance && !tail.has(half >> 1); ) {
      tail.add(half >> 1);
      const [from, to] = [originOf(half), originOf(half ^ 1)];
      away += Math.hypot(nodes.x[to]! - nodes.x[from]!, nodes.y[to]! - nodes.y[from]!);
      const [one, other] = [newest[to]!, before[newest[to]!]!];
      const onwards = one === (half ^ 1) ? other : one;
      if (other < 0 || before[other]! >= 0 || lines[onwards >> 1] !== end.line) break;
      half = onwards;
    }
    return tail;
  };
}

/** The nearest point on another edge that an end runs to, or that lies within the snap around it. */
function findTarget(
  table: EdgeTable,
  near: readonly number[],
  end: EdgeEnd,
  snap: number,
  ahead: number,
): readonly [number, number] | null {
  const { nodes, a, b } = table;
  let best: readonly [number, number] | null = null;
  let least = Infinity;
  for (const edge of near) {
    const p = [nodes.x[a[edge]!]!, nodes.y[a[edge]!]!, nodes.x[b[edge]!]!, nodes.y[b[edge]!]!] as const;
    const t = nearestParameter(...p, end.x, end.y);
    const [x, y] = [p[0] + t * (p[2] - p[0]), p[1] + t * (p[3] - p[1])];
    const distance = Math.hypot(x - end.x, y - end.y);
    if (distance <= snap && distance < least) [best, least] = [[x, y], distance];
    const met = meetAhead(end, p, { beside: snap, weld: nodes.weld });
    if (met !== null && met.along <= ahead && met.along < least) [best, least] = [[met.x, met.y], met.along];
  }
  return best;
}

/** Leads ends to the line they almost touch. */
function bridgeEnds(table: EdgeTable, ends: readonly EdgeEnd[], reach: Reach): void {
  if (ends.length === 0) return;
  const { nodes, a, b } = table;
  const boxes = new Float64Array(4 * a.length);
  for (let edge = 0; edge < a.length; edge += 1) {
    const p = [nodes.x[a[edge]!]!, nodes.y[a[edge]!]!, nodes.x[b[edge]!]!, nodes.y[b[edge]!]!] as const;
    boxes.set([Math.min(p[0], p[2]), Math.min(p[1], p[3]), Math.max(p[0], p[2]), Math.max(p[1], p[3])], 4 * edge);
  }
  const index = indexBoxes(boxes);
  const tailOf = createTails(table, reach.snap);
  for (const end of ends) {
    const kinds = table.kinds[end.edge]!;
    const ahead = (kinds & CUT) === 0 ? reach.crease : reach.snap;
    const r = Math.max(ahead, reach.snap);
    // Short pieces of a curve lie within the snap of its own end, and are nothing that it runs to.
    const tail = tailOf(end);
    const near = index.search(end.x - r, end.y - r, end.x + r, end.y + r).filter((edge) => !tail.has(edge));
    const target = findTarget(table, near, end, reach.snap, ahead);
    if (target === null) continue;
    addEdge(table, end.node, nodeAt(nodes, target[0], target[1]), kinds, end.line);
  }
}

/**
 * Adds edges over small openings; edges are to be split again after it.
 *
 * @returns The openings between cut ends that are closed now.
 */
export function bridgeGaps(table: EdgeTable, reach: Reach): readonly Bridge[] {
  const ends = listEnds(table, CUT | CREASE | PERFORATION);
  const bridges = bridgeCuts(table, reach.gap);
  const joined = new Set(bridges.flatMap(({ from, to }) => [from.node, to.node]));
  bridgeEnds(
    table,
    ends.filter((end) => !joined.has(end.node)),
    reach,
  );
  return bridges;
}
