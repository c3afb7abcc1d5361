// Faces too thin to be board are part of what lies beside them.

import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import { type EdgeTable, edgeLength, isCut } from './edge-table.js';
import type { Nesting } from './nest-loops.js';
import type { Loops } from './trace-loops.js';

/** Face of each half edge after thin faces went to the face beside them; -1 outside, -2 for loose edges. */
export interface HalfFaces {
  readonly faceOf: Int32Array;
  /** Whether a face still stands for itself. */
  readonly stands: Uint8Array;
  /** Whether a thin face lay on a half edge. */
  readonly wasThin: Uint8Array;
}

/** What a thin face shares with a neighbour, -1 for the outside. */
interface Side {
  readonly face: number;
  readonly other: number;
  /** Of what joins the two, and of what parts them. @unit px */
  joined: number;
  cut: number;
}

/** The sides of thin faces, in the order in which faces grow together: first where nothing is cut, and the longest. */
function listSides(table: EdgeTable, plain: Int32Array, thin: ReadonlySet<number>): readonly Side[] {
  if (thin.size === 0) return [];
  const sides = new Map<number, Map<number, Side>>();
  for (let half = 0; half < plain.length; half += 1) {
    const [face, other] = [plain[half]!, plain[half ^ 1]!];
    if (face === other || !thin.has(face)) continue;
    const own = sides.get(face) ?? new Map<number, Side>();
    sides.set(face, own);
    const side = own.get(other) ?? { face, other, joined: 0, cut: 0 };
    own.set(other, side);
    if (isCut(table, half >> 1)) side.cut += edgeLength(table, half >> 1);
    else side.joined += edgeLength(table, half >> 1);
  }
  return [...sides.values()].flatMap((own) => [...own.values()]).sort((p, q) => q.joined - p.joined || q.cut - p.cut);
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
  // The outside is the last item. Each group holds one face that is board, or the outside; thin ones alone go on to the next.
  const groups = createGroups(count + 1);
  const standFor = Int32Array.from({ length: count + 1 }, (_, face) => (thin.has(face) ? -1 : face));
  for (const side of listSides(table, plain, thin)) {
    const leaders = [side.face, side.other < 0 ? count : side.other].map((face) => findLeader(groups, face));
    const [stand, other] = leaders.map((leader) => standFor[leader]!);
    if (leaders[0] === leaders[1] || (stand! >= 0 && other! >= 0)) continue;
    joinGroups(groups, leaders[0]!, leaders[1]!);
    standFor[findLeader(groups, leaders[0]!)] = Math.max(stand!, other!);
  }
  const faceAt = (face: number): number => {
    const stand = standFor[findLeader(groups, face)]!;
    return stand === count ? -1 : stand;
  };
  const stands = new Uint8Array(count);
  for (let face = 0; face < count; face += 1) if (!thin.has(face)) stands[face] = 1;
  const faceOf = plain.map((face) => (face < 0 ? face : faceAt(face)));
  const wasThin = Uint8Array.from(plain, (face) => (thin.has(face) ? 1 : 0));
  return { faceOf, stands, wasThin };
}
