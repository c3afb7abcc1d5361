// Pieces that stay in one when the board is cut: faces that folds join.
import { signedArea } from '../geometry/outline.js';
import { createGroups, findLeader, joinGroups } from '../geometry/union-find.js';
import { edgeLength, isCut } from './edge-table.js';
import { type Ground, pieceOf } from './ground.js';
import { originOf } from './trace-loops.js';

/** A piece of board, cut all around. */
export interface Parcel {
  readonly faces: readonly number[];
  readonly outer: Float64Array;
  readonly holes: readonly Float64Array[];
  /** Within the outer loop, holes included. @unit px2 */
  readonly grossArea: number;
  readonly hinged: boolean;
  /** The parcel in a hole of which it lies, by itself or among others, or -1. */
  readonly around: number;
  /** Parcels on the other side of its outer loop. */
  readonly beside: readonly number[];
  /** Shape that draws most of its outer loop. */
  readonly shape: number;
  /** Positions of the lines that cut its outer loop, and of those that cut within it. */
  readonly outerLines: readonly number[];
  readonly innerLines: readonly number[];
}

/** A loop around a parcel. */
interface Rim {
  readonly parcel: number;
  readonly halves: readonly number[];
  readonly points: Float64Array;
  readonly area: number;
}

/** The parcel of each face; -1 for faces that hang together with the outside, and for those that went to others. */
function groupFaces(ground: Ground): { readonly parcelOf: Int32Array; readonly faces: readonly (readonly number[])[] } {
  const { table, halves } = ground;
  const count = halves.stands.length;
  const groups = createGroups(count + 1);
  for (let edge = 0; edge < table.a.length; edge += 1) {
    const [left, right] = [halves.faceOf[2 * edge]!, halves.faceOf[2 * edge + 1]!];
    if (left === -2 || isCut(table, edge)) continue;
    joinGroups(groups, left < 0 ? count : left, right < 0 ? count : right);
  }
  const outside = findLeader(groups, count);
  const numbers = new Map<number, number>();
  const faces: number[][] = [];
  const parcelOf = new Int32Array(count).fill(-1);
  for (let face = 0; face < count; face += 1) {
    const leader = findLeader(groups, face);
    if (halves.stands[face] === 0 || leader === outside) continue;
    const parcel = numbers.get(leader) ?? faces.length;
    if (parcel === faces.length) {
      numbers.set(leader, parcel);
      faces.push([]);
    }
    faces[parcel]!.push(face);
    parcelOf[face] = parcel;
  }
  return { parcelOf, faces };
}

/** The loops around all parcels, and the loop on each half edge. */
function traceRims(ground: Ground, parcels: Int32Array): { readonly rims: readonly Rim[]; readonly rimOf: Int32Array } {
  const { table, loops } = ground;
  const rimOf = new Int32Array(parcels.length).fill(-1);
  const rims: Rim[] = [];
  for (let start = 0; start < parcels.length; start += 1) {
    const parcel = parcels[start]!;
    if (parcel < 0 || parcels[start ^ 1] === parcel || rimOf[start]! >= 0) continue;
    const halves: number[] = [];
    const points: number[] = [];
    let half = start;
    do {
      rimOf[half] = rims.length;
      halves.push(half);
      const node = originOf(table, half);
      points.push(table.nodes.x[node]!, table.nodes.y[node]!);
      half = loops.next[half]!;
      while (parcels[half ^ 1] === parcel) half = loops.next[half ^ 1]!;
    } while (half !== start && rimOf[half]! < 0);
    const outline = new Float64Array(points);
    rims.push({ parcel, halves, points: outline, area: signedArea(outline) });
  }
  return { rims, rimOf };
}

/** The shape that draws most of a rim. */
function mainShape(ground: Ground, rim: Rim): number {
  const { table, shapeOf } = ground;
  const lengths = new Map<number, number>();
  for (const half of rim.halves) {
    const shape = shapeOf[table.lines[half >> 1]!]!;
    lengths.set(shape, (lengths.get(shape) ?? 0) + edgeLength(table, half >> 1));
  }
  let best = -1;
  for (const [shape, length] of lengths) if (best < 0 || length > lengths.get(best)!) best = shape;
  return best;
}

