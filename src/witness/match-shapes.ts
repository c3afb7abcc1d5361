// Finds for every drawn shape of the files the shape of the source that it is: by place, id, outline, then size.
import { type Box, isEmptyBox } from '../geometry/box.js';
import type { DrawnList, DrawnShape } from './list-drawn.js';

/** How a shape was recognised. */
export type MatchGround = 'place' | 'id' | 'box' | 'outline' | 'scale';

/** A shape of a file. */
export interface Copy {
  readonly file: number;
  readonly list: DrawnList;
  readonly shape: DrawnShape;
}

/** A shape of the source and one of a file. */
export interface Pairing {
  /** Index into the source's shapes. */
  readonly source: number;
  readonly copy: Copy;
  readonly ground: MatchGround;
}

/** What became of all shapes. */
export interface ShapeMatching {
  readonly pairings: readonly Pairing[];
  /** Shapes of the source that no file draws. */
  readonly missing: readonly number[];
  /** Shapes of the files that the source does not draw. */
  readonly added: readonly Copy[];
}

/** Most like shapes looked at for one; bounds the work on files full of twins. */
const LOOKED_AT = 32;
const LONG_RUN = 1024;

interface Matching {
  readonly source: DrawnList;
  readonly tolerance: number;
  readonly shift: readonly [number, number];
  readonly taken: Uint8Array;
  readonly pairings: Pairing[];
}

type Index = Map<string, number[]>;

function put(index: Index, key: string, value: number): void {
  const list = index.get(key);
  if (list === undefined) index.set(key, [value]);
  else list.push(value);
}

