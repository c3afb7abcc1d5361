// Folds that part nothing, and folds where a cut should be.

import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import type { IdleFold, Piece } from '../model/faces.js';
import { edgeLength, isCut } from './edge-table.js';
import { type Ground, pieceOf } from './ground.js';

/** The panel in which a fold without an effect lies; -1 outside, in what falls out, and in faces of no blank. */
function panelAround(ground: Ground, panelOf: Int32Array, edge: number): number {
  const { halves, nesting } = ground;
  let face = halves.faceOf[2 * edge]!;
  if (face === -2) {
    const piece = pieceOf(ground, edge);
    face = nesting.find((piece.x0 + piece.x1) / 2, (piece.y0 + piece.y1) / 2);
    if (face >= 0 && halves.stands[face] === 0) face = -1;
  }
  return face < 0 ? -1 : panelOf[face]!;
}

/** Edges that hang together in one panel as one stretch each. */
function joinIdle(ground: Ground, panelOf: Int32Array, edges: readonly number[]): readonly IdleFold[] {
  const { table, mmPerPx } = ground;
  const panels = edges.map((edge) => panelAround(ground, panelOf, edge));
  const groups = createGroups(edges.length);
  const seen = new Map<string, number>();
  for (const [place, edge] of edges.entries()) {
    for (const node of [table.a[edge]!, table.b[edge]!]) {
      const key = `${node},${panels[place]}`;
      const other = seen.get(key);
      if (other === undefined) seen.set(key, place);
      else joinGroups(groups, place, other);
    }
  }
  const stretches = new Map<number, { panel: number; lengthMm: number; pieces: Piece[] }>();
  for (const [place, edge] of edges.entries()) {
    const leader = findLeader(groups, place);
    const stretch = stretches.get(leader) ?? { panel: panels[place]!, lengthMm: 0, pieces: [] };
    stretches.set(leader, stretch);
    stretch.lengthMm += edgeLength(table, edge) * mmPerPx;
    stretch.pieces.push(pieceOf(ground, edge));
  }
  return [...stretches.values()];
}

/**
 * Folds that part nothing or lie in what falls out, and folds where the outline of a face is not cut.
 *
 * @param panelOf - Panel of each face, or -1.
 * @param islandFaces - Faces of pieces that fall out.
 */
export function listOddFolds(
  ground: Ground,
  panelOf: Int32Array,
  islandFaces: ReadonlySet<number>,
): { readonly idle: readonly IdleFold[]; readonly uncut: readonly Piece[] } {
  const { table, halves } = ground;
  const idle: number[] = [];
  const uncut: Piece[] = [];
  for (let edge = 0; edge < table.a.length; edge += 1) {
    if (isCut(table, edge)) continue;
    const [left, right] = [halves.faceOf[2 * edge]!, halves.faceOf[2 * edge + 1]!];
    // A fold beside a line that nearly lies on it parts no more than a strip too thin to be board: the two are too near, and not idle.
    if (left === right && (halves.wasThin[2 * edge] === 1 || halves.wasThin[2 * edge + 1] === 1)) continue;
    if (left === right || (left >= 0 && right >= 0 && islandFaces.has(left))) idle.push(edge);
    else if (left < 0 || right < 0) uncut.push(pieceOf(ground, edge));
  }
  return { idle: joinIdle(ground, panelOf, idle), uncut };
}
