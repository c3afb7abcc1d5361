// Where copies of a drawing lie on a sheet of which nothing is known: outlines that are alike vote for the matrices between them.
import { type Box, EMPTY_BOX, isEmptyBox, unite } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { DrawnList, DrawnShape } from './list-drawn.js';

/** Pairs of like outlines that are looked at for one file; bounds the work on sheets full of twins. */
const MOST_PAIRS = 100_000;
/** Shapes of the drawing from which matrices are taken, for each file. */
const MOST_ANCHORS = 24;
/** Matrices that are held against the files, the most voted for first. */
const MOST_CANDIDATES = 2_000;
/** Shapes of the drawing that a matrix is held against. */
const SAMPLE = 200;
/** Share of them that a copy must show; the rest may be moved, altered or gone. */
const LEAST_SHARE = 0.5;

interface Candidate {
  readonly matrix: Matrix;
  votes: number;
}

interface Placed {
  readonly list: DrawnList;
  readonly shape: DrawnShape;
}

function keyOf({ build, pointCount }: DrawnShape): string {
  return `${build} ${pointCount}`;
}

function groupByKey(list: DrawnList): Map<string, DrawnShape[]> {
  const groups = new Map<string, DrawnShape[]>();
  for (const shape of list.shapes) {
    const known = groups.get(keyOf(shape));
    if (known === undefined) groups.set(keyOf(shape), [shape]);
    else known.push(shape);
  }
  return groups;
}

function pointAt({ list, shape }: Placed, index: number): readonly [number, number] {
  return [list.points[shape.pointStart + 2 * index]!, list.points[shape.pointStart + 2 * index + 1]!];
}

/** The point of an outline that is farthest from its first, and how far. */
function farthestPoint(placed: Placed): readonly [number, number] {
  const [x, y] = pointAt(placed, 0);
  let index = 0;
  let distance = 0;
  for (let i = 1; 2 * i < placed.shape.pointCount; i += 1) {
    const [px, py] = pointAt(placed, i);
    const length = Math.hypot(px - x, py - y);
    if (length > distance) [index, distance] = [i, length];
  }
  return [index, distance];
}

/**
 * The matrix that turns, scales (and mirrors, if asked) one outline onto another; null where their points do not agree.
 *
 * It is that of two points, the first and the one farthest from it; all others are held against it.
 */
function fitOutlines(
  a: Placed,
  b: Placed,
  look: { readonly mirrored: boolean; readonly tolerance: number },
): Matrix | null {
  const [index, distance] = farthestPoint(a);
  if (distance <= 10 * look.tolerance) return null;
  const [ax, ay] = pointAt(a, 0);
  const [bx, by] = pointAt(b, 0);
  const [cx, cy] = pointAt(a, index);
  const [dx, dy] = pointAt(b, index);
  const flip = look.mirrored ? -1 : 1;
  const [ux, uy, vx, vy] = [cx - ax, flip * (cy - ay), dx - bx, dy - by];
  const square = ux * ux + uy * uy;
  const p = (vx * ux + vy * uy) / square;
  const q = (vy * ux - vx * uy) / square;
  if (Math.hypot(p, q) < 1e-3) return null;
  const [m, n] = [-q * flip, p * flip];
  const matrix: Matrix = [p, q, m, n, bx - p * ax - m * ay, by - q * ax - n * ay];
  for (let i = 0; 2 * i < a.shape.pointCount; i += 1) {
    const [x, y] = pointAt(a, i);
    const [wantedX, wantedY] = pointAt(b, i);
    const off = Math.hypot(p * x + m * y + matrix[4] - wantedX, q * x + n * y + matrix[5] - wantedY);
    if (!(off <= look.tolerance)) return null;
  }
  return matrix;
}

function boxOfAll({ shapes }: DrawnList): Box {
  return shapes.reduce((box, { box: one }) => (isEmptyBox(one) ? box : unite(box, one)), EMPTY_BOX);
}

function centreUnder([a, b, c, d, e, f]: Matrix, box: Box): readonly [number, number] {
  const x = (box.x0 + box.x1) / 2;
  const y = (box.y0 + box.y1) / 2;
  return [a * x + c * y + e, b * x + d * y + f];
}

/** Shapes of the drawing that a file has least like ones of, and those of the file. */
function chooseAnchors(
  source: Map<string, DrawnShape[]>,
  file: Map<string, DrawnShape[]>,
): readonly (readonly [DrawnShape, readonly DrawnShape[]])[] {
  const shared = [...source].flatMap(([key, shapes]) => {
    const like = file.get(key);
    return like === undefined || shapes[0]!.pointCount < 4 ? [] : [{ shapes, like }];
  });
  shared.sort((a, b) => a.shapes.length * a.like.length - b.shapes.length * b.like.length);
  return shared.flatMap(({ shapes, like }) => shapes.map((shape) => [shape, like] as const)).slice(0, MOST_ANCHORS);
}

