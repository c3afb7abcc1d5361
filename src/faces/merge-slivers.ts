// Faces too thin to be board are part of what lies beside them.

import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import type { EdgeTable } from './edge-table.js';
import type { Nesting } from './nest-loops.js';
import type { Loops } from './trace-loops.js';

/** Face of each half edge after thin faces went to the face along their longest side; -1 outside, -2 for loose edges. */
export interface HalfFaces {
  readonly faceOf: Int32Array;
  /** Whether a face still stands for itself. */
  readonly stands: Uint8Array;
}

/** The face along the longest side of each thin face, or -1 where that is the outside; keyed by thin face. */
function findNeighbours(table: EdgeTable, plain: Int32Array, thin: ReadonlySet<number>): ReadonlyMap<number, number> {
  const { nodes, a, b } = table;
  const shared = new Map<number, Map<number, number>>();
  for (let half = 0; half < plain.length; half += 1) {
    const [face, other] = [plain[half]!, plain[half ^ 1]!];
    if (face === other || !thin.has(face)) continue;
    const [p, q] = [a[half >> 1]!, b[half >> 1]!];
    const sides = shared.get(face) ?? new Map<number, number>();
    shared.set(face, sides);
    sides.set(other, (sides.get(other) ?? 0) + Math.hypot(nodes.x[q]! - nodes.x[p]!, nodes.y[q]! - nodes.y[p]!));
  }
  const neighbours = new Map<number, number>();
  for (const [face, sides] of shared) {
    const [longest] = [...sides].sort((p, q) => q[1] - p[1]);
    neighbours.set(face, longest![0]);
  }
  return neighbours;
}

/**
 * The face on each half edge.
 *
 * @param thinnest - A face whose area by half its rim is less than this is a sliver, px.
 */
export function faceHalves(table: EdgeTable, loops: Loops, nesting: Nesting, thinnest: number): HalfFaces {
  const plain = loops.loopOf.map((loop) => (loop < 0 ? -2 : nesting.faceOf[loop]!));
  const count = nesting.rims.length;
  const thin = new Set<number>();
  for (const [face, rim] of nesting.rims.entries()) {
    if (2 * loops.area[rim]! < thinnest * loops.length[rim]!) thin.add(face);
  }
  // The outside is the last item, so that any face it is joined with can be told.
  const groups = createGroups(count + 1);
  const place = (face: number): number => (face < 0 ? count : face);
  for (const [face, other] of findNeighbours(table, plain, thin)) joinGroups(groups, place(face), place(other));
  const outside = findLeader(groups, count);
  const standFor = new Int32Array(count + 1).fill(-1);
  for (let face = 0; face < count; face += 1) {
    const leader = findLeader(groups, face);
    if (leader !== outside && !thin.has(face)) standFor[leader] = face;
  }
  const stands = new Uint8Array(count);
  for (const face of standFor) if (face >= 0) stands[face] = 1;
  const faceOf = plain.map((face) => (face < 0 ? face : standFor[findLeader(groups, face)]!));
  return { faceOf, stands };
}
