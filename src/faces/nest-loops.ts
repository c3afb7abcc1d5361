// Which loop is a hole of which face.
import { indexBoxes } from '../geometry/box-index.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import { boundPoints } from '../geometry/outline.js';
import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import type { EdgeTable } from './edge-table.js';
import { type Loops, originOf } from './trace-loops.js';

/** Faces by number; -1 is what lies outside of all. */
export interface Nesting {
  /** Face of each loop: its own where it is a rim, the one around where it is a hole. */
  readonly faceOf: Int32Array;
  /** Loop that is the rim of each face. */
  readonly rims: readonly number[];
  /** Points of the rim of each face. */
  readonly outlines: readonly Float64Array[];
  /** Loops that are holes of each face. */
  readonly holes: readonly (readonly number[])[];
  /** The innermost face around a point. */
  readonly find: (x: number, y: number) => number;
}

/** The points of a loop. */
export function loopPoints(table: EdgeTable, loops: Loops, loop: number): Float64Array {
  const points: number[] = [];
  const start = loops.first[loop]!;
  let half = start;
  do {
    const node = originOf(table, half);
    points.push(table.nodes.x[node]!, table.nodes.y[node]!);
    half = loops.next[half]!;
  } while (half !== start);
  return new Float64Array(points);
}

/** Tells rims from holes, and finds the face around each hole. */
export function nestLoops(table: EdgeTable, loops: Loops): Nesting {
  const rims: number[] = [];
  const faceOf = new Int32Array(loops.first.length).fill(-1);
  for (const [loop, area] of loops.area.entries()) {
    if (area <= 0) continue;
    faceOf[loop] = rims.length;
    rims.push(loop);
  }
  const outlines = rims.map((loop) => loopPoints(table, loops, loop));
  const boxes = new Float64Array(4 * outlines.length);
  for (let face = 0; face < outlines.length; face += 1) boxes.set(boundPoints(outlines[face]!), 4 * face);
  const index = indexBoxes(boxes);
  const groups = groupLoops(table, loops);
  const findAround = (x: number, y: number, avoid: number): number => {
    let best = -1;
    for (const face of index.search(x, y, x, y)) {
      // Faces that hang together with a hole's rim hold its points too, but lie within it.
      if (groups[rims[face]!] === avoid) continue;
      if (best >= 0 && loops.area[rims[face]!]! >= loops.area[rims[best]!]!) continue;
      if (isInsideLoop(outlines[face]!, x, y)) best = face;
    }
    return best;
  };
  const holes: number[][] = rims.map(() => []);
  for (const [loop, area] of loops.area.entries()) {
    if (area > 0) continue;
    const node = originOf(table, loops.first[loop]!);
    const face = findAround(table.nodes.x[node]!, table.nodes.y[node]!, groups[loop]!);
    faceOf[loop] = face;
    if (face >= 0) holes[face]!.push(loop);
  }
  return { faceOf, rims, outlines, holes, find: (x, y) => findAround(x, y, -1) };
}

/** Loops that share edges have the same number. */
function groupLoops(table: EdgeTable, loops: Loops): Int32Array {
  const groups = createGroups(loops.first.length);
  for (let edge = 0; edge < table.a.length; edge += 1) {
    if (loops.loopOf[2 * edge]! >= 0) joinGroups(groups, loops.loopOf[2 * edge]!, loops.loopOf[2 * edge + 1]!);
  }
  return groups.map((_, loop) => findLeader(groups, loop));
}
