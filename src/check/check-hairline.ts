// Are printed lines thick enough to be held?

import type { Outline } from '../geometry/outline.js';
import { countPieces } from '../geometry/outline.js';
import { scalesOf } from '../geometry/scales.js';
import type { Shape } from '../model/artwork.js';
import type { Finding } from '../model/finding.js';
import { isToolpath } from '../model/pass.js';
import { sayCount } from '../model/say-count.js';
import { isBelow } from './beyond-bound.js';
import type { CheckFacts } from './check-facts.js';
import { gatherTroubles, type Trouble } from './gather-troubles.js';
import { strokeInk } from './ink.js';
import { inLayer, sayNumber } from './layer-words.js';

/** A line that is too thin somewhere. */
interface Thin extends Trouble {
  readonly shape: Shape;
  readonly widthMm: number;
}

/** Scales that differ by less count as one: rounding of matrices. */
const EVEN = 1e-6;

/** Where a line is thinnest, and how wide it is there. */
interface Thinnest {
  readonly widthPx: number;
  readonly at: readonly [number, number];
}

function startOf(outlines: readonly Outline[]): readonly [number, number] {
  const points = outlines.find((outline) => outline.points.length >= 2)?.points;
  return points === undefined ? [0, 0] : [points[0]!, points[1]!];
}

/**
 * The thinnest place of a stroke.
 *
 * Under a matrix M a line of width w that runs along the unit vector v on the artboard is w |det M| |M^-1 v| wide, so that
 * a scale along the line leaves its width and one across it does not.
 */
export function thinnestPlace(shape: Shape, outlines: readonly Outline[]): Thinnest {
  const { paint, matrix } = shape;
  const [greatest, least] = scalesOf(matrix);
  if (paint.nonScalingStroke) return { widthPx: paint.strokeWidth, at: startOf(outlines) };
  if (greatest - least <= EVEN * greatest) return { widthPx: paint.strokeWidth * least, at: startOf(outlines) };
  const [a, b, c, d] = matrix;
  let thinnest: Thinnest = { widthPx: Infinity, at: startOf(outlines) };
  for (const outline of outlines) {
    const { points } = outline;
    for (let piece = 0; piece < countPieces(outline); piece += 1) {
      const at = 2 * piece;
      const next = at + 2 < points.length ? at + 2 : 0;
      const dx = points[next]! - points[at]!;
      const dy = points[next + 1]! - points[at + 1]!;
      const length = Math.hypot(dx, dy);
      if (!(length > 0)) continue;
      const widthPx = (paint.strokeWidth * Math.hypot(d * dx - c * dy, a * dy - b * dx)) / length;
      if (widthPx < thinnest.widthPx) {
        thinnest = { widthPx, at: [points[at]! + dx / 2, points[at + 1]! + dy / 2] };
      }
    }
  }
  return thinnest;
}

/** The widths that a stroke can have at all, px: none need be looked for outside of them. */
function leastWidth({ paint, matrix }: Shape): number {
  return paint.nonScalingStroke ? paint.strokeWidth : paint.strokeWidth * scalesOf(matrix)[1];
}

/** Width of each printed line on the artboard against `hairlineMm`. Lines of passes that move a tool are not printed. */
export function checkHairline(facts: CheckFacts): readonly Finding[] {
  const { artwork, assignment, ticket } = facts;
  const { mmPerPx } = artwork.artboard;
  const { hairlineMm } = ticket.checks;
  const thin = new Map<number, Thin>();
  for (const { shape: index, pass, part } of assignment.placements) {
    const shape = artwork.shapes[index]!;
    if (part === 'fill' || !shape.draws || isToolpath(assignment.passes[pass]!.role)) continue;
    if (shape.kind === 'image' || shape.kind === 'foreignObject' || strokeInk(shape.paint) === 'none') continue;
    if (!isBelow(leastWidth(shape) * mmPerPx, hairlineMm)) continue;
    const isText = shape.kind === 'text';
    const place = isText
      ? { widthPx: leastWidth(shape), at: [shape.fillBox.x0, shape.fillBox.y0] as const }
      : thinnestPlace(shape, facts.outlineOf(shape));
    const widthMm = place.widthPx * mmPerPx;
    if (isBelow(widthMm, hairlineMm)) thin.set(index, { shape, at: place.at, weight: -widthMm, widthMm });
  }
  return gatherTroubles(artwork, 'check/hairline', [...thin.values()], (list) => ({
    message: `${sayCount(list.length, 'printed line')} ${inLayer(artwork, list[0]!.shape.layer)} ${list.length === 1 ? 'is' : 'are'} ${list.length === 1 ? '' : 'down to '}${sayNumber(list[0]!.widthMm, 3)} mm thin on the board; below ${sayNumber(hairlineMm, 3)} mm print may lose them.`,
    remedy:
      'Make the lines thicker; where one only marks a place and is not to be printed, give it to another pass or ignore it.',
    data: { measuredMm: Math.round(list[0]!.widthMm * 10000) / 10000, allowedMm: hairlineMm },
  }));
}