function centreOf(box: Box): readonly [number, number] {
  return isEmptyBox(box) ? [0, 0] : [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
}

function sizeOf(box: Box): readonly [number, number] {
  return isEmptyBox(box) ? [0, 0] : [box.x1 - box.x0, box.y1 - box.y0];
}

/** Cells that a pair of numbers may fall into when each is off by the tolerance. */
function cellsAround(pair: readonly [number, number], cell: number): readonly string[] {
  const low = (value: number): number => Math.floor(value / cell - 0.5);
  const keys: string[] = [];
  for (let i = 0; i < 2; i += 1) for (let k = 0; k < 2; k += 1) keys.push(`${low(pair[0]) + i} ${low(pair[1]) + k}`);
  return keys;
}

function cellOf(pair: readonly [number, number], cell: number): string {
  return `${Math.floor(pair[0] / cell)} ${Math.floor(pair[1] / cell)}`;
}

/** Greatest distance between the points of two like outlines after a shift; by their boxes where they are built otherwise. */
export function pointDistance(a: Copy, b: Copy, dx: number, dy: number): number {
  const boxes = boxDistance(a.shape.box, b.shape.box, dx, dy);
  if (a.shape.build !== b.shape.build || a.shape.pointCount !== b.shape.pointCount) return boxes;
  let greatest = boxes;
  for (let i = 0; i < a.shape.pointCount; i += 2) {
    const x = Math.abs(a.list.points[a.shape.pointStart + i]! + dx - b.list.points[b.shape.pointStart + i]!);
    const y = Math.abs(a.list.points[a.shape.pointStart + i + 1]! + dy - b.list.points[b.shape.pointStart + i + 1]!);
    if (x > greatest) greatest = x;
    if (y > greatest) greatest = y;
  }
  return greatest;
}

function boxDistance(a: Box, b: Box, dx: number, dy: number): number {
  if (isEmptyBox(a) || isEmptyBox(b)) return isEmptyBox(a) && isEmptyBox(b) ? 0 : Infinity;
  return Math.max(
    Math.abs(a.x0 + dx - b.x0),
    Math.abs(a.y0 + dy - b.y0),
    Math.abs(a.x1 + dx - b.x1),
    Math.abs(a.y1 + dy - b.y1),
  );
}

/** Whether two shapes are painted alike. */
export function hasSamePaint(a: DrawnShape, b: DrawnShape): boolean {
  return a.fill === b.fill && a.stroke === b.stroke && a.rest === b.rest;
}

function sourceCopy(matching: Matching, index: number): Copy {
  return { file: -1, list: matching.source, shape: matching.source.shapes[index]! };
}

function take(matching: Matching, source: number, copy: Copy, ground: MatchGround): void {
  matching.taken[source] = 1;
  matching.pairings.push({ source, copy, ground });
}

/** The best of the listed candidates that fit: paint and id together weigh more than being free. */
function choose(
  matching: Matching,
  copy: Copy,
  candidates: readonly number[],
  fits: (candidate: number) => boolean,
): number {
  let best = -1;
  let bestScore = -1;
  let looked = 0;
  for (const candidate of candidates) {
    if (looked >= LOOKED_AT) break;
    looked += 1;
    const shape = matching.source.shapes[candidate]!;
    const free = matching.taken[candidate] === 0 ? 4 : 0;
    const score = free + (hasSamePaint(shape, copy.shape) ? 3 : 0) + (shape.id === copy.shape.id ? 2 : 0);
    if (score > bestScore && fits(candidate)) {
      best = candidate;
      bestScore = score;
    }
  }
  return best;
}

/** The first free ones of a list of twins; long runs of taken ones are cut out, so that long lists stay cheap. */
function freeOf(matching: Matching, list: number[] | undefined): readonly number[] {
  if (list === undefined) return [];
  const free: number[] = [];
  let i = 0;
  for (; i < list.length && free.length < LOOKED_AT; i += 1) {
    if (matching.taken[list[i]!] === 0) free.push(list[i]!);
  }
  if (i - free.length > LONG_RUN) list.splice(0, i, ...free);
  return free;
}

/** Same outline at the same place: first all of equal paint, then the rest. A second copy of a taken shape is paired with it too. */
function matchByPlace(matching: Matching, copies: readonly Copy[]): Copy[] {
  const cell = Math.max(4 * matching.tolerance, 1e-6);
  const [dx, dy] = matching.shift;
  const index: Index = new Map();
  matching.source.shapes.forEach((shape, i) => {
    put(index, `${shape.build} ${cellOf(centreOf(shape.box), cell)}`, i);
  });
  const isMatched = (copy: Copy, mustAgree: boolean): boolean => {
    const [x, y] = centreOf(copy.shape.box);
    const near = cellsAround([x - dx, y - dy], cell).flatMap((key) => {
      const list = index.get(`${copy.shape.build} ${key}`);
      if (list === undefined) return [];
      return mustAgree ? freeOf(matching, list) : [...freeOf(matching, list), ...list.slice(0, LOOKED_AT)];
    });
    const found = choose(matching, copy, near, (candidate) => {
      const original = sourceCopy(matching, candidate);
      if (mustAgree && !hasSamePaint(original.shape, copy.shape)) return false;
      return pointDistance(original, copy, dx, dy) <= matching.tolerance;
    });
    if (found >= 0) take(matching, found, copy, 'place');
    return found >= 0;
  };
  return copies.filter((copy) => !isMatched(copy, true)).filter((copy) => !isMatched(copy, false));
}

/** Same id, where the source has it once. */
function matchById(matching: Matching, copies: readonly Copy[]): Copy[] {
  const index = new Map<string, number>();
  matching.source.shapes.forEach(({ id }, i) => {
    if (id !== '') index.set(id, index.has(id) ? -1 : i);
  });
  return copies.filter((copy) => {
    const found = copy.shape.id === '' ? undefined : index.get(copy.shape.id);
    if (found === undefined || found < 0 || matching.taken[found] === 1) return true;
    take(matching, found, copy, 'id');
    return false;
  });
}

/** Same box at the same place, drawn by other segments. */
function matchByBox(matching: Matching, copies: readonly Copy[]): Copy[] {
  const tolerance = 4 * matching.tolerance;
  const cell = Math.max(4 * tolerance, 1e-6);
  const [dx, dy] = matching.shift;
  const index: Index = new Map();
  matching.source.shapes.forEach((shape, i) => {
    if (matching.taken[i] === 0) put(index, cellOf(centreOf(shape.box), cell), i);
  });
  return copies.filter((copy) => {
    const [x, y] = centreOf(copy.shape.box);
    const near = cellsAround([x - dx, y - dy], cell).flatMap((key) => freeOf(matching, index.get(key)));
    const found = choose(
      matching,
      copy,
      near,
      (candidate) => boxDistance(matching.source.shapes[candidate]!.box, copy.shape.box, dx, dy) <= tolerance,
    );
    if (found >= 0) take(matching, found, copy, 'box');
    return found < 0;
  });
}

/** Same outline and size elsewhere; of twins the nearest that comes first. */
function matchByOutline(matching: Matching, copies: readonly Copy[]): Copy[] {
  const cell = Math.max(4 * matching.tolerance, 1e-6);
  const index: Index = new Map();
  matching.source.shapes.forEach((shape, i) => {
    if (matching.taken[i] === 0) put(index, `${shape.build} ${shape.pointCount} ${cellOf(sizeOf(shape.box), cell)}`, i);
  });
  return copies.filter((copy) => {
    const { build, pointCount, box } = copy.shape;
    const [x, y] = centreOf(box);
    const near = cellsAround(sizeOf(box), cell).flatMap((key) =>
      freeOf(matching, index.get(`${build} ${pointCount} ${key}`)),
    );
    const distance = (candidate: number): number => {
      const [sx, sy] = centreOf(matching.source.shapes[candidate]!.box);
      return Math.abs(x - sx) + Math.abs(y - sy);
    };
    near.sort((a, b) => distance(a) - distance(b));
    const found = choose(matching, copy, near, (candidate) => {
      const [sx, sy] = centreOf(matching.source.shapes[candidate]!.box);
      return pointDistance(sourceCopy(matching, candidate), copy, x - sx, y - sy) <= matching.tolerance;
    });
    if (found >= 0) take(matching, found, copy, 'outline');
    return found < 0;
  });
}

/** Greatest difference of two outlines after both are stretched to a square of side 1. */
function stretchedDistance(a: Copy, b: Copy): number {
  const [aw, ah] = sizeOf(a.shape.box).map((size) => size || 1) as [number, number];
  const [bw, bh] = sizeOf(b.shape.box).map((size) => size || 1) as [number, number];
  let greatest = 0;
  for (let i = 0; i < a.shape.pointCount; i += 2) {
    const ax = (a.list.points[a.shape.pointStart + i]! - a.shape.box.x0) / aw;
    const bx = (b.list.points[b.shape.pointStart + i]! - b.shape.box.x0) / bw;
    const ay = (a.list.points[a.shape.pointStart + i + 1]! - a.shape.box.y0) / ah;
    const by = (b.list.points[b.shape.pointStart + i + 1]! - b.shape.box.y0) / bh;
    greatest = Math.max(greatest, Math.abs(ax - bx), Math.abs(ay - by));
  }
  return greatest;
}

/** Same outline and paint at another size. */
function matchByScale(matching: Matching, copies: readonly Copy[]): Copy[] {
  const index: Index = new Map();
  matching.source.shapes.forEach((shape, i) => {
    if (matching.taken[i] === 0) put(index, `${shape.build} ${shape.pointCount}`, i);
  });
  return copies.filter((copy) => {
    const { build, pointCount, box } = copy.shape;
    const near = freeOf(matching, index.get(`${build} ${pointCount}`));
    const found = choose(matching, copy, near, (candidate) => {
      const shape = matching.source.shapes[candidate]!;
      if (!hasSamePaint(shape, copy.shape) || isEmptyBox(shape.box) || isEmptyBox(box)) return false;
      return stretchedDistance(sourceCopy(matching, candidate), copy) <= 1e-3;
    });
    if (found >= 0) take(matching, found, copy, 'scale');
    return found < 0;
  });
}

/**
 * Pairs the shapes of the files with those of the source. Takes time in proportion to their number.
 *
 * @param tolerance - Distance that still counts as the same place, mm.
 * @param shift - How far the files are known to lie from the source, mm.
 */
export function matchShapes(
  source: DrawnList,
  files: readonly DrawnList[],
  options: { readonly tolerance: number; readonly shift: readonly [number, number] },
): ShapeMatching {
  const matching: Matching = { source, ...options, taken: new Uint8Array(source.shapes.length), pairings: [] };
  let rest: Copy[] = files.flatMap((list, file) => list.shapes.map((shape) => ({ file, list, shape })));
  for (const step of [matchByPlace, matchById, matchByBox, matchByOutline, matchByScale]) rest = step(matching, rest);
  const missing: number[] = [];
  for (let i = 0; i < matching.taken.length; i += 1) if (matching.taken[i] === 0) missing.push(i);
  return { pairings: matching.pairings, missing, added: rest };
}