/** Collects matrices that put outlines of the drawing onto outlines of the files, each with its votes. */
function collectCandidates(source: DrawnList, files: readonly DrawnList[], tolerance: number): readonly Candidate[] {
  const candidates = new Map<string, Candidate>();
  const groups = groupByKey(source);
  const whole = boxOfAll(source);
  for (const file of files) {
    let pairs = 0;
    for (const [anchor, like] of chooseAnchors(groups, groupByKey(file))) {
      for (const shape of like) {
        pairs += 1;
        if (pairs > MOST_PAIRS) break;
        for (const mirrored of [false, true]) {
          const matrix = fitOutlines({ list: source, shape: anchor }, { list: file, shape }, { mirrored, tolerance });
          // Points on one line fit both ways; copies lie face up more often than not.
          if (matrix === null) continue;
          const [x, y] = centreUnder(matrix, whole);
          const key = [
            ...matrix.slice(0, 4).map((n) => Math.round(n * 1e3)),
            Math.round(x * 10),
            Math.round(y * 10),
          ].join();
          const known = candidates.get(key);
          if (known === undefined) candidates.set(key, { matrix, votes: 1 });
          else known.votes += 1;
          break;
        }
      }
    }
  }
  return [...candidates.values()].sort((a, b) => b.votes - a.votes).slice(0, MOST_CANDIDATES);
}

/** A shape of a file, by its middle. */
interface Spot {
  readonly x: number;
  readonly y: number;
  /** Whether it belongs to a copy that was found. */
  isTaken: boolean;
}

/** Finds what is built alike and has its middle at a place, among what belongs to no copy yet. */
type Finder = (build: string, x: number, y: number) => Spot | null;

function indexSpots(files: readonly DrawnList[], cell: number): Finder {
  const index = new Map<string, Spot[]>();
  for (const { shapes } of files) {
    for (const shape of shapes) {
      const spot = { x: (shape.box.x0 + shape.box.x1) / 2, y: (shape.box.y0 + shape.box.y1) / 2, isTaken: false };
      const key = `${keyOf(shape)} ${Math.floor(spot.x / cell)} ${Math.floor(spot.y / cell)}`;
      const known = index.get(key);
      if (known === undefined) index.set(key, [spot]);
      else known.push(spot);
    }
  }
  return (build, x, y) => {
    for (let i = -1; i <= 1; i += 1) {
      for (let k = -1; k <= 1; k += 1) {
        const near = index.get(`${build} ${Math.floor(x / cell) + i} ${Math.floor(y / cell) + k}`);
        const free = near?.find((spot) => !spot.isTaken && Math.hypot(spot.x - x, spot.y - y) <= cell);
        if (free !== undefined) return free;
      }
    }
    return null;
  };
}

/** The shapes of the drawing that some file has any like one of. */
function listKnown(source: DrawnList, files: readonly DrawnList[]): readonly DrawnShape[] {
  const kinds = new Set(files.flatMap(({ shapes }) => shapes.map(keyOf)));
  return source.shapes.filter((shape) => kinds.has(keyOf(shape)) && !isEmptyBox(shape.box));
}

/** Some of the shapes, evenly drawn. */
function drawSample(known: readonly DrawnShape[]): readonly DrawnShape[] {
  const step = Math.max(1, known.length / SAMPLE);
  return Array.from({ length: Math.min(known.length, SAMPLE) }, (_, i) => known[Math.floor(i * step)]!);
}

/**
 * Where copies of a drawing lie on the sheets of a job, all passes taken together.
 *
 * A copy is turned, scaled or mirrored as a whole, and shows at least half of what of the drawing is in the files at all. Copies of
 * one place, such as a pass that lies beside the others, count once: the matrix that most shapes agree with.
 *
 * @param toleranceMm - Distance that still counts as the same place.
 * @returns From mm on the drawing to mm on the sheet, from the top left rowwise; empty where none is found.
 */
export function findCopies(source: DrawnList, files: readonly DrawnList[], toleranceMm: number): readonly Matrix[] {
  const tolerance = Math.max(4 * toleranceMm, 1e-3);
  const known = listKnown(source, files);
  if (known.length === 0) return [];
  const sample = drawSample(known);
  const whole = boxOfAll(source);
  const near = Math.min(whole.x1 - whole.x0, whole.y1 - whole.y0) / 4;
  const find = indexSpots(files, tolerance);
  const spotsOf = (matrix: Matrix, shapes: readonly DrawnShape[]): readonly Spot[] =>
    shapes.flatMap((shape) => find(keyOf(shape), ...centreUnder(matrix, shape.box)) ?? []);
  const share = (matrix: Matrix): number => spotsOf(matrix, sample).length / sample.length;
  const scored = collectCandidates(source, files, tolerance)
    .map(({ matrix }) => ({ matrix, seen: share(matrix) }))
    .filter(({ seen }) => seen >= LEAST_SHARE)
    .sort((a, b) => b.seen - a.seen);
  const kept: Matrix[] = [];
  for (const { matrix } of scored) {
    const [x, y] = centreUnder(matrix, whole);
    const reach = near * Math.hypot(matrix[0], matrix[1]);
    const isKnown = kept.some((other) => {
      const [ox, oy] = centreUnder(other, whole);
      return Math.hypot(ox - x, oy - y) <= reach;
    });
    // What a drawing has several times lies on itself when it is shifted: what belongs to a copy counts for no other.
    if (isKnown || share(matrix) < LEAST_SHARE) continue;
    kept.push(matrix);
    for (const spot of spotsOf(matrix, known)) spot.isTaken = true;
  }
  const order = (matrix: Matrix): readonly [number, number] => {
    const [x, y] = centreUnder(matrix, whole);
    return [Math.round(y), x];
  };
  return kept.sort((a, b) => order(a)[0] - order(b)[0] || order(a)[1] - order(b)[1]);
}
