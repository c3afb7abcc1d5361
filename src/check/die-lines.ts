// The lines that tools run along, found by place.
import type { Outline } from '../geometry/outline.js';
import { countPieces } from '../geometry/outline.js';
import type { LineKind } from '../model/faces.js';
import type { CheckFacts } from './check-facts.js';
import { indexSegments, type SegmentIndex } from './segment-index.js';

/** Straight pieces of all cuts, creases and perforations, px. */
export interface DieLines {
  readonly segments: SegmentIndex;
  readonly kindOf: (place: number) => LineKind;
}

/** Longest part of a slanting piece that is indexed by one box, px. */
const LONGEST = 40;

/** The straight pieces of outlines: x0, y0, x1, y1 each, those of no length left out. */
export function piecesOf(outlines: readonly Outline[]): readonly number[] {
  const ends: number[] = [];
  for (const outline of outlines) {
    const { points } = outline;
    const pieces = countPieces(outline);
    for (let piece = 0; piece < pieces; piece += 1) {
      const at = 2 * piece;
      const next = at + 2 < points.length ? at + 2 : 0;
      const [x0, y0, x1, y1] = [points[at]!, points[at + 1]!, points[next]!, points[next + 1]!];
      if (x0 !== x1 || y0 !== y1) ends.push(x0, y0, x1, y1);
    }
  }
  return ends;
}

/** The lines of all passes that move a tool; null where there is none. */
export function findDieLines({ toolLines }: CheckFacts): DieLines | null {
  const ends: number[] = [];
  const kinds: LineKind[] = [];
  for (const { outline, kind, shape } of toolLines) {
    if (!shape.draws) continue;
    for (const end of piecesOf([outline])) ends.push(end);
    while (kinds.length < ends.length / 4) kinds.push(kind);
  }
  if (ends.length === 0) return null;
  return { segments: indexSegments(Float64Array.from(ends), LONGEST), kindOf: (place) => kinds[place]! };
}
