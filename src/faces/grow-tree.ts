// Panels as a tree: which one holds which, from the largest on.
import { createNumberMap } from '../geometry/number-map.js';
import { sortFew } from '../geometry/sort-few.js';
import type { Hinge, Piece } from '../model/faces.js';
import { edgeLength, isCut } from './edge-table.js';
import { type Ground, pieceOf } from './ground.js';

/** More than there are faces: two of them make one key. */
const STRIDE = 67108864;

/** How a face hangs in its blank. */
export interface Joint {
  readonly face: number;
  /** Face that holds it, or -1 for the root. */
  readonly parent: number;
  readonly depth: number;
  /** Position in the list of folds, or -1 for the root. */
  readonly fold: number;
}

/** A fold between two faces. */
export interface Fold {
  readonly faces: readonly [number, number];
  readonly pieces: Piece[];
  creaseLength: number;
  perforationLength: number;
}

/** All folds between two faces each. */
export function listFolds(ground: Ground): readonly Fold[] {
  const { table, halves } = ground;
  const folds: Fold[] = [];
  const known = createNumberMap();
  for (let edge = 0; edge < table.a.length; edge += 1) {
    const [p, q] = [halves.faceOf[2 * edge]!, halves.faceOf[2 * edge + 1]!];
    if (p < 0 || q < 0 || p === q || isCut(table, edge)) continue;
    const faces = [Math.min(p, q), Math.max(p, q)] as const;
    const key = faces[0] * STRIDE + faces[1];
    let place = known.get(key);
    if (place < 0) {
      place = folds.push({ faces, pieces: [], creaseLength: 0, perforationLength: 0 }) - 1;
      known.set(key, place);
    }
    const fold = folds[place]!;
    const piece = pieceOf(ground, edge);
    fold.pieces.push(piece);
    if (piece.kind === 'crease') fold.creaseLength += edgeLength(table, edge);
    else fold.perforationLength += edgeLength(table, edge);
  }
  return folds;
}

/** A fold in the words of the model. */
export function describeHinge(fold: Fold, panelOf: Int32Array, mmPerPx: number): Hinge {
  return {
    panels: [panelOf[fold.faces[0]]!, panelOf[fold.faces[1]]!],
    kind: fold.creaseLength >= fold.perforationLength ? 'crease' : 'perforation',
    lengthMm: (fold.creaseLength + fold.perforationLength) * mmPerPx,
    pieces: fold.pieces,
  };
}

/**
 * The faces of a parcel from its root on, level by level, the longest fold first.
 *
 * @param byFace - Positions of the folds of each face.
 * @param used - Folds of the tree are marked here.
 */
export function growTree(
  root: number,
  folds: readonly Fold[],
  byFace: readonly (readonly number[])[],
  used: Uint8Array,
): readonly Joint[] {
  const joints: Joint[] = [{ face: root, parent: -1, depth: 0, fold: -1 }];
  const seen = new Set([root]);
  const lengthOf = (fold: number): number => folds[fold]!.creaseLength + folds[fold]!.perforationLength;
  for (let at = 0; at < joints.length; at += 1) {
    const { face, depth } = joints[at]!;
    const around = byFace[face]!.slice();
    sortFew(around, 0, around.length, (p, q) => lengthOf(q) - lengthOf(p));
    for (const fold of around) {
      const [p, q] = folds[fold]!.faces;
      const other = p === face ? q : p;
      if (seen.has(other)) continue;
      seen.add(other);
      used[fold] = 1;
      joints.push({ face: other, parent: face, depth: depth + 1, fold });
    }
  }
  return joints;
}
