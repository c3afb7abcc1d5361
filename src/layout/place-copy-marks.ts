// Where a small cross stands for each copy: beside it, clear of the blanks and the print of all.
import { intersect, isEmptyBox, transformBox } from '../geometry/box.js';
import type { Matrix } from '../geometry/matrix.js';
import type { Layout, LayoutPiece } from '../model/layout.js';
import type { PointMm } from '../model/marks.js';

/** Length of the lines of a cross for one copy, mm (a starting value of our own). */
export const COPY_MARK_MM = 3;
/** Clear distance from blanks and print, mm. */
const CLEAR_MM = 0.4;
/** Distance of the places that are looked at, mm. */
const STEP_MM = 0.5;
/** How far outside of what a copy draws places are looked at, mm: the marks of the sheet begin beyond. */
const OUTSIDE_MM = 2;

type Ring = readonly PointMm[];

function mapRing(ring: Ring, [a, b, c, d, e, f]: Matrix): Ring {
  return ring.map(([x, y]) => [a * x + c * y + e, b * x + d * y + f]);
}

function boxRing(x0: number, y0: number, x1: number, y1: number): Ring {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

function isInsideRing(ring: Ring, [x, y]: PointMm): boolean {
  let inside = false;
  ring.forEach(([x0, y0], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length]!;
    if (y0 > y !== y1 > y && x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) inside = !inside;
  });
  return inside;
}

/** Whether an edge comes into the square around a point. */
function meetsSquare(ring: Ring, [x, y]: PointMm, half: number): boolean {
  return ring.some(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    let [from, to] = [0, 1];
    for (const [start, step, low, high] of [
      [ax, bx - ax, x - half, x + half],
      [ay, by - ay, y - half, y + half],
    ] as const) {
      if (step === 0) {
        if (start < low || start > high) return false;
        continue;
      }
      const [one, other] = [(low - start) / step, (high - start) / step];
      from = Math.max(from, Math.min(one, other));
      to = Math.min(to, Math.max(one, other));
    }
    return from <= to;
  });
}

/** Rings of blanks and print of every copy, as they lie. */
function listObstacles(layout: Layout, piece: LayoutPiece): readonly Ring[] {
  const { x0, y0, x1, y1 } = piece.boxMm;
  const rims = piece.rimsMm.length === 0 ? [boxRing(x0, y0, x1, y1)] : piece.rimsMm;
  const { printedMm: print } = piece;
  const printed = isEmptyBox(print) ? [] : (piece.printedRingsMm ?? [boxRing(print.x0, print.y0, print.x1, print.y1)]);
  return layout.matricesMm.flatMap((matrix) => [...rims, ...printed].map((ring) => mapRing(ring, matrix)));
}

/** Places within a copy's box and around it, in either those near its top left first. */
function listPlaces(layout: Layout, piece: LayoutPiece, copy: number): readonly PointMm[] {
  const { x0, y0, x1, y1 } = transformBox(layout.matricesMm[copy]!, piece.drawnMm);
  const half = COPY_MARK_MM / 2;
  const { freeMm } = layout;
  const places: PointMm[] = [];
  for (let y = y0 - OUTSIDE_MM; y <= y1 + OUTSIDE_MM; y += STEP_MM) {
    for (let x = x0 - OUTSIDE_MM; x <= x1 + OUTSIDE_MM; x += STEP_MM) {
      if (x - half < freeMm.x0 || y - half < freeMm.y0 || x + half > freeMm.x1 || y + half > freeMm.y1) continue;
      places.push([Math.round(x * 100) / 100, Math.round(y * 100) / 100]);
    }
  }
  // A notch of its own tells best whose cross it is.
  const box = layout.boxesMm[copy]!;
  const beside = ([x, y]: PointMm): number => (x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1 ? 0 : 1);
  const from = ([x, y]: PointMm): number => Math.abs(x - x0) + Math.abs(y - y0);
  return places.toSorted((a, b) => beside(a) - beside(b) || from(a) - from(b));
}

/** A place for each copy, or null where there is none: in the order of the copies. */
export function placeCopyMarks(layout: Layout, piece: LayoutPiece): readonly (PointMm | null)[] {
  const obstacles = listObstacles(layout, piece);
  const half = COPY_MARK_MM / 2 + CLEAR_MM;
  const taken: Ring[] = [];
  return layout.boxesMm.map((box, copy) => {
    const near = { x0: box.x0 - 10, y0: box.y0 - 10, x1: box.x1 + 10, y1: box.y1 + 10 };
    const close = obstacles.filter((ring) => {
      const xs = ring.map(([x]) => x);
      const ys = ring.map(([, y]) => y);
      const around = { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
      return !isEmptyBox(intersect(near, around));
    });
    const place = listPlaces(layout, piece, copy).find(
      (at) => ![...close, ...taken].some((ring) => isInsideRing(ring, at) || meetsSquare(ring, at, half)),
    );
    if (place === undefined) return null;
    taken.push(boxRing(place[0] - half, place[1] - half, place[0] + half, place[1] + half));
    return place;
  });
}
