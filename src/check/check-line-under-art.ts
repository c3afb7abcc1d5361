// Do die lines lie on top, where nobody misses them while drawing?

import { indexBoxList } from '../geometry/box-index.js';
import type { Outline } from '../geometry/outline.js';
import { crossingParameter, endsOf, type PieceEnds } from '../geometry/segment.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { piecesOf } from './die-lines.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { fillInk } from './ink.js';
import { inLayer } from './layer-words.js';
import { roundValue, sayMm } from './say-value.js';
import { indexSegments, type SegmentIndex } from './segment-index.js';
import { windingAt } from './winding-at.js';

/** A line with how much of it is covered. */
interface Covered extends Trouble {
  readonly shape: Shape;
  readonly weight: number;
}

/** Less is let be, mm. */
const LEAST_MM = 1;

/** A piece that edges of art cross more often is looked at in as many equal parts instead. */
const MOST_CROSSINGS = 1000;

/** Edges longer than this are found by their parts, px. */
const LONGEST = 40;

/** A run as the edge of an area: closed. */
function close(outline: Outline): Outline {
  return { ...outline, closed: true };
}

/** Areas of art: whether one painted after a shape covers a point, and where their edges cross a piece. */
interface Areas {
  readonly cover: (x: number, y: number, after: number) => boolean;
  /** Shares of the piece, unsorted. */
  readonly crossings: (piece: PieceEnds) => readonly number[];
}

/** Where edges cross a piece. */
function findCrossed(edges: SegmentIndex, piece: PieceEnds): readonly number[] {
  const [x0, y0, x1, y1] = piece;
  const box = { x0: Math.min(x0, x1), y0: Math.min(y0, y1), x1: Math.max(x0, x1), y1: Math.max(y0, y1) };
  return edges.near(box).flatMap((place) => {
    const edge = endsOf(edges, place);
    const across = crossingParameter(edge, piece);
    const along = crossingParameter(piece, edge);
    const isOn = across !== null && across >= 0 && across <= 1;
    return isOn && along !== null && along > 0 && along < 1 ? [along] : [];
  });
}

/** Areas of art that are painted after the first tool line; null where there are none. */
function findAreas(facts: CheckFacts): Areas | null {
  const { artwork, assignment, toolLines, outlineOf } = facts;
  const first = toolLines.reduce((least, { shape }) => Math.min(least, shape.index), Infinity);
  const areas: Shape[] = [];
  for (const { shape: index, pass, part } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (index <= first || !shape.draws || part === 'stroke' || isToolpath(assignment.passes[pass]!.role)) continue;
    const isArea = shape.kind === 'image' || (shape.kind !== 'text' && fillInk(shape.paint) !== 'none');
    if (isArea) areas.push(shape);
  }
  if (areas.length === 0) return null;
  const index = indexBoxList(areas.map(({ drawnBound }) => drawnBound));
  const edges = indexSegments(
    Float64Array.from(piecesOf(areas.flatMap((shape) => outlineOf(shape).map(close)))),
    LONGEST,
  );
  const cover: Areas['cover'] = (x, y, after) =>
    index.search(x, y, x, y).some((place) => {
      const shape = areas[place]!;
      if (shape.index <= after) return false;
      const winding = windingAt(outlineOf(shape), x, y);
      return shape.paint.fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
    });
  return { cover, crossings: (piece) => findCrossed(edges, piece) };
}

/** What a piece is covered over, as shares of it: how much, and the middle of the first stretch; null where nothing covers it. */
function measureCovered(areas: Areas, piece: PieceEnds, after: number): { share: number; first: number } | null {
  const [x0, y0, x1, y1] = piece;
  const crossings = areas.crossings(piece);
  const parts =
    crossings.length > MOST_CROSSINGS
      ? Array.from({ length: MOST_CROSSINGS - 1 }, (_, i) => (i + 1) / MOST_CROSSINGS)
      : crossings.toSorted((a, b) => a - b);
  let share = 0;
  let first = Number.NaN;
  let from = 0;
  for (const to of [...parts, 1]) {
    const t = (from + to) / 2;
    if (to > from && areas.cover(x0 + t * (x1 - x0), y0 + t * (y1 - y0), after)) {
      share += to - from;
      if (Number.isNaN(first)) first = t;
    }
    from = to;
  }
  return share > 0 ? { share, first } : null;
}

/** Tool lines that art covers, by the order in which the drawing paints. */
export function checkLineUnderArt(facts: CheckFacts): readonly Finding[] {
  const { artwork, toolLines, toolPieces } = facts;
  const { mmPerPx } = artwork.artboard;
  const areas = findAreas(facts);
  if (areas === null) return [];
  const covered = new Map<number, Covered>();
  for (let piece = 0; piece < toolPieces.count; piece += 1) {
    const { shape } = toolLines[toolPieces.line[piece]!]!;
    const ends = endsOf(toolPieces, piece);
    const found = measureCovered(areas, ends, shape.index);
    if (found === null) continue;
    const [x0, y0, x1, y1] = ends;
    const at = [x0 + found.first * (x1 - x0), y0 + found.first * (y1 - y0)] as const;
    const known = covered.get(shape.index) ?? { shape, at, weight: 0 };
    const lengthMm = found.share * Math.hypot(x1 - x0, y1 - y0) * mmPerPx;
    covered.set(shape.index, { ...known, weight: known.weight + lengthMm });
  }
  const troubles = [...covered.values()].filter(({ weight }) => !isBelow(weight, LEAST_MM));
  return gatherTroubles(artwork, 'check/line-under-art', troubles, (list) => {
    const total = list.reduce((sum, { weight }) => sum + weight, 0);
    return {
      message: `${sayCount(list.length, 'line')} of tool passes, ${inLayer(artwork, list[0]!.shape.layer)}, ${list.length === 1 ? 'lies' : 'lie'} under art, over ${sayMm(total)} mm.`,
      remedy: 'Move the layers of cut and crease lines to the top of the drawing, so that nobody overlooks them.',
      data: { measuredMm: roundValue(total), allowedMm: 0 },
    };
  });
}