/** Positions of the lines that cut within each parcel: holes and slits. */
function findInnerLines(
  ground: Ground,
  rims: readonly Rim[],
  byHalf: Int32Array,
  parcelOf: Int32Array,
  count: number,
): readonly Set<number>[] {
  const { table, nesting, halves } = ground;
  const inner = Array.from({ length: count }, () => new Set<number>());
  for (const rim of rims) {
    if (rim.area < 0) for (const half of rim.halves) inner[rim.parcel]!.add(table.lines[half >> 1]!);
  }
  for (let edge = 0; edge < table.a.length; edge += 1) {
    if (!isCut(table, edge)) continue;
    let parcel = byHalf[2 * edge]!;
    if (parcel !== byHalf[2 * edge + 1]) continue;
    if (halves.faceOf[2 * edge] === -2) {
      const piece = pieceOf(ground, edge);
      const face = nesting.find((piece.x0 + piece.x1) / 2, (piece.y0 + piece.y1) / 2);
      parcel = face < 0 ? -1 : parcelOf[face]!;
    }
    if (parcel >= 0) inner[parcel]!.add(table.lines[edge]!);
  }
  return inner;
}

/** The parcel in a hole of which each lies, or -1: pieces that share cuts lie in the same hole, whether or not they touch its rim. */
function findAround(rims: readonly Rim[], rimOf: Int32Array, count: number): Int32Array {
  const groups = createGroups(count);
  const around = new Int32Array(count).fill(-1);
  const eachSide = (see: (own: Rim, other: Rim) => void): void => {
    for (let half = 0; half < rimOf.length; half += 1) {
      if (rimOf[half]! >= 0 && rimOf[half ^ 1]! >= 0) see(rims[rimOf[half]!]!, rims[rimOf[half ^ 1]!]!);
    }
  };
  eachSide((own, other) => {
    if (own.area > 0 && other.area > 0) joinGroups(groups, own.parcel, other.parcel);
  });
  eachSide((own, other) => {
    if (own.area > 0 && other.area < 0) around[findLeader(groups, own.parcel)] = other.parcel;
  });
  return around.map((_, parcel) => around[findLeader(groups, parcel)]!);
}

/** All parcels. */
export function listParcels(ground: Ground): readonly Parcel[] {
  const { table, halves } = ground;
  const { parcelOf, faces } = groupFaces(ground);
  const byHalf = halves.faceOf.map((face) => (face < 0 ? -1 : parcelOf[face]!));
  const { rims, rimOf } = traceRims(ground, byHalf);
  const hinged = new Uint8Array(faces.length);
  for (let edge = 0; edge < table.a.length; edge += 1) {
    const parcel = byHalf[2 * edge]!;
    const isFold = parcel >= 0 && parcel === byHalf[2 * edge + 1] && !isCut(table, edge);
    if (isFold && halves.faceOf[2 * edge] !== halves.faceOf[2 * edge + 1]) hinged[parcel] = 1;
  }
  const own: Rim[][] = faces.map(() => []);
  for (const rim of rims) own[rim.parcel]!.push(rim);
  const around = findAround(rims, rimOf, faces.length);
  const inner = findInnerLines(ground, rims, byHalf, parcelOf, faces.length);
  return own.map((list, parcel) => {
    const rim = list.reduce((best, one) => (one.area > best.area ? one : best));
    const others = rim.halves.map((half) => rimOf[half ^ 1]!).filter((other) => other >= 0);
    const beside = new Set(others.map((other) => rims[other]!.parcel));
    return {
      faces: faces[parcel]!,
      outer: rim.points,
      // In the order of their lines: by area, holes that are alike would come as the engine rounds.
      holes: list.filter((one) => one !== rim).map((hole) => hole.points),
      grossArea: rim.area,
      hinged: hinged[parcel] === 1,
      around: around[parcel]!,
      beside: [...beside],
      shape: mainShape(ground, rim),
      outerLines: [...new Set(rim.halves.map((half) => table.lines[half >> 1]!))],
      innerLines: [...inner[parcel]!],
    };
  });
}
