// Whether two shapes that are drawn meet, and not only the boxes around them.
import { intersect, isEmptyBox } from '../geometry/box.js';
import { isInsideLoop } from '../geometry/inside-loop.js';
import type { Outline } from '../geometry/outline.js';
import type { Shape } from '../model/artwork.js';
import type { CheckFacts } from './check-facts.js';
import { clearDistance } from './clear-distance.js';
import { piecesOf } from './die-lines.js';
import { windingAt } from './winding-at.js';

/** Most pairs of pieces that are looked at: beyond them shapes meet where their boxes do. */
const MOST_PAIRS = 1_000_000;

/** Half the width of a stroke, in the mean of all directions; 0 where there is none. @unit px */
function halfStroke({ paint, matrix }: Shape): number {
  if (paint.stroke.kind === 'none') return 0;
  const [a, b, c, d] = matrix;
  return (paint.strokeWidth * (paint.nonScalingStroke ? 1 : Math.sqrt(Math.abs(a * d - b * c)))) / 2;
}

function isFilled({ kind, paint }: Shape): boolean {
  return kind === 'image' || kind === 'foreignObject' || (kind !== 'line' && paint.fill.kind !== 'none');
}

/** Whether the fill of a shape covers a point. */
function covers(shape: Shape, outlines: readonly Outline[], x: number, y: number): boolean {
  if (!isFilled(shape)) return false;
  if (shape.paint.fillRule === 'nonzero') return windingAt(outlines, x, y) !== 0;
  return outlines.filter(({ points }) => isInsideLoop(points, x, y)).length % 2 === 1;
}

/** Whether the fill of a shape covers the start of any of some runs: one that lies within crosses none of its lines. */
function coversAny(shape: Shape, outlines: readonly Outline[], runs: readonly Outline[]): boolean {
  return runs.some(({ points }) => covers(shape, outlines, points[0]!, points[1]!));
}

/**
 * Whether two shapes meet: their lines, with the width of their strokes, or the fill of one and the other. Type, and what is too much to
 * look at, meets what its box meets; clip paths count as far as they bound boxes.
 */
export function shapesMeet(facts: CheckFacts, p: Shape, q: Shape): boolean {
  if (isEmptyBox(intersect(p.drawnBound, q.drawnBound))) return false;
  const [own, other] = [facts.outlineOf(p), facts.outlineOf(q)];
  const [pieces, others] = [piecesOf(own), piecesOf(other)];
  if (pieces.length === 0 || others.length === 0) return true;
  if ((pieces.length / 4) * (others.length / 4) > MOST_PAIRS) return true;
  if (coversAny(q, other, own) || coversAny(p, own, other)) return true;
  const near = halfStroke(p) + halfStroke(q);
  for (let at = 0; at < others.length; at += 4) {
    const piece = [others[at]!, others[at + 1]!, others[at + 2]!, others[at + 3]!] as const;
    if (clearDistance(pieces, piece).distance <= near) return true;
  }
  return false;
}
